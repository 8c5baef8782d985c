"""The rows of a direct check in a table, with the cell at hand."""

from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from rich.cells import set_cell_size
from textual.content import Content
from textual.reactive import reactive

from wizard.flow.direct_rows import WORDS, cell_text
from wizard.tui.widgets.answer_list import shortened
from wizard.tui.widgets.pressable import Pressable, with_action
from wizard.tui.widgets.readings_table import OPEN, REFUSED, STYLES, TAKEN

NARROWEST, WIDEST, NUMBER, WORD = 7, 12, 3, 7
"""Columns of a reading at least and at most, of the number of a row, and of a word."""


class At(NamedTuple):
    """A cell: index of its row, and its column."""

    place: int
    key: str


class DirectTable(Pressable):
    """Shows the rows about the cell at hand; a click on a cell goes there."""

    rows: reactive[Sequence[Mapping[str, Any]]] = reactive(())
    columns: reactive[Sequence[str]] = reactive(())
    at: reactive[At] = reactive(At(0, ""))
    refused: reactive[At | None] = reactive(None)
    unit = ""

    def show(
        self,
        rows: Sequence[Mapping[str, Any]],
        columns: Sequence[str],
        at: At,
        unit: str,
        refused: At | None = None,
    ) -> None:
        """Show rows, with the cell at hand and a cell whose text was refused."""
        self.unit = unit
        self.rows, self.columns, self.at, self.refused = tuple(rows), columns, at, refused

    def render(self) -> Content:
        """A line with the columns, then as many rows as there is room for."""
        if not self.columns:
            return Content("")
        readings = [key for key in self.columns if key not in WORDS]
        left = self.size.width - NUMBER - WORD * (len(self.columns) - len(readings))
        width = min(max(left // len(readings), NARROWEST), WIDEST)
        widths = {key: width if key in readings else WORD for key in self.columns}
        room = max(self.size.height - 1, 1)
        first = max(min(self.at.place - room // 2, len(self.rows) - room), 0)
        heads = "".join(set_cell_size(f" {name}", widths[name]) for name in self.columns)
        lines = [Content.styled(" " * NUMBER + heads, "$quiet")]
        for place, row in list(enumerate(self.rows))[first : first + room]:
            style = "bold" if place == self.at.place else "$quiet"
            cells = (self._cell(At(place, key), row, widths[key]) for key in self.columns)
            lines.append(Content("").join([Content.styled(f"{place + 1:>2} ", style), *cells]))
        return Content("\n").join(lines)

    def _cell(self, at: At, row: Mapping[str, Any], width: int) -> Content:
        text = cell_text(row, at.key).replace(f" {self.unit}", "").replace(" deg", "")
        mark = REFUSED if at == self.refused else TAKEN if text else OPEN
        words = set_cell_size(shortened(text or "·", width - 2), width - 2)
        here = "reverse" if at == self.at else ""
        content = Content.assemble((mark, STYLES[mark]), (words, here), " ")
        return with_action(content, f"go_to({at.place}, {at.key!r})")
