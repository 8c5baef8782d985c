"""Measuring: one question at a time. An answer is on the disk before the next question."""

from typing import Any

from textual import on

from core.documents.document import value_at, with_value
from core.documents.entries import EntryError, units_of
from core.documents.record import NotConfirmed, RecordError
from core.text.plain_text import plain
from core.text.quantity import other_unit
from wizard.flow import drafts
from wizard.flow.draft_store import AnsweredElsewhere
from wizard.flow.filing import finished_record
from wizard.flow.flow import NEEDED_FIRST, Flow
from wizard.flow.opening import OpenedSession
from wizard.flow.retake import Retake
from wizard.flow.undo import describe_undo
from wizard.flow.usual_answers import keep_usual_answers
from wizard.flow.ways import enough, on_the_other_way, read_on
from wizard.phrases.help import help_on
from wizard.questions.question import Choice, Question
from wizard.questions.short_way import tick_values
from wizard.tui.screens.answer_state import AnswerQueried, AwaitingReason
from wizard.tui.screens.answering import AnsweringScreen
from wizard.tui.screens.help import HelpScreen, tapes_of
from wizard.tui.screens.pick import PickScreen
from wizard.tui.screens.step_screens import STEP_SCREENS
from wizard.tui.screens.steps import ask_step
from wizard.tui.screens.table import TableScreen
from wizard.tui.widgets.choice_list import ChoiceList
from wizard.tui.widgets.guidance import Guidance
from wizard.tui.widgets.question_view import NOTHING_CHOSEN, QuestionView
from wizard.tui.widgets.sheet import Sheet
from wizard.tui.widgets.worksheet import Worksheet


