"""One question at hand: its answer is accepted, queried, refused, or kept with a reason."""

from abc import abstractmethod
from datetime import datetime
from pathlib import Path
from typing import Any

from textual.app import ComposeResult
from textual.screen import Screen

from core.documents.document import value_at, without
from core.documents.entries import units_of
from core.documents.record import DiskError, RecordError
from core.entry_checks.outcome import Queried, Refused
from core.text.plain_text import plain
from wizard.flow.answering import answer_question, keep_queried
from wizard.flow.draft_store import AnsweredElsewhere
from wizard.flow.flow import Flow
from wizard.flow.likeness import like_choices
from wizard.flow.opening import OpenedSession
from wizard.flow.profile_choices import profile_choices
from wizard.flow.unentered_input import UnenteredInput
from wizard.phrases.answer_words import answer_in_words, field_text
from wizard.questions.question import Question
from wizard.tui.host import Host
from wizard.tui.screens.answer_state import (
    AnswerQueried,
    AnswerState,
    AwaitingAnswer,
    AwaitingReason,
)
from wizard.tui.screens.other_folder import GO_ON_ELSEWHERE, folder_question
from wizard.tui.widgets.keys import Key
from wizard.tui.widgets.question_view import QuestionView, has_repeats
from wizard.tui.widgets.remark import RemarkKind
from wizard.tui.widgets.worksheet import Worksheet

ACTIONS_WITH_REASON = frozenset(("submit", "back", "help", "leave", "elsewhere"))
"""Actions that are allowed while a reason is asked for."""


