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
LEGEND = "✓ taken  ! kept with a reason  ? queried  ✗ refused  – skipped"

COLUMNS = 3
"""Cells of a line with coordinates."""

NARROWEST, WIDEST, WIDEST_NAME = 9, 15, 24
"""Columns of a cell and of the name of a line."""


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
        cell_width = min(max((self.size.width - 3 - WIDEST_NAME) // COLUMNS, NARROWEST), WIDEST)
        name_width = min(self.size.width - 3 - COLUMNS * cell_width, WIDEST_NAME)
        heads = "".join(set_cell_size(f" {head}", cell_width) for head in COORDINATES)
        lines = [Content.styled(" " * (name_width + 3) + heads, "$quiet")]
        shown = self.rows[first : first + room]
        lines += [self._line(row, name_width, cell_width) for row in shown]
        if len(shown) + 2 <= room and len(LEGEND) <= self.size.width:
            lines += [Content(""), Content.styled(LEGEND, "$quiet")]
        return Content("\n").join(lines)

    def _is_at(self, row: Row) -> bool:
        return any(cell.path == self.at for cell in row.cells)

    def _line(self, row: Row, name_width: int, cell_width: int) -> Content:
        style = "bold" if self._is_at(row) else "$quiet"
        first = row.cells[0]
        if len(row.cells) == 1 and first.column == 0:  # its name and its cell have more room
            name_width += cell_width if len(row.name) > name_width else 0
            widths = {0: self.size.width - 3 - name_width}
        else:
            widths = dict.fromkeys(range(COLUMNS), cell_width)
        name = f"{row.number:>2} {set_cell_size(row.name, name_width)}"
        by_column = {cell.column: cell for cell in row.cells}
        cells = (
            self._cell(by_column[column], width) if column in by_column else Content(" " * width)
            for column, width in widths.items()
        )
        return Content("").join([Content.styled(name, style), *cells])

    def _cell(self, cell: Cell, width: int) -> Content:
        room = width - 2
        words = set_cell_size(_fitted(cell.words or "·", room), room)
        here = " reverse" if cell.path == self.at else ""
        content = Content.assemble((cell.mark, STYLES[cell.mark]), (words, here.strip()), " ")
        return with_action(content, f"go_to({cell.path!r})")


def _fitted(words: str, room: int) -> str:
    """Readings cut to the room; where two have no room the first one stays whole."""
    fitted = shortened(words, room)
    first, _, others = words.partition("; ")
    return f"{first}…" if others and not fitted.startswith(f"{first}; ") else fitted


def _name(line: SheetLine) -> str:
    """Name of a line; a pivot needs no "end" after its link and its side."""
    name = line.name.partition(", offset")[0]
    return name.removesuffix(" end").replace(" arm, ", " arm ") if line.is_pivot else name


def _without_unit(words: str, flow: Flow) -> str:
    """Readings without the unit of the session, which the heading names."""
    unit = f" {units_of(flow.document)}"
    return "; ".join(part.removesuffix(unit).removesuffix(" deg") for part in words.split("; "))
