"""One question: the answers before it, its field or list, a remark, and its guidance."""

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
from wizard.tui.widgets.answer_list import AnswerList
from wizard.tui.widgets.choice_list import ChoiceList
from wizard.tui.widgets.field import Field
from wizard.tui.widgets.guidance import Guidance
from wizard.tui.widgets.remark import Remark, RemarkKind
from wizard.tui.widgets.sheet import Sheet, SheetLine

NOTHING_CHOSEN = "nothing is chosen yet: press a line's number or ↑ ↓, then Enter"


def has_repeats(typed: str) -> bool:
    """True if a text has several readings."""
    return sum(bool(reading.strip()) for reading in typed.split(";")) > 1


class QuestionView(Vertical):
    """Asks a question and submits its answer unchecked."""

    class Submitted(Message):
        """An answer as it was typed, or the value that was chosen.

        Attributes
        ----------
        answer : str, bool, list of str, or None
            None where nothing is chosen.
        """

        def __init__(self, answer: Any) -> None:
            super().__init__()
            self.answer = answer

    def compose(self) -> ComposeResult:
        """Yield the answers, the question, field and list, the remark, and the guidance."""
        yield AnswerList()
        yield Sheet()
        yield Static(id="ask")
        yield Field(keeps_typing_ahead=True)
        yield ChoiceList()
        yield Remark()
        yield Guidance()

    def ask(
        self,
        question: Question,
        choices: Sequence[Choice],
        answer: Any,
        hint: str,
        lines: Sequence[SheetLine] = (),
    ) -> None:
        """Ask a question.

        Parameters
        ----------
        question : Question
        choices : sequence of Choice
            Lines of its list; empty for a question with a field.
        answer
            The answer to begin with, None for none.
        hint : str
            Line under the field.
        lines : sequence of SheetLine
            The sheet with the question; empty without a sheet.
        """
        self.query_one("#ask", Static).update(Content(question.ask))
        self.query_one(Guidance).show(question)
        self.query_one(Remark).hint(hint)
        field, choice_list = self.query_one(Field), self.query_one(ChoiceList)
        sheet = self.query_one(Sheet)
        sheet.lines, sheet.display = lines, bool(lines)
        self.query_one(AnswerList).display = not lines
        field.display, choice_list.display = not choices, bool(choices) and not lines
        if lines and choices:
            field.drop_typed_ahead()
            sheet.focus()
        elif choices:
            field.drop_typed_ahead()
            starts_unmarked = question.kind not in ("read", "file")
            choice_list.begin(
                choices, answer, several=question.kind == "any of", unmarked=starts_unmarked
            )
            choice_list.focus()
        else:
            field.begin(field_text(answer))
            if field.value:
                field.select_text()
            field.focus()

    def ask_reason(self, kept: str, message: str) -> None:
        """Ask why a queried answer is kept; `kept` is the answer in words, `message` the query."""
        self.query_one("#ask", Static).update(Content(f"Why is {kept} kept?"))
        hint = "What was seen that explains it. It stands in the record."
        self.query_one(Remark).hint(f"{hint} Queried: {message}")
        field = self.query_one(Field)
        self.query_one(ChoiceList).display, field.display = False, True
        field.begin("")
        field.focus()

    def say(self, kind: RemarkKind, text: str, way_out: str = "") -> None:
        """Remark on the answer, which stays to be typed over or corrected."""
        self.query_one(Remark).say(kind, text, way_out)
        field = self.query_one(Field)
        field.drop_typed_ahead()
        self.query_one(ChoiceList).reopen()
        if kind == "queried" and has_repeats(field.value):
            field.add_to_text()
        elif kind in ("queried", "refused"):
            field.select_text()

    def select_last_reading(self) -> None:
        """Select the last reading of the field, so that typing replaces it alone."""
        self.query_one(Field).select_last_reading()

    def retype(self, answer: Any, marked: bool = True) -> None:
        """Put a typed answer back into the field; `marked`, typing replaces it."""
        if isinstance(answer, str):
            field = self.query_one(Field)
            field.begin(answer)
            if marked and answer:
                field.select_text()

    def retake(self, adds_repeat: bool) -> None:
        """Make the field ready for a repeat (`adds_repeat`), or for typing over its text."""
        field = self.query_one(Field)
        if adds_repeat and field.value:
            field.begin(f"{field.value}; ")
        else:
            field.select_text()

    @property
    def typed(self) -> str:
        """Text of the field; empty for a question with a list."""
        field = self.query_one(Field)
        return field.value if field.display else ""

    @property
    def answer(self) -> Any:
        """The answer that Enter would submit; None beside a line that is ticked."""
        choice_list = self.query_one(ChoiceList)
        if choice_list.display:
            return choice_list.answer
        return self.typed if self.query_one(Field).display else None

    @on(Field.Submitted)
    def submit_text(self, event: Field.Submitted) -> None:
        """Submit the text of the field."""
        event.stop()
        self.post_message(self.Submitted(event.value))

    @on(ChoiceList.Chosen)
    def submit_choice(self, event: ChoiceList.Chosen) -> None:
        """Submit the choice of the list."""
        event.stop()
        self.post_message(self.Submitted(event.value))

    def submit(self) -> None:
        """Submit the answer at hand, for the mouse."""
        choice_list, field = self.query_one(ChoiceList), self.query_one(Field)
        if choice_list.display:
            choice_list.action_submit()
        elif not field.display:
            self.query_one(Sheet).action_go_on()
        else:
            self.post_message(self.Submitted(self.typed))