class AnsweringScreen(Screen[str]):
    """Asks the question at hand of a session, and writes each accepted answer to the disk.

    Parameters
    ----------
    opened : OpenedSession
        The place to begin at, and the session that is measured again, whose values stay in view.

    Attributes
    ----------
    flow : Flow
    earlier : mapping or None
        The session that is measured again.
    state : AnswerState
        State of the question at hand.
    saved : str
        Time of the last write to the disk, in words; empty before the first.
    unentered : UnenteredInput
        Texts that were typed and not entered.
    unkept : Flow or None
        The flow that the disk has refused; it can be kept in another folder.
    """

    app: Host

    BINDINGS = [("f5", "keep", "keep"), ("f6", "elsewhere", "another folder")]

    def __init__(self, opened: OpenedSession) -> None:
        super().__init__()
        self.flow = opened.flow
        self.earlier = opened.earlier
        self.first_remark = opened.remark
        self.state: AnswerState = AwaitingAnswer()
        self.saved = ""
        self.unentered = UnenteredInput()
        self.unkept: Flow | None = None

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """Allow few actions while a reason is asked for."""
        return not isinstance(self.state, AwaitingReason) or action in ACTIONS_WITH_REASON

    def compose(self) -> ComposeResult:
        """Yield the worksheet."""
        yield Worksheet()

    def on_mount(self) -> None:
        """Ask the first question."""
        self.ask()
        if self.first_remark:
            self.say("trouble", self.first_remark)

    @abstractmethod
    def show_step(self, question: Question) -> None:
        """Show a step that has a screen of its own."""

    def ask(self) -> None:
        """Put the question at hand, or show the step that has a screen of its own."""
        self.state, self.unkept = AwaitingAnswer(), None
        question = self.flow.question
        if question.kind == "show":
            self.show_step(question)
            return
        choices = question.choices_for(self.flow.document)
        if question.kind == "profile":
            choices = profile_choices(self.app.profile_folders)
            if self.flow.is_short and self.earlier is None:
                choices += like_choices(self.app.files, self.flow.document)
        self.query_one(Worksheet).show(self.flow, choices, self.earlier, self.saved)
        if typed := self.unentered.take(question.path):
            self.query_one(QuestionView).retype(typed)
            self.say("not entered", "this was typed and left; Enter takes it")

    def say(self, kind: RemarkKind, text: str, way_out: str = "") -> None:
        """Say under the field why an answer was not accepted."""
        self.query_one(QuestionView).say(kind, text, way_out)

    def check_answer(self, given: Any) -> None:
        """Accept the answer to the question at hand, query it, or refuse it."""
        app, self.unkept = self.app, None
        outcome = answer_question(self.flow, given, app.profile_folders, app.files, self.earlier)
        if isinstance(outcome, Flow):
            self.move_to(outcome.kept_on_sheet(self.flow))
        elif isinstance(outcome, Queried):
            self.state = AnswerQueried(outcome, given)
            again = "choose again" if self.flow.question.is_chosen else "type it again"
            if isinstance(given, str) and has_repeats(given):
                again = "type one more reading, which is added"
            self.say("queried", outcome.message, f"{again}, or F5 keeps it with a reason")
            self.query_one(Worksheet).offer(Key("F5", "keep it", "keep"))
        else:
            self.state = AwaitingAnswer()
            self.query_one(Worksheet).offer()
            self.say("refused", outcome.message)
            self.select_refused(given)

    def select_refused(self, given: Any) -> None:
        """Select what was refused: the last reading where those before it are possible."""
        before, separator, _ = given.rpartition(";") if isinstance(given, str) else ("", "", "")
        if separator and before.strip():
            app = self.app
            outcome = answer_question(self.flow, before, app.profile_folders, app.files)
            if not isinstance(outcome, Refused):
                self.query_one(QuestionView).select_last_reading()

    def move_to(self, flow: Flow) -> bool:
        """Write a flow to the disk, then ask its question; False if the answer was not kept."""
        try:
            kept, refusal = self.app.keep(flow, self.flow), None
        except AnsweredElsewhere as error:
            self.show_other_answers(error)
            return False
        except RecordError as error:
            if without(flow.document, "draft") != without(self.flow.document, "draft"):
                self.show_trouble(error, flow)
                return False
            self.app.warn(str(error))  # only the place is lost: moving about is still allowed
            kept, refusal = flow, error
        else:
            if value_at(kept.document, "session.id"):
                self.saved = f"✓ kept {datetime.now():%H:%M:%S}"
        self.remember_typed(kept)
        self.flow = kept
        self.ask()
        if refusal:
            self.offer_other_folder(refusal, kept)
        return True

    @property
    def is_typed_over(self) -> bool:
        """True if the field holds another text than the answer that was accepted."""
        if self.flow.question.kind == "show":  # the field still holds the answer before
            return False
        typed = self.query_one(QuestionView).typed
        answer = value_at(self.flow.document, self.flow.question.path)
        return bool(typed.strip()) and typed != field_text(answer)

    def remember_typed(self, flow: Flow) -> None:
        """Remember a text that was typed and not entered, until its question is asked again."""
        path = self.flow.question.path
        is_left = flow.question.path != path
        is_same = value_at(flow.document, path) == value_at(self.flow.document, path)
        gives_reason = isinstance(self.state, AwaitingReason)
        if is_left and is_same and self.is_typed_over and not gives_reason:
            self.unentered.keep(self.flow, self.query_one(QuestionView).typed)

    def show_trouble(self, error: RecordError, unkept: Flow) -> None:
        """Say why a flow could not be written, and stay at the question."""
        if self.flow.question.kind == "show":
            self.notify(str(error), severity="error", markup=False)
            self.ask()
            return
        self.offer_other_folder(error, unkept)
        self.say("trouble", str(error), GO_ON_ELSEWHERE if self.unkept else "")

    def show_other_answers(self, error: AnsweredElsewhere) -> None:
        """Take over the answers of another window; an answer in the field waits there."""
        typed = self.query_one(QuestionView).typed
        if isinstance(self.state, AwaitingReason):
            typed = self.state.given
        is_asked = self.flow.question.kind != "show"
        if is_asked and isinstance(typed, str) and typed.strip():
            self.unentered.keep(self.flow, typed)
        self.flow = self.app.take_over(self.flow, error.document)
        self.ask()
        if is_asked:
            self.say("trouble", str(error))
        else:
            self.notify(str(error), severity="error", markup=False)

    def offer_other_folder(self, error: RecordError, unkept: Flow) -> None:
        """Offer to keep a flow in another folder, if the disk has refused it."""
        if isinstance(error, DiskError) and self.flow.question.kind != "show":
            self.unkept = unkept
            self.query_one(Worksheet).offer(Key("F6", "another folder", "elsewhere"))

    def action_elsewhere(self) -> None:
        """Ask for another folder, and keep the session there."""
        if self.unkept is not None:
            self.app.push_screen(folder_question(), self.go_on_in)

    def go_on_in(self, folder: Path | None) -> None:
        """Keep the session in another folder."""
        if folder is not None and self.unkept is not None:
            self.app.go_on_in(folder)
            self.move_to(self.unkept)
        elif self.flow.question.kind == "show":
            self.ask()

    def keep_with_reason(self, state: AwaitingReason, reason: str) -> None:
        """Keep a queried answer, if the reason is accepted."""
        outcome = keep_queried(self.flow, state.query.value, reason, self.earlier)
        if isinstance(outcome, Flow):
            self.move_to(outcome.kept_on_sheet(self.flow))
        else:
            self.say("refused", outcome.message)

    def action_submit(self) -> None:
        """Submit the answer, for the mouse."""
        self.query_one(QuestionView).submit()

    def action_keep(self) -> None:
        """Ask why a queried answer is to be kept."""
        if not isinstance(self.state, AnswerQueried):
            return
        given = self.query_one(QuestionView).answer
        if given not in (None, self.state.given):  # another answer was typed since
            self.check_answer(given)
            return
        query = self.state.query
        self.state = self.state.reason_asked()
        kept = answer_in_words(self.flow.question, query.value, units_of(self.flow.document))
        self.query_one(Worksheet).ask_reason(plain(kept, 40), query.message)
