"""Rules as a table: mark and word, value with its doubt, limit, and how sure that is."""

from collections.abc import Callable, Iterable

from rich.console import Console, ConsoleOptions, RenderResult
from rich.style import Style
from rich.table import Table
from rich.text import Text

from wizard.phrases.verdict_words import (
    chance_words,
    give_or_take,
    limit_words,
    mark_and_word,
    probability_words,
    tone_of,
)
from wizard.views.picture_data import RuleRow

WIDE = 108
"""Columns from which a rule takes one line instead of two."""

HEADS = ("verdict", "rule", "reading", "limit", "chance that it is within")
COLUMNS = (19, 16, 27, 16, 24)
GAP = 2

ADVICE = "For advice; these do not decide:"

Styles = Callable[[str], Style]
"""The style of good, bad, open, held, unknown, head, rule and quiet."""


class RulesGrid:
    """The table, which chooses its shape by the width it is given."""

    def __init__(self, rows: Iterable[RuleRow], style: Styles) -> None:
        rows = tuple(rows)
        self.deciding = [row for row in rows if row.decides]
        self.advising = [row for row in rows if not row.decides]
        self.style = style

    def __rich_console__(self, console: Console, options: ConsoleOptions) -> RenderResult:
        wide = options.max_width >= WIDE
        if self.deciding:
            yield self.table(self.deciding, wide, HEADS if wide else ())
        if self.advising:
            yield self.text(ADVICE, "head")
            yield self.table(self.advising, wide)

    def table(self, rows: Iterable[RuleRow], wide: bool, heads: Iterable[str] = ()) -> Table:
        """Rules under one another; the columns of all tables of a shape are the same."""
        table = Table(box=None, pad_edge=False, padding=(0, GAP, 0, 0), show_header=bool(heads))
        heads = iter(heads)
        for columns in COLUMNS if wide else COLUMNS[:1]:
            table.add_column(self.text(next(heads, ""), "head"), min_width=columns, no_wrap=True)
        if not wide:
            table.add_column()
        for row in rows:
            table.add_row(*(self.in_one_line(row) if wide else self.in_two_lines(row)))
        return table

    def in_one_line(self, row: RuleRow) -> list[Text]:
        """A cell each for verdict, rule, reading, limit and chance."""
        return [
            self.text(mark_and_word(row.verdict), tone_of(row.verdict)),
            self.text(row.name, "rule"),
            self.text(reading(row), "rule"),
            self.text(limit_words(row.limit, row.unit, row.at_least), "quiet"),
            self.text(chance_words(row.probability), "quiet"),
        ]

    def in_two_lines(self, row: RuleRow) -> list[Text]:
        """A cell for the verdict and one for the rest, limit and chance below the reading."""
        limit = limit_words(row.limit, row.unit, row.at_least)
        return [
            self.text(mark_and_word(row.verdict), tone_of(row.verdict)),
            Text.assemble(
                self.text(f"{row.name:<{COLUMNS[1]}}  {reading(row)}\n", "rule"),
                self.text(f"{limit}; {probability_words(row.probability)}", "quiet"),
            ),
        ]

    def text(self, words: str, name: str) -> Text:
        """Words in a style by its name."""
        return Text(words, style=self.style(name))


def reading(row: RuleRow) -> str:
    """The value of a rule with its doubt, to hundredths where the limit is below one."""
    return give_or_take(row.value, row.give, row.unit, decimals=2 if row.limit < 1 else 1)
