"""One question at a time: the answers so far, the question, its field or list, and the guidance."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from textual import on
from textual.app import ComposeResult
from textual.containers import Vertical
from textual.content import Content
from textual.message import Message
from textual.widgets import Static

from wizard.phrases.answer_words import field_text
from wizard.questions.question import Choice, Question
from wizard.tui.widgets.answers import Answers
from wizard.tui.widgets.choices import Choices
from wizard.tui.widgets.field import Field
from wizard.tui.widgets.guidance import Guidance
from wizard.tui.widgets.remark import Remark

NOTHING_CHOSEN = "nothing is chosen yet: press a line's number or ↑ ↓, then Enter"


class Asking(Vertical):
    """Puts a question and hands in what is answered; it judges nothing."""

    class HandedIn(Message):
        """An answer as typed, or the value of what was chosen."""

        def __init__(self, answer: Any) -> None:
            super().__init__()
            self.answer = answer

    def compose(self) -> ComposeResult:
        """Yield from the top: the answers so far, the question, its field or list, the guidance."""
        yield Answers()
        yield Static(id="ask")
        yield Field(holds=True)
        yield Choices()
        yield Remark()
        yield Guidance()

    def put(self, question: Question, choices: Sequence[Choice], answer: Any, hint: str) -> None:
        """Ask a question; `answer` is what it was answered with before."""
        self.query_one("#ask", Static).update(Content(question.ask))
        self.query_one(Guidance).show(question)
        self.query_one(Remark).hint(hint)
        field, list_ = self.query_one(Field), self.query_one(Choices)
        field.display, list_.display = not choices, bool(choices)
        if choices:
            field.stay()
            asks = question.kind not in ("read", "file")
            list_.begin(choices, answer, several=question.kind == "any of", unmarked=asks)
            list_.focus()
        else:
            field.begin(field_text(answer))
            if field.value:
                field.begin_again()
            field.focus()

    def ask_reason(self, kept: str, message: str) -> None:
        """Ask why a queried answer is kept."""
        self.query_one("#ask", Static).update(Content(f"Why is {kept} kept?"))
        hint = "What was seen that explains it. It stands in the record."
        self.query_one(Remark).hint(f"{hint} Queried: {message}")
        field = self.query_one(Field)
        self.query_one(Choices).display, field.display = False, True
        field.begin("")
        field.focus()

    def say(self, what: str, text: str, way_out: str = "") -> None:
        """Say what is wrong with the answer; it stays to be typed over or mended."""
        self.query_one(Remark).say(what, text, way_out)
        field = self.query_one(Field)
        field.stay()
        self.query_one(Choices).stay()
        if what == "queried":
            field.begin_again()

    def retype(self, answer: Any, marked: bool = True) -> None:
        """Put back into the field what was typed; `marked`, typing replaces it."""
        if isinstance(answer, str):
            field = self.query_one(Field)
            field.begin(answer)
            if marked and answer:
                field.begin_again()

    def retake(self, adds: bool) -> None:
        """Make ready for a repeat after what stands in the field, or for typing over it."""
        field = self.query_one(Field)
        if adds and field.value:
            field.begin(f"{field.value}; ")
        else:
            field.begin_again()

    @property
    def typed(self) -> str:
        """Text in the field; empty where there is a list instead."""
        field = self.query_one(Field)
        return field.value if field.display else ""

    @property
    def given(self) -> Any:
        """Answer that Enter would hand in."""
        choices = self.query_one(Choices)
        return choices.given if choices.display else self.typed

    @on(Field.Submitted)
    def hand_in_text(self, event: Field.Submitted) -> None:
        """Enter in the field."""
        event.stop()
        self.post_message(self.HandedIn(event.value))

    @on(Choices.Chosen)
    def hand_in_choice(self, event: Choices.Chosen) -> None:
        """A line of the list."""
        event.stop()
        self.post_message(self.HandedIn(event.value))

    def hand_in(self) -> None:
        """The same as Enter, for the mouse."""
        choices = self.query_one(Choices)
        if choices.display:
            choices.action_hand_in()
        else:
            self.post_message(self.HandedIn(self.typed))
