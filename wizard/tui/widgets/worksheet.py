"""A session while it is measured: the question at hand, and everything around it."""

from collections.abc import Sequence
from typing import Any

from textual import on
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical

from core.documents.document import Document, value_at, with_value
from core.documents.entries import units_of
from core.kinematics.pivots import Layout
from core.text.plain_text import plain
from core.text.quantity import other_unit
from core.verdict.closure import closure_of
from wizard.flow.answers import applicable_answers
from wizard.flow.flow import Flow
from wizard.flow.likeness import LIKE
from wizard.flow.short_way import reading_at_question
from wizard.phrases import answer_words
from wizard.phrases.fact import Fact
from wizard.phrases.filing_summary import filing_summary
from wizard.phrases.standing import skip_words, worth_words
from wizard.questions.question import Choice, Question, SeenFrom
from wizard.questions.short_way import TOOLS
from wizard.tui.pictures.above_view import AboveView
from wizard.tui.pictures.front_view import FrontView
from wizard.tui.pictures.side_view import SideView
from wizard.tui.widgets.answer_list import AnswerList, answers_of
from wizard.tui.widgets.choice_list import ChoiceList
from wizard.tui.widgets.closing import Closing
from wizard.tui.widgets.heading import Heading
from wizard.tui.widgets.keys import Key, Keys
from wizard.tui.widgets.question_view import QuestionView
from wizard.tui.widgets.sheet import lines_of
from wizard.tui.widgets.strip import Strip
from wizard.tui.widgets.trail import Trail
from wizard.views.above import above_of_answers
from wizard.views.front import survey_picture, usual_picture
from wizard.views.side import side_of_answers

TAG = "vehicle.tag"
"""Path of the first question, which shows a whole axle to know the words by."""

PITMAN = "layout.pitman"
"""Path of the question that asks which way the pitman arm points."""

COSTLY = (".station", "steering.arm")
"""Endings of the readings whose skipping is told in the doubt of the peak steer."""


class Worksheet(Vertical):
    """Shows a flow: its step, the answers so far, the question at hand, the picture."""

    usual_keys: Sequence[Key] = ()

    def __init__(self) -> None:
        super().__init__()
        self.flow: Flow | None = None

    def compose(self) -> ComposeResult:
        """Yield the widgets, which are empty until a flow is shown."""
        yield Heading()
        yield Trail()
        with Horizontal(id="work"):
            yield QuestionView()
            with Vertical(id="seeing"):
                yield FrontView(id="front")
                yield SideView(id="side")
                yield AboveView(id="above")
                yield Closing()
        yield Strip()
        yield Keys()

    def show(
        self, flow: Flow, choices: Sequence[Choice], earlier: Document | None, saved: str
    ) -> None:
        """Ask the question at hand.

        Parameters
        ----------
        flow : Flow
        choices : sequence of Choice
            Lines of the question's list; empty for a question with a field.
        earlier : mapping, optional
            The session that is measured again.
        saved : str
            Time of the last write to the disk, in words.
        """
        self.flow = flow
        question, units = flow.question, units_of(flow.document)
        hint = worth_hint(flow) + answer_words.hint(
            question, flow.profile, units, earlier, flow.document
        )
        if question.path == TOOLS.path and flow.profile is not None:
            hint = answer_words.instruments_words(flow.document, flow.profile, units)
        if alike := [choice.words for choice in choices if str(choice.value).startswith(LIKE)]:
            hint = f"further down: {', '.join(alike)}"
        if question.kind == "file" and flow.profile is not None:
            hint = filing_summary(
                applicable_answers(flow.document, flow.profile), flow.profile, units
            )
        begin_with = first_answer(flow, question)
        if question.path == "session.altered" and begin_with is None and earlier is not None:
            begin_with = answer_words.planned_parts(earlier)
        self.query_one(QuestionView).ask(question, choices, begin_with, hint, lines_of(flow, units))
        self.query_one(AnswerList).show(flow.step.aim, answers_of(flow, units))
        self.query_one(Trail).progress = flow.progress
        tag = plain(value_at(flow.document, "vehicle.tag", "a new vehicle"))
        heading = self.query_one(Heading)
        heading.left = f"{tag}, {value_at(flow.document, 'session.kind')} session"
        heading.right = f"{answer_words.UNIT_WORDS[units]}  {saved}".rstrip()
        self.query_one(Strip).show(flow.standing if flow.is_short else None)
        self.usual_keys = keys(flow)
        self.offer()
        self.draw(flow, earlier)

    def draw(self, flow: Flow, earlier: Document | None) -> None:
        """Draw the picture beside the question, and show the closure below it."""
        step, closing, profile = flow.step, self.query_one(Closing), flow.profile
        seen_from = picture_of(flow)
        self.query_one("#seeing").display = bool(seen_from)
        for side in ("front", "side", "above"):
            self.query_one(f"#{side}").display = seen_from == side
        closing.display = step.shows_closing
        if seen_from == "front":
            if flow.question.path == TAG:
                picture = usual_picture(flow.document, flow.profile)
            else:
                picture = survey_picture(flow.document, flow.profile, flow.question.path, earlier)
            self.query_one(FrontView).show(picture)
        else:
            self.draw_with(flow, first_answer(flow, flow.question))
        if step.shows_closing and profile is not None:
            closure = closure_of(applicable_answers(flow.document, profile), lambda _: profile)
            closing.show(closure, units_of(flow.document))
            closing.display = closure is not None

    def draw_with(self, flow: Flow, chosen: Any) -> None:
        """Draw the view from the side or from above, with the answer that is marked."""
        document, path = flow.document, flow.question.path
        if path.startswith("layout.") and chosen is not None:
            document = with_value(document, path, chosen)
        match picture_of(flow):
            case "side":
                self.query_one(SideView).show(side_of_answers(document, flow.profile, path))
            case "above":
                self.query_one(AboveView).show(above_of_answers(document, flow.profile, path))

    @on(ChoiceList.OptionHighlighted)
    def draw_choice(self) -> None:
        """Draw what the line that is marked would mean."""
        chosen = self.query_one(ChoiceList).answer
        if self.flow is not None and chosen is not None:
            self.draw_with(self.flow, chosen)

    @property
    def closure_facts(self) -> tuple[Fact, ...]:
        """Facts on the closure; () in a step that does not show it."""
        closing = self.query_one(Closing)
        return closing.facts if closing.display else ()

    def offer(self, *offered: Key) -> None:
        """Show the keys that a remark offers before all others; without any, hide the last ones."""
        usual = [key for key in self.usual_keys if not (offered and key.action == "table")]
        self.query_one(Keys).keys = (*offered, *usual)

    def ask_reason(self, kept: str, message: str) -> None:
        """Ask why a queried answer is kept."""
        self.query_one(QuestionView).ask_reason(kept, message)
        self.usual_keys = (
            Key("Enter", "keep it for this reason", "submit"),
            Key("Esc", "back", "back"),
            Key("F1", "help", "help"),
            Key("F9", "leave", "leave"),
        )
        self.offer()


