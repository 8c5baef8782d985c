"""Plans side by side, a column each, beside what is now."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import zip_longest
from textwrap import wrap

from textual.content import Content
from textual.geometry import Size
from textual.reactive import reactive

from wizard.phrases.plan_outcomes import Cell, Row
from wizard.phrases.verdict_words import tone_of
from wizard.tui.widgets.pressable import Pressable, does

SMALLEST = 8
"""Columns below which a figure would be broken letter by letter."""

TOO_NARROW = "(too narrow for figures)"

NAME, NARROWEST, WIDEST, GAP = 16, 14, 20, 1
"""Columns of the names, of a plan at least and at most, and between two."""

TONES = {"good": "$success", "bad": "$error", "open": "$warning", "held": "$warning"}

Styled = tuple[str, str]
"""A text and its style."""


@dataclass(frozen=True)
class Column:
    """A plan's own words: what it is called, and what it moves."""

    title: str
    moves: tuple[str, ...]


class PlansTable(Pressable):
    """The plans around the marked one, as far as there is room; a click marks a plan."""

    columns: reactive[Sequence[Column]] = reactive((), layout=True)
    rows: reactive[Sequence[Row]] = reactive((), layout=True)
    at: reactive[int] = reactive(0, layout=True)

    def render(self) -> Content:
        """Every row with its columns."""
        return Content("\n").join(self._lines(self.size.width))

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """Number of lines at this width."""
        return len(self._lines(width))

    def _lines(self, width: int) -> list[Content]:
        if not self.columns:
            return []
        fitting = max((width - NAME) // (NARROWEST + GAP) - 1, 1)
        shown = window(len(self.columns), self.at, fitting)
        wide = min((width - NAME) // (len(shown) + 1) - GAP, WIDEST)
        if wide < SMALLEST:
            return [Content.styled(TOO_NARROW, "$quiet")]
        hidden = len(shown) < len(self.columns)
        count = f"‹ {self.at + 1} of {len(self.columns)} ›" if hidden else ""
        titles = [[self._title(index)] for index in shown]
        moves = [
            [(f"+ {move}" if number else move, "bold") for number, move in enumerate(column.moves)]
            for column in (self.columns[index] for index in shown)
        ]
        table = [(count, [("now", "$quiet")], titles)]
        if any(moves):
            table.append(("what is moved", [], moves))
        table += [
            (row.name, [styled(row.now)], [[styled(row.plans[index])] for index in shown])
            for row in self.rows
        ]
        return [line for row in table for line in self._row(*row, shown, wide)]

    def _title(self, index: int) -> Styled:
        title = self.columns[index].title
        return (f"▸ {title}", "bold $accent") if index == self.at else (f"  {title}", "$quiet")

    @staticmethod
    def _row(
        name: str,
        now: list[Styled],
        plans: list[list[Styled]],
        shown: Sequence[int],
        wide: int,
    ) -> list[Content]:
        """One row, as many lines high as its longest cell."""
        cells = [wrapped(cell, wide) for cell in (now, *plans)]
        lines = []
        for number, parts in enumerate(zip_longest(*cells, fillvalue=("", ""))):
            line = Content.styled(("" if number else name).ljust(NAME), "$quiet")
            for place, (text, style) in enumerate(parts):
                cell = Content.styled(text.ljust(wide + GAP), style)
                line += does(cell, f"plan({shown[place - 1]})") if place else cell
            lines.append(line)
        return lines


def window(count: int, at: int, fitting: int) -> range:
    """The columns shown: as many as fit, the one at hand among them."""
    first = min(max(at - fitting + 1, 0), max(count - fitting, 0))
    return range(first, min(first + fitting, count))


def styled(cell: Cell) -> Styled:
    """A cell with the tone of its verdict, which its mark says as well."""
    return cell.words, TONES.get(tone_of(cell.verdict), "")


def wrapped(parts: list[Styled], width: int) -> list[Styled]:
    """Parts of a cell in lines of this width, at least one."""
    return [(line, style) for text, style in parts for line in wrap(text, width)] or [("", "")]
