"""The direct check of a session: a table of rows, each cell checked and kept as it is left."""

from typing import Literal

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Horizontal
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

from core.documents.document import Document
from core.documents.entries import EntryError, units_of
from core.profiles.profile import ProfileError
from core.verdict.assess import assess
from core.verdict.verdict import Verdict
from wizard.flow.answers import applicable_answers
from wizard.flow.direct_rows import (
    GOING,
    HEIGHT,
    SIDE,
    cell_text,
    columns_of,
    is_whole,
    next_row,
    typed_check,
    typed_rows,
    with_cell,
    without_check,
    without_row,
)
from wizard.flow.flow import Flow
from wizard.phrases.direct import closing_words
from wizard.phrases.direct_steps import ASK, cell_hint, method_words, progress_words, so_far_words
from wizard.phrases.session_names import session_words
from wizard.tui.host import Host
from wizard.tui.pictures.curve import Curve
from wizard.tui.screens.direct_set_up import DirectSetUp
from wizard.tui.widgets.direct_table import At, DirectTable
from wizard.tui.widgets.field import Field
from wizard.tui.widgets.heading import Heading
from wizard.tui.widgets.keys import Key, Keys
from wizard.tui.widgets.remark import Remark
from wizard.views.verdict import curve_of

Way = Literal["up", "down", "left", "right", "next", "previous"]

LEAVE_OUT = "Tab or Esc leaves it out"

LEAVE_AGAIN = "; Esc again leaves it so"