def picture_of(flow: Flow) -> SeenFrom:
    """Side that the picture beside a question shows; a lengthwise link is seen from the side."""
    question = flow.question
    is_of_the_link = question.path.startswith("readings.drag_link.")
    is_across = question.path.endswith((".offset", ".bent"))
    is_fore_aft = value_at(flow.document, "layout.steering") == Layout.FORE_AFT
    if is_fore_aft and (question.path == PITMAN or (is_of_the_link and not is_across)):
        return "side"
    return question.picture or flow.step.picture


def first_answer(flow: Flow, question: Question) -> Any:
    """The answer to begin with: the earlier answer, or the usual choice of the profile."""
    answer = value_at(flow.document, question.path)
    if answer is None:
        answer = value_at(flow.document, f"draft.usual.{question.path}")
    if answer is None and question.usual and flow.profile:
        return getattr(flow.profile, question.usual)
    return answer


def worth_hint(flow: Flow) -> str:
    """Worth of the reading at hand, and the doubt that skipping it leaves; empty where none."""
    reading = reading_at_question(flow.question)
    parts = []
    if flow.is_short and flow.standing is not None:
        worth = flow.standing.worth_of(reading)
        parts += [worth_words(flow.standing, worth)] if worth else []
    is_costly = flow.question.optional and reading.endswith(COSTLY)
    is_costly &= not (flow.is_short and reading.startswith("guide."))
    if is_costly and (usual := flow.usual_standing):
        worth = usual.worth_of(reading)
        parts += [skip_words(usual, worth)] if worth else []
    return "".join(f"{part} · " for part in parts)


def keys(flow: Flow) -> tuple[Key, ...]:
    """Keys that do something now."""
    other = other_unit(units_of(flow.document))
    other_way = "long way" if flow.is_short else "short way"
    return (
        *([Key("a b c …", "tick; twice: not so")] if flow.sheet and flow.question.choices else []),
        Key("Enter", "go on", "submit"),
        Key("Esc", "back", "back"),
        *([Key("F4", flow.question.skip, "skip")] if flow.question.optional else []),
        *([Key("F7", "enough", "enough")] if flow.is_short and flow.standing else []),
        *([Key("F8", "undo", "undo")] if flow.past else []),
        Key("F2", other, "units"),
        Key("F3", "steps", "steps"),
        *([Key("Ctrl+L", other_way, "way")] if flow.step.name == "Vehicle" else []),
        Key("Ctrl+T", "table", "table"),
        Key("F1", "help", "help"),
        Key("F9", "leave", "leave"),
    )
