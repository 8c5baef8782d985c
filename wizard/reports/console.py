"""Printing of reports: at most 80 columns wide, and without colours if there is no terminal."""

import sys
from collections.abc import Iterable
from contextlib import suppress

from rich.console import Console, RenderableType
from rich.style import Style

from wizard.phrases.fact import Fact
from wizard.views.fact_sheet import FactSheet

WIDTH = 80
"""Columns of a report."""

NARROWEST = 30
"""Columns; a terminal that reports fewer does not know its width."""

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
"""Styles by name. A colour only repeats the mark and the word; Rich omits it under NO_COLOR."""


class ReportConsole(Console):
    """A console that raises BrokenPipeError when the reader of its output has stopped."""

    def on_broken_pipe(self) -> None:
        """Raise BrokenPipeError, which the command line handles."""
        raise BrokenPipeError


def print_report(parts: Iterable[RenderableType]) -> None:
    """Print the parts of a report, each followed by an empty line."""
    console = report_console()
    for part in parts:
        console.print(part)
        console.print()


def report_console() -> Console:
    """Console for text from records: it interprets no markup."""
    with suppress(AttributeError):  # a character that the output cannot encode becomes "?"
        sys.stdout.reconfigure(errors="replace")  # type: ignore[union-attr]
    console = ReportConsole(highlight=False, markup=False, emoji=False)
    console.width = min(console.width, WIDTH) if console.width >= NARROWEST else WIDTH
    return console


def style_of(name: str) -> Style:
    """Style of this name; the plain style if there is none."""
    return Style.parse(STYLES.get(name, ""))


def fact_sheet(title: str, facts: Iterable[Fact]) -> FactSheet:
    """Facts under a title, as a part of a report."""
    return FactSheet(title, tuple(facts), style_of)