class DirectScreen(Screen[Flow]):
    """Takes the rows of a direct check. Its result is the session.

    A cell is entered when it is left. Enter goes on to the next reading, and after the last one to
    the next row, which has the side and the way of the row above it.

    Parameters
    ----------
    flow : Flow
        The session that is measured.

    Attributes
    ----------
    at : At
        The cell at hand.
    """

    app: Host

    BINDINGS = [
        Binding("up", "move('up')", priority=True),
        Binding("down", "move('down')", priority=True),
        Binding("left", "move_aside('left')", priority=True),
        Binding("right", "move_aside('right')", priority=True),
        Binding("tab", "move('next')", priority=True),
        Binding("shift+tab", "move('previous')", priority=True),
        ("escape", "close", "back"),
        ("f8,ctrl+z", "undo", "undo"),
    ]

    def __init__(self, flow: Flow) -> None:
        super().__init__()
        self.flow = flow
        self.at = At(0, HEIGHT)
        self.refused: At | None = None
        self.not_taken = ""
        """Text that was not taken; a key that moves on drops it."""
        self.was_warned = False

    def compose(self) -> ComposeResult:
        """Yield the table beside the curve, the field, the keys."""
        yield Heading()
        yield Static(id="direct-method")
        with Horizontal(id="direct"):
            yield DirectTable()
            yield Curve()
        yield Static(id="direct-state")
        yield Static(id="direct-ask")
        yield Field()
        yield Remark()
        yield Keys()

    def on_mount(self) -> None:
        """Show the rows, or ask for the method first."""
        self.query_one(Heading).left = f"{session_words(self.flow.document)}, direct check"
        self.query_one(Field).focus()
        if typed_check(self.flow.document):
            self.at = At(len(typed_rows(self.flow.document)), HEIGHT)
            self.show()
        else:
            self.set_up()

    def set_up(self) -> None:
        """Ask for the method; without one the check is left."""

        def begin(document: Document | None) -> None:
            if document is None:
                self.dismiss(self.flow)
            elif self.keep(document):
                self.at = At(0, HEIGHT)
                self.show()

        self.app.push_screen(DirectSetUp(self.flow.document), begin)

    @property
    def columns(self) -> tuple[str, ...]:
        """Cells of a row."""
        return columns_of(typed_check(self.flow.document))

    @property
    def rows(self) -> list[dict[str, object]]:
        """Rows that were typed, and an open one below them."""
        rows = typed_rows(self.flow.document)
        table = typed_check(self.flow.document)
        is_open = not rows or is_whole(table, rows[-1])
        return [*rows, next_row(rows)] if is_open else rows

    def show(self) -> None:
        """Show the rows, the curve, and the cell at hand."""
        document, unit = self.flow.document, units_of(self.flow.document)
        table, rows = typed_check(document), self.rows
        self.at = At(min(self.at.place, len(rows) - 1), self.at.key)
        self.query_one("#direct-method", Static).update(Content(method_words(table)))
        self.query_one(DirectTable).show(rows, self.columns, self.at, unit, self.refused)
        verdict = self.verdict()
        if verdict is not None:
            self.query_one(Curve).show(curve_of(verdict, unit))
        whole = [row for row in rows if is_whole(table, row)]
        state = f"{progress_words(whole)}. {so_far_words(verdict)}"
        self.query_one("#direct-state", Static).update(Content(state))
        ask = f"{self.at.place + 1}  {ASK[self.at.key]}"
        self.query_one("#direct-ask", Static).update(Content(ask))
        field = self.query_one(Field)
        field.begin(cell_text(rows[self.at.place], self.at.key))
        field.select_text()
        self.query_one(Remark).hint(cell_hint(self.at.key, unit))
        self.query_one(Keys).keys = (
            Key("Enter", "next", "submit"),
            Key("↑ ↓ ← → Tab", "other cells"),
            Key("F8", "take the row out" if typed_rows(document) else "another method", "undo"),
            Key("Esc", "back to the verdict", "close"),
        )

    def verdict(self) -> Verdict | None:
        """Verdict on the session with the rows so far; None where it has none."""
        profile = self.flow.profile
        if profile is None:
            return None
        try:
            return assess(applicable_answers(self.flow.document, profile), lambda _: profile, 0)
        except (EntryError, ProfileError):
            return None

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """Leave the arrows to the left and right to a text that is being typed."""
        if action == "move_aside" and self.is_typed:
            return False
        return super().check_action(action, parameters)

    @property
    def is_typed(self) -> bool:
        """True if the field has another text than its cell."""
        text = self.query_one(Field).value.strip()
        return bool(text) and text != cell_text(self.rows[self.at.place], self.at.key)

    def enter_typed(self) -> bool:
        """Keep what was typed into the cell at hand; False where it is not taken the first time."""
        text = self.query_one(Field).value
        if not self.is_typed or text == self.not_taken:
            self.refused, self.not_taken = None, ""
            return True
        self.was_warned = False
        self.not_taken = text
        try:
            document = with_cell(self.flow.document, self.at.place, self.at.key, text)
        except EntryError as error:
            self.refused = self.at
            unit = units_of(self.flow.document)
            self.query_one(DirectTable).show(self.rows, self.columns, self.at, unit, self.at)
            self.query_one(Remark).say("refused", error.reason, LEAVE_OUT)
            return False
        self.refused = None
        is_kept = self.keep(document)
        self.not_taken = "" if is_kept else text
        return is_kept

    def keep(self, document: Document) -> bool:
        """Keep the session with other rows on the disk."""
        self.flow, is_kept = self.app.keep_or_warn(self.flow.with_document(document), self.flow)
        return is_kept

    @on(Field.Submitted)
    def action_submit(self) -> None:
        """Keep the cell, and go to the next reading, or to the next row."""
        self.not_taken = ""  # Enter has a text checked again, however often it was refused
        if not self.enter_typed():
            return
        readings = [key for key in self.columns if key not in (SIDE, GOING)]
        place, key = self.at
        row = self.rows[place]
        if key == SIDE:
            self.at = At(place, HEIGHT)
        elif key == GOING or (key == readings[-1] and row.get(key)):
            self.at = At(place + 1, HEIGHT)
        elif row.get(key):
            self.at = At(place, readings[readings.index(key) + 1])
        self.show()

    def action_move(self, way: Way) -> None:
        """Leave the cell for the one beside it."""
        if self.enter_typed():
            self.at = neighbour(self.at, way, self.columns, len(self.rows))
            self.show()

    def action_move_aside(self, way: Way) -> None:
        """Leave the cell for the one to its left or right."""
        self.action_move(way)

    def action_go_to(self, place: int, key: str) -> None:
        """Leave the cell for another one."""
        if self.enter_typed():
            self.at = At(place, key)
            self.show()

    def action_undo(self) -> None:
        """Take the row at hand out, or the one above an open row; without rows the method."""
        rows = typed_rows(self.flow.document)
        if not rows:
            if self.keep(without_check(self.flow.document)):
                self.set_up()
            return
        place = min(self.at.place, len(rows) - 1)
        if self.keep(without_row(self.flow.document, place)):
            self.at, self.refused = At(place, HEIGHT), None
            self.show()

    def action_close(self) -> None:
        """Go back to the verdict; say once what is still missing."""
        if not self.enter_typed():
            return
        missing = self.missing_words()
        if missing and not self.was_warned:
            self.show()
            self.was_warned = True
            self.query_one(Remark).say("not entered", missing + LEAVE_AGAIN)
        else:
            self.dismiss(self.flow)

    def missing_words(self) -> str:
        """Words on rows that are missing; "" where nothing is."""
        rows, verdict = typed_rows(self.flow.document), self.verdict()
        if not rows:
            return ""
        if not is_whole(typed_check(self.flow.document), rows[-1]):
            return "the last row is not whole"
        if verdict is None or verdict.direct is None:
            return "one height says nothing yet; at least four more heights are read"
        if not verdict.direct.has_returned:
            return closing_words(verdict.direct, units_of(self.flow.document)).removesuffix(".")
        return ""


def neighbour(at: At, way: Way, columns: tuple[str, ...], rows: int) -> At:
    """The cell beside another one; the same cell at an edge of the table."""
    column = columns.index(at.key)
    if way in ("up", "down"):
        place = at.place + (1 if way == "down" else -1)
        return At(place, at.key) if 0 <= place < rows else at
    step = 1 if way in ("right", "next") else -1
    place, column = at.place, column + step
    if way in ("next", "previous") and not 0 <= column < len(columns):
        place, column = place + step, column % len(columns)
    return At(place, columns[column]) if 0 <= place < rows and 0 <= column < len(columns) else at