class MeasureScreen(AnsweringScreen):
    """Takes a session through its steps. Its result is a line to show at home."""

    BINDINGS = [
        ("escape,pageup", "back", "back"),
        ("pagedown", "forward", "forward"),
        ("up", "guidance(-1)", "guidance up"),
        ("down", "guidance(1)", "guidance down"),
        ("f1", "help", "help"),
        ("f2", "units", "units"),
        ("f3", "steps", "steps"),
        ("f4", "skip", "skip"),
        ("f7", "enough", "enough"),
        ("f8,ctrl+z", "undo", "undo"),
        ("ctrl+l", "way", "the other way"),
        ("e,E", "change", "change"),
        ("ctrl+t", "table", "table"),
        ("f9", "leave", "leave"),
    ]

    def show_step(self, question: Question) -> None:
        """Show a step on its own screen, and continue with the result of that screen."""

        def continue_with(result: Flow | Retake | None) -> None:
            if result is None:
                self.action_leave()
            elif isinstance(result, Retake):
                self.move_to(result.flow)
                self.query_one(QuestionView).retake(result.adds_repeat)
            else:
                self.move_to(result)

        self.app.push_screen(STEP_SCREENS[question.path](self.flow, self.earlier), continue_with)

    @on(QuestionView.Submitted)
    def handle_answer(self, event: QuestionView.Submitted) -> None:
        """Handle an answer according to the state and the kind of question."""
        question, given = self.flow.question, event.answer
        if isinstance(self.state, AwaitingReason):
            self.keep_with_reason(self.state, str(given))
        elif given is None and question.optional:
            self.action_skip()
        elif given is None:
            self.say("refused", NOTHING_CHOSEN)
        elif question.kind == "file":
            self.file_session() if given == "file" else self.action_leave()
        elif question.kind == "read":
            self.move_to(read_on(self.flow, given))
        elif question.optional and isinstance(given, str) and not given.strip():
            self.action_skip()
        else:
            self.check_answer(given)

    @on(Sheet.Ticked)
    def tick_line(self, event: Sheet.Ticked) -> None:
        """Tick a line of the sheet."""
        self.action_tick(event.path)

    @on(Sheet.GoneTo)
    def go_to_line(self, event: Sheet.GoneTo) -> None:
        """Go to another line of the sheet."""
        self.action_go_to(event.path)

    @on(Sheet.GoneOn)
    def go_on_from_line(self) -> None:
        """Go on from a line that is ticked: an open one is passed where that is allowed."""
        question = self.flow.question
        if self.flow.is_settled(question):
            self.move_to(self.flow.going_on())
        elif question.optional:
            self.action_skip()
        else:
            self.say("refused", "this line is needed: press its letter, or twice for not so")

    def action_tick(self, path: str) -> None:
        """Give a line of the sheet the next of its answers, the sound one first."""
        if isinstance(self.state, AwaitingReason):
            return
        at_line = self.flow.going_to(path)
        values = tick_values(at_line.question)
        before = value_at(at_line.document, path)
        if isinstance(self.state, AnswerQueried) and self.flow.question.path == path:
            before = self.state.given
        next_value = (
            values[(values.index(before) + 1) % len(values)] if before in values else values[0]
        )
        self.flow = at_line
        self.ask()
        self.check_answer(next_value)

    def file_session(self) -> None:
        """File the session and leave; the record counts as filed once it was read back."""
        missing, profile = self.flow.missing, self.flow.profile
        if missing:
            others = f" and {len(missing) - 1} more" if len(missing) > 1 else ""
            self.say("refused", f"still to be answered: {missing[0].name}{others}; F3 goes there")
        if missing or profile is None:
            return
        document = self.flow.document
        try:
            record = finished_record(document, profile, drafts.now())
            path = self.app.draft_store.file(document, record)
        except AnsweredElsewhere as error:
            self.show_other_answers(error)
        except NotConfirmed as error:
            self.dismiss(str(error))
        except RecordError as error:
            self.show_trouble(error, self.flow)
        except EntryError as error:
            self.say("trouble", f"{error}; the session stays as it is, unfinished")
        else:
            keep_usual_answers(self.app.files, record)
            self.dismiss(f"✓ filed, and read back: {plain(path, 200)}")

    def action_back(self) -> None:
        """Go to the question before this one; from the first question go home."""
        back = self.flow.going_by(-1)
        if isinstance(self.state, AwaitingReason):
            given = self.state.given
            self.ask()
            self.query_one(QuestionView).retype(given)
        elif back.question is self.flow.question:
            self.action_leave()
        else:
            self.move_to(back)

    def action_forward(self) -> None:
        """Go to the next question, if this one is settled."""
        if self.flow.is_settled(self.flow.question):
            self.move_to(self.flow.going_by(1))

    def action_skip(self) -> None:
        """Skip an optional question."""
        if self.flow.question.optional:
            self.move_to(self.flow.skipped())
        else:
            self.say("refused", "this one is needed and cannot be skipped; F9 leaves for now")

    def action_enough(self) -> None:
        """Go to the verdict; nothing more is asked for before it."""
        if not self.flow.is_short:
            self.action_go_to_step("Verdict")
        elif self.flow.standing is None:
            self.say("refused", "the verdict needs the height and the offset of every end first")
        else:
            self.move_to(enough(self.flow))

    def action_way(self) -> None:
        """Change between the short way and the long one; the answers are the same."""
        if not self.move_to(on_the_other_way(self.flow)):
            return
        words = "the short way: what decides comes first"
        if not self.flow.is_short:
            words = "the long way: every question in order"
        self.notify(f"{words}; Ctrl+L changes it", markup=False)

    def action_change(self) -> None:
        """Change what is offered, where a list offers it."""
        choice_list = self.query_one(ChoiceList)
        values = [choice.value for choice in choice_list.choices]
        if choice_list.display and "change" in values:
            choice_list.highlighted = values.index("change")
            choice_list.action_submit()

    def action_undo(self) -> None:
        """Undo the last answer, and put its text back into the field."""
        if not self.flow.past:
            return
        answered = self.flow
        if not self.move_to(self.flow.undone()):
            return
        words, text = describe_undo(answered, self.flow)
        if text:
            self.query_one(QuestionView).retype(text)
        if words:
            self.say("undone", words)

    def action_units(self) -> None:
        """Change the unit of lengths; a text in the field stays as it is."""
        typed, is_new = self.query_one(QuestionView).typed, self.is_typed_over
        document = self.flow.document
        other = other_unit(units_of(document))
        self.move_to(self.flow.with_document(with_value(document, "session.units", other)))
        self.query_one(QuestionView).retype(typed, marked=not is_new)

    def action_steps(self) -> None:
        """Ask for a step to go to."""
        ask_step(self.app, self.flow.progress, self.action_go_to_step)

    def action_go_to_step(self, name: str) -> None:
        """Go to a step."""
        self.move_to(self.flow.going_to_step(name))

    def action_go_to(self, path: str) -> None:
        """Go to a question by its path."""
        self.move_to(self.flow.going_to(path))

    def action_table(self) -> None:
        """Type the readings into a table; the session goes on at the cell that is left."""
        if any(question.path in NEEDED_FIRST for question in self.flow.missing):
            self.say("refused", "the tag and the profile come before the readings")
            return
        if self.is_typed_over:
            self.unentered.keep(self.flow, self.query_one(QuestionView).typed)
        table = TableScreen(OpenedSession(self.flow, earlier=self.earlier))
        table.unentered, table.saved = self.unentered, self.saved

        def go_on(left: Any) -> None:
            self.flow, self.saved = left.flow, table.saved
            self.ask()
            if left.goes_home:
                self.action_leave()

        self.app.push_screen(table, go_on)

    def action_guidance(self, by: int) -> None:
        """Scroll the guidance by lines; a list of choices takes the arrows first."""
        self.query_one(Guidance).scroll_relative(y=by, animate=False)

    def action_help(self) -> None:
        """Show help on the question at hand."""
        facts = self.query_one(Worksheet).closure_facts
        self.app.push_screen(HelpScreen(help_on(self.flow.question, facts), tapes_of(self.flow)))

    def action_leave(self) -> None:
        """Go home; the draft stays. Ask first if there is none: every answer would be lost."""
        is_kept = self.app.draft_store.has_draft(self.flow.document)
        if is_kept or value_at(self.flow.document, "session.id") is None:
            self.leave(is_kept)
            return

        def do_chosen(choice: str | None) -> None:
            if choice == "leave":
                self.leave(is_kept)
            elif choice == "elsewhere":
                self.unkept = self.flow
                self.action_elsewhere()
            elif self.flow.question.kind == "show":
                self.ask()

        choices = (
            Choice("stay", "stay"),
            Choice("elsewhere", "go on in another folder"),
            Choice("leave", "leave; every answer is lost"),
        )
        folder = plain(self.app.files, 200)
        ask = "Nothing of this session is on the disk now. Leave?"
        do = (
            f"Its draft was in {folder}. When that folder is back, the next answer writes it again."
        )
        self.app.push_screen(PickScreen(ask, do, choices, "stay"), do_chosen)

    def leave(self, is_kept: bool) -> None:
        """Go home, and say what is kept and what was not entered."""
        words = ["the session is kept, unfinished"] if is_kept else []
        typed = []
        if isinstance(self.state, AwaitingReason):
            typed.append(str(self.state.given))
        elif self.is_typed_over:
            typed.append(self.query_one(QuestionView).typed)
        self.dismiss("; ".join((*words, *self.unentered.words(*typed))))
