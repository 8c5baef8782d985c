"""Measuring: one question at a time, each answer on the disk before the next one is asked."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from textual import on
from textual.app import ComposeResult
from textual.screen import Screen

from core.documents.document import value_at, with_value, without
from core.documents.entries import EntryError, units_of
from core.documents.record import RecordError, file_record
from core.entry_checks.outcome import Queried
from core.text.plain_text import plain
from core.text.quantity import other_unit
from wizard.flow import drafts
from wizard.flow.answering import answer_question, keep_queried
from wizard.flow.filing import finished_record
from wizard.flow.flow import Flow
from wizard.flow.opening import OpenedSession
from wizard.flow.profile_choices import profile_choices
from wizard.flow.retake import Retake
from wizard.flow.undo import describe_undo
from wizard.flow.unentered_input import UnenteredInput
from wizard.phrases.answer_words import answer_in_words, as_typed
from wizard.phrases.help import help_on
from wizard.questions.question import Question
from wizard.tui.host import Host
from wizard.tui.screens.help import HelpScreen
from wizard.tui.screens.step_screens import STEP_SCREENS
from wizard.tui.screens.steps import ask_step
from wizard.tui.widgets.asking import NOTHING_CHOSEN, Asking
from wizard.tui.widgets.guidance import Guidance
from wizard.tui.widgets.worksheet import Worksheet

WITH_A_REASON = frozenset(("hand_in", "back", "help", "leave"))
"""What can be done while a reason is asked for."""


class MeasureScreen(Screen[str]):
    """Takes a session through its steps; left with a line to show on the first page.

    Parameters
    ----------
    opened : Opened
        Where to begin or to go on, and the session that is measured again: its values stay in
        view.
    """

    app: Host

    BINDINGS = [
        ("escape,pageup", "back", "back"),
        ("pagedown", "forward", "forward"),
        ("up", "guidance(-1)", "guidance up"),
        ("down", "guidance(1)", "guidance down"),
        ("f1", "help", "help"),
        ("f2", "units", "units"),
        ("f3", "steps", "steps"),
        ("f4", "skip", "skip"),
        ("f5", "keep", "keep"),
        ("f8,ctrl+z", "undo", "undo"),
        ("f9", "leave", "leave"),
    ]

    def __init__(self, opened: OpenedSession) -> None:
        super().__init__()
        self.flow = opened.flow
        self.earlier = opened.earlier
        self.first_remark = opened.remark
        self.queried: Queried | None = None
        self.doubted: Any = None
        self.gives_reason = False
        self.saved = ""
        self.not_entered = UnenteredInput()

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """While a reason is asked for only what leads out of that."""
        return not self.gives_reason or action in WITH_A_REASON

    def compose(self) -> ComposeResult:
        """The worksheet is all there is."""
        yield Worksheet()

    def on_mount(self) -> None:
        """Ask the first question."""
        self.ask()
        if self.first_remark:
            self.say("trouble", self.first_remark)

    def ask(self) -> None:
        """Put the question at hand, or show the step that has a screen of its own."""
        self.queried, self.gives_reason = None, False
        question = self.flow.question
        if question.kind == "show":
            self.show_step(question)
            return
        choices = question.choices
        if question.kind == "profile":
            choices = profile_choices(self.app.profile_folders)
        self.query_one(Worksheet).show(self.flow, choices, self.earlier, self.saved)
        if typed := self.not_entered.take(question.path):
            self.query_one(Asking).retype(typed)
            self.say("not entered", "this was typed and left; Enter takes it")

    def show_step(self, question: Question) -> None:
        """Show a step on its own screen, and go on as it was left."""

        def left(how: Flow | Retake | None) -> None:
            if how is None:
                self.action_leave()
            elif isinstance(how, Retake):
                self.move(how.flow)
                self.query_one(Asking).retake(how.adds_repeat)
            else:
                self.move(how)

        self.app.push_screen(STEP_SCREENS[question.path](self.flow, self.earlier), left)

    def say(self, what: str, text: str, way_out: str = "") -> None:
        """Say what is wrong under the field; it can be mended there."""
        self.query_one(Asking).say(what, text, way_out)

    @on(Asking.HandedIn)
    def judge(self, event: Asking.HandedIn) -> None:
        """Take an answer, query it or refuse it."""
        question, given = self.flow.question, event.answer
        if self.gives_reason:
            self.keep_because(str(given))
        elif given is None:
            self.say("refused", NOTHING_CHOSEN)
        elif question.kind == "file":
            self.file() if given == "file" else self.action_leave()
        elif question.kind == "read":
            self.move(self.flow.skipped())
        elif question.optional and isinstance(given, str) and not given.strip():
            self.action_skip()
        else:
            self.check(given)

    def check(self, given: Any) -> None:
        """Answer the question at hand, if nothing speaks against it."""
        app = self.app
        outcome = answer_question(self.flow, given, app.profile_folders, app.files, self.earlier)
        if isinstance(outcome, Flow):
            self.move(outcome)
        elif isinstance(outcome, Queried):
            self.queried, self.doubted = outcome, given
            again = "choose again" if self.flow.question.is_chosen else "type it again"
            self.say("queried", outcome.message, f"{again}, or F5 keeps it with a reason")
            self.query_one(Worksheet).offer_to_keep(self.flow)
        else:
            self.queried = None
            self.query_one(Worksheet).offer_no_more(self.flow)
            self.say("refused", outcome.message)

    def move(self, flow: Flow) -> None:
        """To another place in the flow, once it is on the disk."""
        try:
            self.app.draft_store.keep(flow.document, self.flow.document)
        except RecordError as error:
            if without(flow.document, "draft") != without(self.flow.document, "draft"):
                self.trouble(str(error))
                return
            self.app.warn(str(error))  # only the place is not kept; one may look about all the same
        else:
            if value_at(flow.document, "session.id"):
                self.saved = f"✓ kept {datetime.now():%H:%M:%S}"
        self.remember_typed(flow)
        self.flow = flow
        self.ask()

    @property
    def is_typed_over(self) -> bool:
        """Whether something else stands in the field than the answer that was taken."""
        if self.flow.question.kind == "show":  # what stands there is the answer before
            return False
        typed = self.query_one(Asking).typed
        answer = value_at(self.flow.document, self.flow.question.path)
        return bool(typed.strip()) and typed != as_typed(answer)

    def remember_typed(self, flow: Flow) -> None:
        """What was typed and not entered waits for when its question comes up again."""
        path = self.flow.question.path
        same = value_at(flow.document, path) == value_at(self.flow.document, path)
        if flow.question.path != path and same and self.is_typed_over and not self.gives_reason:
            self.not_entered.keep(self.flow, self.query_one(Asking).typed)

    def trouble(self, text: str) -> None:
        """Say what the machine could not do, and stay where we are."""
        if self.flow.question.kind == "show":
            self.notify(text, severity="error", markup=False)
            self.ask()
        else:
            self.say("trouble", text)

    def keep_because(self, reason: str) -> None:
        """Keep a queried answer, if there is a reason."""
        if self.queried is None:
            return
        outcome = keep_queried(self.flow, self.queried.value, reason)
        if isinstance(outcome, Flow):
            self.move(outcome)
        else:
            self.say("refused", outcome.message)

    def file(self) -> None:
        """File the session; only what was read back counts as filed."""
        missing, profile = self.flow.missing, self.flow.profile
        if missing:
            others = f" and {len(missing) - 1} more" if len(missing) > 1 else ""
            self.say("refused", f"still to be answered: {missing[0].name}{others}; F3 goes there")
        if missing or profile is None:
            return
        try:
            self.app.draft_store.check_unchanged(self.flow.document)
            path = file_record(
                self.app.files, finished_record(self.flow.document, profile, drafts.now())
            )
        except (RecordError, EntryError) as error:
            self.say("trouble", f"{error}; the session stays as it is, unfinished")
            return
        self.dismiss(f"✓ filed, and read back: {plain(path, 200)}")

    def action_hand_in(self) -> None:
        """Enter, for the mouse."""
        self.query_one(Asking).hand_in()

    def action_back(self) -> None:
        """To the question before this one; from the first one to the first page."""
        back = self.flow.going_by(-1)
        if self.gives_reason:
            self.ask()
            self.query_one(Asking).retype(self.doubted)
        elif back.question is self.flow.question:
            self.action_leave()
        else:
            self.move(back)

    def action_forward(self) -> None:
        """To the next question, as far as this one is settled."""
        if self.flow.is_settled(self.flow.question):
            self.move(self.flow.going_by(1))

    def action_skip(self) -> None:
        """Past an optional question."""
        if self.flow.question.optional:
            self.move(self.flow.skipped())
        else:
            self.say("refused", "this one is needed and cannot be skipped; F9 leaves for now")

    def action_keep(self) -> None:
        """Keep what was queried: ask why."""
        if self.queried is None:
            return
        given = self.query_one(Asking).given
        if given != self.doubted:  # typed over since: that is another answer
            self.check(given)
            return
        self.gives_reason = True
        kept = answer_in_words(self.flow.question, self.queried.value, units_of(self.flow.document))
        self.query_one(Worksheet).ask_reason(plain(kept, 40), self.queried.message)

    def action_undo(self) -> None:
        """Take the last answer back; what it was stands in the field, to be mended."""
        if not self.flow.past:
            return
        before, now = self.flow.undone(), self.flow
        self.move(before)
        if self.flow is not before:
            return
        said, text = describe_undo(now, before)
        if text:
            self.query_one(Asking).retype(text)
        if said:
            self.say("undone", said)

    def action_units(self) -> None:
        """Show, and take bare numbers in, the other unit."""
        typed, is_new = self.query_one(Asking).typed, self.is_typed_over
        document = self.flow.document
        other = other_unit(units_of(document))
        self.move(self.flow.with_document(with_value(document, "session.units", other)))
        self.query_one(Asking).retype(typed, marked=not is_new)

    def action_steps(self) -> None:
        """Choose a step to go to."""
        ask_step(self.app, self.flow.progress, self.action_go_to_step)

    def action_go_to_step(self, name: str) -> None:
        """To a step."""
        self.move(self.flow.going_to_step(name))

    def action_go_to(self, path: str) -> None:
        """To a question that was answered."""
        self.move(self.flow.going_to(path))

    def action_guidance(self, by: int) -> None:
        """Scroll the guidance, where it has no room; in a list the arrows choose."""
        self.query_one(Guidance).scroll_relative(y=by, animate=False)

    def action_help(self) -> None:
        """Help on the question at hand."""
        self.app.push_screen(
            HelpScreen(help_on(self.flow.question, self.query_one(Worksheet).closure_facts))
        )

    def action_leave(self) -> None:
        """To the first page; the draft stays."""
        kept = self.app.draft_store.has_draft(self.flow.document)
        said = ["the session is kept, unfinished"] if kept else []
        typed = [str(self.doubted)] if self.gives_reason else []
        if self.is_typed_over and not self.gives_reason:
            typed.append(self.query_one(Asking).typed)
        self.dismiss("; ".join((*said, *self.not_entered.words(*typed))))
