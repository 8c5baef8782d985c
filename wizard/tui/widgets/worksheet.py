"""A session while it is measured: the question in the middle, and all that stands around it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical

from core.documents.document import Document, value_at
from core.documents.entries import units_of
from core.text.plain_text import plain
from core.text.quantity import other_unit
from core.verdict.closure import closure_of
from wizard.flow.flow import Flow, applicable_answers
from wizard.phrases import answer_words
from wizard.phrases.fact import Fact
from wizard.phrases.filing_summary import filing_summary
from wizard.questions.question import Choice, Question
from wizard.tui.pictures.front_view import FrontView
from wizard.tui.widgets.answers import Answers, answers_of
from wizard.tui.widgets.asking import Asking
from wizard.tui.widgets.closing import Closing
from wizard.tui.widgets.heading import Heading
from wizard.tui.widgets.keys import Key, Keys
from wizard.tui.widgets.trail import Trail
from wizard.views.front import survey_picture


class Worksheet(Vertical):
    """Shows a flow: where it is, what was answered, the question at hand, the picture."""

    def compose(self) -> ComposeResult:
        """The frame; what is in it follows the flow."""
        yield Heading()
        yield Trail()
        with Horizontal(id="work"):
            yield Asking()
            with Vertical(id="seeing"):
                yield FrontView(id="front")
                yield Closing()
        yield Keys()

    def show(
        self, flow: Flow, choices: Sequence[Choice], earlier: Document | None, saved: str
    ) -> None:
        """Ask the question at hand.

        Parameters
        ----------
        flow : Flow
        choices : sequence of Choice
            What can be chosen, if anything.
        earlier : mapping, optional
            The session that is measured again.
        saved : str
            When the last answer was put on the disk.
        """
        question, units = flow.question, units_of(flow.document)
        hint = answer_words.hint(question, flow.profile, units, earlier)
        if question.kind == "file" and flow.profile is not None:
            hint = filing_summary(
                applicable_answers(flow.document, flow.profile), flow.profile, units
            )
        self.query_one(Asking).put(question, choices, beginning(flow, question), hint)
        self.query_one(Answers).show(flow.step.aim, answers_of(flow, units))
        self.query_one(Trail).progress = flow.progress
        tag = plain(value_at(flow.document, "vehicle.tag", "a new vehicle"))
        heading = self.query_one(Heading)
        heading.left = f"{tag}, {value_at(flow.document, 'session.kind')} session"
        heading.right = f"{answer_words.UNIT_WORDS[units]}  {saved}".rstrip()
        self.query_one(Keys).keys = keys(flow)
        self.draw(flow, earlier)

    def draw(self, flow: Flow, earlier: Document | None) -> None:
        """The picture beside the question, and under it whether the readings close."""
        step, closing, profile = flow.step, self.query_one(Closing), flow.profile
        self.query_one("#seeing").display = step.has_picture
        closing.display = step.shows_closing
        if step.has_picture:
            picture = survey_picture(flow.document, flow.question.path, earlier)
            self.query_one(FrontView).show(picture)
        if step.shows_closing and profile is not None:
            found = closure_of(applicable_answers(flow.document, profile), lambda _: profile)
            closing.show(found, units_of(flow.document))
            closing.display = found is not None

    @property
    def closure_facts(self) -> tuple[Fact, ...]:
        """Closure of the readings; () in a step that does not show it."""
        closing = self.query_one(Closing)
        return closing.facts if closing.display else ()

    def offer_to_keep(self, flow: Flow) -> None:
        """Name the key that keeps a queried answer, before all others."""
        self.query_one(Keys).keys = (Key("F5", "keep it", "keep"), *keys(flow))

    def offer_no_more(self, flow: Flow) -> None:
        """Name the keys without it: another answer was typed."""
        self.query_one(Keys).keys = keys(flow)

    def ask_reason(self, kept: str, message: str) -> None:
        """Ask why a queried answer is kept."""
        self.query_one(Asking).ask_reason(kept, message)
        self.query_one(Keys).keys = (
            Key("Enter", "keep it for this reason", "submit"),
            Key("Esc", "back", "back"),
            Key("F1", "help", "help"),
            Key("F9", "leave", "leave"),
        )


def beginning(flow: Flow, question: Question) -> Any:
    """The answer to begin with: the one that was given, or the profile's usual choice."""
    given = value_at(flow.document, question.path)
    if given is None and question.usual and flow.profile:
        return getattr(flow.profile, question.usual)
    return given


def keys(flow: Flow) -> tuple[Key, ...]:
    """The keys that do something now, in plain words."""
    other = other_unit(units_of(flow.document))
    return (
        Key("Enter", "go on", "submit"),
        Key("Esc", "back", "back"),
        *([Key("F4", "skip", "skip")] if flow.question.optional else []),
        *([Key("F8", "undo", "undo")] if flow.past else []),
        Key("F2", other, "units"),
        Key("F3", "steps", "steps"),
        Key("F1", "help", "help"),
        Key("F9", "leave", "leave"),
    )
