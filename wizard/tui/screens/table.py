"""Typing a sheet in: all readings in one table, each checked as its cell is left."""

from typing import Any, NamedTuple

from textual import on
from textual.binding import Binding

from core.documents.document import with_value
from core.documents.entries import units_of
from core.text.quantity import other_unit
from wizard.flow.flow import Flow
from wizard.flow.opening import OpenedSession
from wizard.flow.undo import describe_undo
from wizard.phrases.help import help_on
from wizard.questions.question import Question
from wizard.tui.screens.answer_state import AwaitingReason
from wizard.tui.screens.answering import AnsweringScreen
from wizard.tui.screens.help import HelpScreen, tapes_of
from wizard.tui.widgets.field import Field
from wizard.tui.widgets.keys import Key
from wizard.tui.widgets.question_view import NOTHING_CHOSEN, QuestionView
from wizard.tui.widgets.readings_table import (
    QUERIED,
    REFUSED,
    ReadingsTable,
    Row,
    Way,
    neighbour,
    rows_of,
)
from wizard.tui.widgets.remark import RemarkKind
from wizard.tui.widgets.worksheet import Worksheet

MARKS: dict[str, str] = {"queried": QUERIED, "refused": REFUSED}
"""Marks of a cell by the remark on its answer."""


class TableLeft(NamedTuple):
    """Result of the table: the session at the cell that was left, and whether it goes home."""

    flow: Flow
    goes_home: bool = False


