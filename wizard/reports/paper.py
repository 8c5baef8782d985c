"""What reports are printed on: 80 columns at most, and plain where there is no terminal."""

import sys
from collections.abc import Iterable
from contextlib import suppress

from rich.console import Console, RenderableType
from rich.style import Style

from wizard.phrases.fact import Fact
from wizard.views.fact_sheet import FactSheet

WIDTH = 80
NARROWEST = 30
"""Columns; a terminal that claims fewer knows nothing of its width."""

STYLES = {
    "title": "bold underline",
    "head": "bold",
    "rule": "bold",
    "look": "bold yellow",
    "good": "bold green",
    "bad": "bold red",
    "open": "bold yellow",
    "held": "bold magenta",
    "quiet": "dim",
}
"""A colour only says once more what mark and word say; rich leaves it out under NO_COLOR."""


class Paper(Console):
    """Leaves it to the command what a reader means who has seen enough."""

    def on_broken_pipe(self) -> None:
        """Raises BrokenPipeError."""
        raise BrokenPipeError


def print_parts(parts: Iterable[RenderableType]) -> None:
    """Print the parts of a report under each other."""
    console = paper()
    for part in parts:
        console.print(part)
        console.print()


def paper() -> Console:
    """A console for words that come from records: nothing in them is taken as markup."""
    with suppress(AttributeError):  # what a terminal cannot show becomes a question mark
        sys.stdout.reconfigure(errors="replace")  # type: ignore[union-attr]
    console = Paper(highlight=False, markup=False, emoji=False)
    console.width = min(console.width, WIDTH) if console.width >= NARROWEST else WIDTH
    return console


def style_of(name: str) -> Style:
    """The style of a part of a report by its name."""
    return Style.parse(STYLES.get(name, ""))


def sheet(title: str, facts: Iterable[Fact]) -> FactSheet:
    """A part of a report."""
    return FactSheet(title, tuple(facts), style_of)
