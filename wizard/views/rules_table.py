"""Rules as a table: verdict, value with its uncertainty, limit, and probability."""

from collections.abc import Iterable

from rich.console import Console, ConsoleOptions, RenderResult
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
from wizard.views.styles import Styled, StyleOf

WIDE = 108
"""Columns from which a rule takes one line instead of two."""

HEADS = ("verdict", "rule", "reading", "limit", "chance that it is within")
COLUMNS = (19, 16, 27, 16, 24)
"""Least widths of the columns."""

GAP = 2
"""Columns between two columns of the table."""

ADVICE = "For advice; these do not decide:"


class RulesGrid(Styled):
    """The table of rules; its width decides between one line and two lines a rule."""

    def __init__(self, rows: Iterable[RuleRow], style_of: StyleOf) -> None:
        super().__init__(style_of)
        rows = tuple(rows)
        self.deciding = [row for row in rows if row.decides]
        self.advising = [row for row in rows if not row.decides]

    def __rich_console__(self, console: Console, options: ConsoleOptions) -> RenderResult:
        is_wide = options.max_width >= WIDE
        if self.deciding:
            yield self.table(self.deciding, is_wide, HEADS if is_wide else ())
        if self.advising:
            yield self.text(ADVICE, "head")
            yield self.table(self.advising, is_wide)

    def table(self, rows: Iterable[RuleRow], is_wide: bool, heads: Iterable[str] = ()) -> Table:
        """Rules below one another; both tables of one shape have the same columns."""
        table = Table(box=None, pad_edge=False, padding=(0, GAP, 0, 0), show_header=bool(heads))
        heads = iter(heads)
        for width in COLUMNS if is_wide else COLUMNS[:1]:
            table.add_column(self.text(next(heads, ""), "head"), min_width=width, no_wrap=True)
        if not is_wide:
            table.add_column()
        for row in rows:
            table.add_row(*(self.in_one_line(row) if is_wide else self.in_two_lines(row)))
        return table

    def in_one_line(self, row: RuleRow) -> list[Text]:
        """One cell each for verdict, rule, reading, limit and chance."""
        return [
            self.text(mark_and_word(row.verdict), tone_of(row.verdict)),
            self.text(row.name, "rule"),
            self.text(reading(row), "rule"),
            self.text(limit_words(row.limit, row.unit, row.at_least), "quiet"),
            self.text(chance_words(row.probability), "quiet"),
        ]

    def in_two_lines(self, row: RuleRow) -> list[Text]:
        """One cell for the verdict and one for the rest, limit and chance below the reading."""
        limit = limit_words(row.limit, row.unit, row.at_least)
        return [
            self.text(mark_and_word(row.verdict), tone_of(row.verdict)),
            Text.assemble(
                self.text(f"{row.name:<{COLUMNS[1]}}  {reading(row)}\n", "rule"),
                self.text(f"{limit}; {probability_words(row.probability)}", "quiet"),
            ),
        ]


def reading(row: RuleRow) -> str:
    """Value of a rule with its uncertainty, to hundredths where the limit is below 1."""
    decimals = 2 if row.limit < 1 else 1
    return give_or_take(row.value, row.expanded_uncertainty, row.unit, decimals=decimals)