class TableScreen(AnsweringScreen):
    """The readings of the sheet; checks, draft and undo are those of the questions.

    A cell is entered when it is left. An answer that is queried or refused stays in its cell, with
    a remark. The next key that moves leaves it there, marked and not entered.
    """

    BINDINGS = [
        Binding("up", "move('up')", priority=True),
        Binding("down", "move('down')", priority=True),
        Binding("left", "move_aside('left')", priority=True),
        Binding("right", "move_aside('right')", priority=True),
        Binding("tab", "move('next')", priority=True),
        Binding("shift+tab", "move('previous')", priority=True),
        ("escape,ctrl+t", "back", "questions"),
        ("f1", "help", "help"),
        ("f2", "units", "units"),
        ("f4", "skip", "skip"),
        ("f8,ctrl+z", "undo", "undo"),
        ("f9", "leave", "leave"),
    ]

    def __init__(self, opened: OpenedSession) -> None:
        super().__init__(opened)
        self.left: dict[str, tuple[str, str]] = {}
        """Mark and text of cells whose answer was not taken, by path."""
        self.goes_to = ""
        """Path of the cell to go to when the answer at hand is taken; "" to stay."""

    def on_mount(self) -> None:
        """Put the table above the field, at the question at hand or at the first open cell."""
        self.query_one(QuestionView).mount(ReadingsTable(), before=0)
        cells = [cell for row in self.rows for cell in row.cells]
        if self.flow.question.path not in [cell.path for cell in cells]:
            first = next((cell for cell in cells if not cell.mark.strip()), cells[0])
            self.flow = self.flow.going_to(first.path)

    @property
    def rows(self) -> tuple[Row, ...]:
        """Rows of the table as the answers stand."""
        return rows_of(self.flow, self.left)

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """Leave the arrows to the left and right to a text that is being typed."""
        if action == "move_aside" and not self.is_at_rest:
            return False
        return super().check_action(action, parameters)

    @property
    def is_at_rest(self) -> bool:
        """True if nothing was typed into the cell: its text is empty, or marked as a whole."""
        field = self.query_one(Field)
        start, end = sorted(field.selection)
        is_marked = (start, end) == (0, len(field.value))
        return not field.display or (is_marked and not self.is_typed_over)

    def show_step(self, question: Question) -> None:
        """Show no step: the table has readings alone."""

    def ask(self) -> None:
        """Ask for the reading of the cell at hand, and show the table."""
        super().ask()
        worksheet = self.query_one(Worksheet)
        worksheet.usual_keys = table_keys(self.flow)
        worksheet.offer()
        self.draw_table()

    def draw_table(self) -> None:
        """Show the table as the answers stand."""
        self.query_one(ReadingsTable).show(self.rows, self.flow.question.path)

    def say(self, kind: RemarkKind, text: str, way_out: str = "") -> None:
        """Say why an answer was not taken, and mark its cell."""
        super().say(kind, text, way_out)
        typed = self.query_one(QuestionView).typed
        if kind in MARKS and typed.strip() and not isinstance(self.state, AwaitingReason):
            self.left[self.flow.question.path] = MARKS[kind], typed
            self.draw_table()

    def move_to(self, flow: Flow) -> bool:
        """Write a flow to the disk, and go to the cell that comes next."""
        path, place = self.flow.question.path, self.goes_to or flow.question.path
        if place not in [cell.path for row in rows_of(flow, {}) for cell in row.cells]:
            place = path
        is_answered = flow.document.get("readings") != self.flow.document.get("readings")
        typed_before = self.left.pop(path, None) if is_answered else None
        is_kept = super().move_to(flow.going_to(place))
        if not is_kept and typed_before:
            self.left[path] = typed_before
        return is_kept

    @on(QuestionView.Submitted)
    def handle_answer(self, event: QuestionView.Submitted) -> None:
        """Take the answer of the cell at hand, and go to the next cell."""
        given, path = event.answer, self.flow.question.path
        self.goes_to = neighbour(self.rows, path, "next")
        if isinstance(self.state, AwaitingReason):
            self.keep_with_reason(self.state, str(given))
        elif given is None:
            self.say("refused", NOTHING_CHOSEN)
        elif isinstance(given, str) and not given.strip():
            self.action_skip() if self.flow.question.optional else self.go_to(self.goes_to)
        else:
            self.check_answer(given)
        self.goes_to = ""

    def action_move(self, way: Way) -> None:
        """Leave the cell for the one beside it."""
        self.leave_cell(neighbour(self.rows, self.flow.question.path, way))

    def action_move_aside(self, way: Way) -> None:
        """Leave the cell for the one to its left or right."""
        self.action_move(way)

    def action_go_to(self, path: str) -> None:
        """Leave the cell for another one."""
        self.leave_cell(path)

    def leave_cell(self, path: str) -> None:
        """Enter what was typed, and go to another cell; what was not taken can be left there."""
        here, typed = self.flow.question.path, self.query_one(QuestionView).typed
        was_objected = here in self.left and self.left[here][1] == typed
        if self.is_typed_over and not was_objected:
            self.goes_to = path
            self.check_answer(typed)
            self.goes_to = ""
        elif path != here:
            self.go_to(path)

    def go_to(self, path: str) -> None:
        """Go to a cell."""
        self.move_to(self.flow.going_to(path))

    def action_skip(self) -> None:
        """Skip the reading of the cell, and take it out of the session where it was answered."""
        if not self.flow.question.optional:
            self.say("refused", "this one is needed and cannot be skipped")
            return
        path = self.flow.question.path
        self.left.pop(path, None)
        self.query_one(QuestionView).retype("")
        self.goes_to = neighbour(self.rows, path, "next")
        self.move_to(self.flow.skipped())
        self.goes_to = ""

    def action_undo(self) -> None:
        """Undo the last answer, and put its text back into its cell."""
        if not self.flow.past:
            return
        answered = self.flow
        if self.move_to(self.flow.undone()):
            words, text = describe_undo(answered, self.flow)
            if text:
                self.query_one(QuestionView).retype(text)
            if words:
                self.say("undone", words)

    def action_units(self) -> None:
        """Change the unit of lengths; a text in the cell stays as it is."""
        typed, document = self.query_one(QuestionView).typed, self.flow.document
        other = other_unit(units_of(document))
        self.move_to(self.flow.with_document(with_value(document, "session.units", other)))
        self.query_one(QuestionView).retype(typed)

    def action_help(self) -> None:
        """Show help on the reading at hand."""
        facts = self.query_one(Worksheet).closure_facts
        self.app.push_screen(HelpScreen(help_on(self.flow.question, facts), tapes_of(self.flow)))

    def action_back(self) -> None:
        """Go back to the questions, at this reading; from a reason go back to its cell."""
        if isinstance(self.state, AwaitingReason):
            given = self.state.given
            self.ask()
            self.query_one(QuestionView).retype(given)
        else:
            self.leave(goes_home=False)

    def action_leave(self) -> None:
        """Go home; the draft stays."""
        self.leave(goes_home=True)

    def leave(self, goes_home: bool) -> None:
        """Leave the table; texts that were not taken wait in their questions."""
        if not isinstance(self.state, AwaitingReason) and self.is_typed_over:
            self.unentered.keep(self.flow, self.query_one(QuestionView).typed)
        result: Any = TableLeft(self.flow, goes_home)
        self.dismiss(result)


def table_keys(flow: Flow) -> tuple[Key, ...]:
    """Keys of the table."""
    return (
        Key("Enter", "next", "submit"),
        Key("↑ ↓ Tab", "other cells"),
        *([Key("F4", flow.question.skip, "skip")] if flow.question.optional else []),
        *([Key("F8", "undo", "undo")] if flow.past else []),
        Key("F2", other_unit(units_of(flow.document)), "units"),
        Key("Ctrl+T", "questions", "back"),
        Key("F1", "help", "help"),
        Key("F9", "leave", "leave"),
    )
