"""All readings of a vehicle in one table, in the order of the sheet."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from rich.cells import set_cell_size
from textual.content import Content
from textual.reactive import reactive

from core.documents.document import value_at
from core.documents.entries import units_of
from core.readings.survey import COORDINATES
from wizard.flow.flow import Flow
from wizard.phrases.answer_words import choice_words, field_text
from wizard.questions.question import Question
from wizard.questions.sheet_order import SheetLine, sheet_lines
from wizard.tui.widgets.answer_list import shortened
from wizard.tui.widgets.pressable import Pressable, with_action

Way = Literal["up", "down", "left", "right", "next", "previous"]

TAKEN, KEPT, QUERIED, REFUSED, SKIPPED, OPEN = "✓", "!", "?", "✗", "–", " "
"""Marks of a cell: taken, kept with a reason, queried, refused, skipped, open."""

STYLES = {
    TAKEN: "$success",
    KEPT: "bold $warning",
    QUERIED: "bold $warning",
    REFUSED: "bold $error",
    SKIPPED: "$quiet",
    OPEN: "",
}
COLUMNS = 3
NARROWEST_NAME, WIDEST_NAME = 14, 24
"""Columns of the name of a line."""


@dataclass(frozen=True)
class Cell:
    """One cell of the table.

    Attributes
    ----------
    path : str
        Path of its question.
    column : int
        0 for a height or a single reading, 1 for an offset, 2 for a station.
    mark : str
    words : str
        The reading as it was typed; "" without one.
    """

    path: str
    column: int
    mark: str
    words: str


@dataclass(frozen=True)
class Row:
    """A line of the sheet with its cells, from left to right."""

    number: int
    name: str
    part: str
    cells: tuple[Cell, ...]


def rows_of(flow: Flow, left: Mapping[str, tuple[str, str]]) -> tuple[Row, ...]:
    """Rows of the table.

    Parameters
    ----------
    flow : Flow
    left : mapping of str to (str, str)
        Mark and text of each cell that was left with an answer that was not taken, by its path.
    """
    kept = {entry.get("reading") for entry in flow.document.get("kept", ())}

    def cell(question: Question) -> Cell:
        path = question.path
        if path in left:
            mark, words = left[path]
        elif (value := value_at(flow.document, path)) is None:
            mark, words = SKIPPED if flow.is_settled(question) else OPEN, ""
        else:
            mark = KEPT if path.removeprefix("readings.") in kept else TAKEN
            words = choice_words(question, value) if question.choices else field_text(value)
        return Cell(path, column_of(question), mark, _without_unit(words, flow))

    return tuple(
        Row(line.number, _name(line), line.part, tuple(map(cell, line.questions)))
        for line in sheet_lines(flow.document, flow.profile)
    )


def column_of(question: Question) -> int:
    """Column of a reading: that of its coordinate, or the first one."""
    kind = question.path.rpartition(".")[2].rpartition("_")[2]
    return COORDINATES.index(kind) if kind in COORDINATES else 0


def neighbour(rows: Sequence[Row], path: str, way: Way) -> str:
    """Path of the cell beside another one; the same path at an edge of the table."""
    cells = [cell for row in rows for cell in row.cells]
    place = next((place for place, cell in enumerate(cells) if cell.path == path), 0)
    if way in ("next", "previous"):
        step = 1 if way == "next" else -1
        return cells[min(max(place + step, 0), len(cells) - 1)].path
    number = next((number for number, row in enumerate(rows) if cells[place] in row.cells), 0)
    if way in ("left", "right"):
        in_row = rows[number].cells
        index = in_row.index(cells[place]) + (1 if way == "right" else -1)
        return in_row[index].path if 0 <= index < len(in_row) else path
    number += 1 if way == "down" else -1
    if not 0 <= number < len(rows):
        return path
    column = cells[place].column
    return min(rows[number].cells, key=lambda cell: abs(cell.column - column)).path


class ReadingsTable(Pressable):
    """Shows the rows about the cell at hand; a click on a cell goes there."""

    rows: reactive[Sequence[Row]] = reactive(())
    at: reactive[str] = reactive("")

    def show(self, rows: Sequence[Row], at: str) -> None:
        """Show rows, with the cell at hand."""
        self.rows, self.at = rows, at

    def render(self) -> Content:
        """A line with the columns, then as many rows as there is room for."""
        room = max(self.size.height - 1, 1)
        here = next((place for place, row in enumerate(self.rows) if self._is_at(row)), 0)
        first = max(min(here - room // 2, len(self.rows) - room), 0)
        cell_width = max(min((self.size.width - NARROWEST_NAME - 3) // COLUMNS, 15), 7)
        name_width = min(self.size.width - 3 - COLUMNS * cell_width, WIDEST_NAME)
        heads = "".join(set_cell_size(f" {head}", cell_width) for head in COORDINATES)
        lines = [Content.styled(" " * (name_width + 3) + heads, "$quiet")]
        shown = self.rows[first : first + room]
        lines += [self._line(row, name_width, cell_width) for row in shown]
        return Content("\n").join(lines)

    def _is_at(self, row: Row) -> bool:
        return any(cell.path == self.at for cell in row.cells)

    def _line(self, row: Row, name_width: int, cell_width: int) -> Content:
        style = "bold" if self._is_at(row) else "$quiet"
        parts: list[Content] = [
            Content.styled(f"{row.number:>2} {set_cell_size(row.name, name_width)}", style)
        ]
        by_column = {cell.column: cell for cell in row.cells}
        is_single = len(row.cells) == 1 and row.cells[0].column == 0
        for column in range(1 if is_single else COLUMNS):
            width = COLUMNS * cell_width if is_single else cell_width
            cell = by_column.get(column)
            parts.append(Content(" " * width) if cell is None else self._cell(cell, width))
        return Content("").join(parts)

    def _cell(self, cell: Cell, width: int) -> Content:
        room = width - 2
        words = set_cell_size(shortened(cell.words or "·", room), room)
        here = " reverse" if cell.path == self.at else ""
        content = Content.assemble((cell.mark, STYLES[cell.mark]), (words, here.strip()), " ")
        return with_action(content, f"go_to({cell.path!r})")


def _name(line: SheetLine) -> str:
    return line.name.partition(", offset")[0]


def _without_unit(words: str, flow: Flow) -> str:
    """Readings without the unit of the session, which the heading names."""
    unit = f" {units_of(flow.document)}"
    return "; ".join(part.removesuffix(unit).removesuffix(" deg") for part in words.split("; "))
