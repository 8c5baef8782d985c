"""A part of a page: its title, and facts under each other with their names beside them."""

from collections.abc import Callable

from rich.console import Console, ConsoleOptions, RenderResult
from rich.style import Style
from rich.table import Table
from rich.text import Text

from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.verdict_words import TONES

NAME = 17
"""Columns of a name."""

Styles = Callable[[str], Style]
"""The style of title, name, text, look, good, bad, open, held and unknown."""


class FactSheet:
    """Title and facts; a long text goes on under its own beginning."""

    def __init__(self, title: str, facts: tuple[Fact, ...], style: Styles) -> None:
        self.title, self.facts, self.style = title, facts, style

    def __rich_console__(self, console: Console, options: ConsoleOptions) -> RenderResult:
        if self.title:
            yield self.text(self.title, "title")
        table = Table.grid(padding=(0, 1, 0, 0))
        table.add_column(width=1)
        if any(fact.name for fact in self.facts):
            table.add_column(width=NAME)
        table.add_column(ratio=1)
        for fact in self.facts:
            name = (self.text(fact.name, "name"),) if len(table.columns) > 2 else ()
            table.add_row(
                self.text(fact.mark, mark_tone(fact.mark)),
                *name,
                self.text(fact.text, text_tone(fact)),
            )
        yield table

    def text(self, words: str, name: str) -> Text:
        """Words in a style by its name."""
        return Text(words, style=self.style(name))


def mark_tone(mark: str) -> str:
    """The style of a mark: that of the verdict it stands for."""
    return "look" if mark == LOOK else TONES.get(mark, "unknown")


def text_tone(fact: Fact) -> str:
    """What somebody has to look at stands out."""
    return "look" if fact.mark == LOOK else "text"
