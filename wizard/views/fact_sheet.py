"""A section of a report or of a screen: its title, and facts with their names beside them."""

from rich.console import Console, ConsoleOptions, RenderResult
from rich.table import Table

from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.verdict_words import TONES
from wizard.views.styles import Styled, StyleOf

NAME = 17
"""Columns of a name."""


class FactSheet(Styled):
    """Title and facts; a long text continues below its own beginning."""

    def __init__(self, title: str, facts: tuple[Fact, ...], style_of: StyleOf) -> None:
        super().__init__(style_of)
        self.title, self.facts = title, facts

    def __rich_console__(self, console: Console, options: ConsoleOptions) -> RenderResult:
        if self.title:
            yield self.text(self.title, "title")
        has_names = any(fact.name for fact in self.facts)
        table = Table.grid(padding=(0, 1, 0, 0))
        table.add_column(width=1)
        if has_names:
            table.add_column(width=NAME)
        table.add_column(ratio=1)
        for fact in self.facts:
            name = (self.text(fact.name, "name"),) if has_names else ()
            text = self.text(fact.text, "look" if needs_a_look(fact) else "text")
            table.add_row(self.text(fact.mark, mark_style(fact)), *name, text)
        yield table


def needs_a_look(fact: Fact) -> bool:
    """True if somebody has to look at the fact."""
    return fact.mark == LOOK


def mark_style(fact: Fact) -> str:
    """Style of a fact's mark: the style of the verdict that the mark stands for."""
    return "look" if needs_a_look(fact) else TONES.get(fact.mark, "unknown")
