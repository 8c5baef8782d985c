"""Plans side by side, a column each, beside the vehicle as it is now."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import zip_longest
from textwrap import wrap

from textual.content import Content
from textual.geometry import Size
from textual.reactive import reactive

from wizard.phrases.plan_outcomes import Cell, Row
from wizard.phrases.verdict_words import tone_of
from wizard.tui.widgets.pressable import Pressable, with_action
from wizard.tui.widgets.tone_colours import TONE_COLOURS

SMALLEST = 8
"""Smallest width of a column; a narrower one would break figures letter by letter."""

TOO_NARROW = "(too narrow for figures)"

NAME, NARROWEST, WIDEST, GAP = 16, 14, 20, 1
"""Columns of the names, of a plan at least and at most, and between two plans."""

Styled = tuple[str, str]
"""A text and its style."""


@dataclass(frozen=True)
class Column:
    """The head of a plan's column.

    Attributes
    ----------
    title : str
    moves : tuple of str
        The moves of the plan in words.
    """

    title: str
    moves: tuple[str, ...]


class PlansTable(Pressable):
    """The plan at hand, and as many around it as there is room for; a click selects a plan.

    Attributes
    ----------
    columns : sequence of Column
    rows : sequence of Row
    at : int
        Index of the plan at hand.
    """

    columns: reactive[Sequence[Column]] = reactive((), layout=True)
    rows: reactive[Sequence[Row]] = reactive((), layout=True)
    at: reactive[int] = reactive(0, layout=True)

    def render(self) -> Content:
        """Every row with the visible columns."""
        return Content("\n").join(self._lines(self.size.width))

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """Number of lines at this width."""
        return len(self._lines(width))

    def _lines(self, width: int) -> list[Content]:
        if not self.columns:
            return []
        fitting = max((width - NAME) // (NARROWEST + GAP) - 1, 1)
        visible = window(len(self.columns), self.at, fitting)
        column_width = min((width - NAME) // (len(visible) + 1) - GAP, WIDEST)
        if column_width < SMALLEST:
            return [Content.styled(TOO_NARROW, "$quiet")]
        has_more = len(visible) < len(self.columns)
        count = f"‹ {self.at + 1} of {len(self.columns)} ›" if has_more else ""
        titles = [[self._title(index)] for index in visible]
        moves = [
            [(f"+ {move}" if number else move, "bold") for number, move in enumerate(column.moves)]
            for column in (self.columns[index] for index in visible)
        ]
        table = [(count, [("now", "$quiet")], titles)]
        if any(moves):
            table.append(("what is moved", [], moves))
        table += [
            (row.name, [styled(row.now)], [[styled(row.plans[index])] for index in visible])
            for row in self.rows
        ]
        return [line for row in table for line in self._row(*row, visible, column_width)]

    def _title(self, index: int) -> Styled:
        title = self.columns[index].title
        return (f"▸ {title}", "bold $accent") if index == self.at else (f"  {title}", "$quiet")

    @staticmethod
    def _row(
        name: str,
        now: list[Styled],
        plans: list[list[Styled]],
        visible: Sequence[int],
        column_width: int,
    ) -> list[Content]:
        """Lines of one row, as many as its longest cell has."""
        cells = [wrapped(cell, column_width) for cell in (now, *plans)]
        lines = []
        for number, parts in enumerate(zip_longest(*cells, fillvalue=("", ""))):
            line = Content.styled(("" if number else name).ljust(NAME), "$quiet")
            for place, (text, style) in enumerate(parts):
                cell = Content.styled(text.ljust(column_width + GAP), style)
                line += with_action(cell, f"plan({visible[place - 1]})") if place else cell
            lines.append(line)
        return lines


def window(count: int, at: int, fitting: int) -> range:
    """Indices of the visible plans: as many as fit, with the plan at hand among them."""
    first = min(max(at - fitting + 1, 0), max(count - fitting, 0))
    return range(first, min(first + fitting, count))


def styled(cell: Cell) -> Styled:
    """A cell in the colour of its verdict; its mark says the same."""
    return cell.words, TONE_COLOURS.get(tone_of(cell.verdict), "")


def wrapped(parts: list[Styled], width: int) -> list[Styled]:
    """Parts of a cell in lines of this width, at least one."""
    return [(line, style) for text, style in parts for line in wrap(text, width)] or [("", "")]
