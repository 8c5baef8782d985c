"""The answers of a step so far, the latest at the bottom."""

from collections.abc import Sequence
from dataclasses import dataclass

from rich.cells import cell_len, set_cell_size
from textual.content import Content
from textual.reactive import reactive

from core.documents.document import value_at
from core.text.plain_text import plain
from core.text.quantity import LengthUnit
from wizard.flow.flow import Flow
from wizard.phrases.answer_words import answer_in_words
from wizard.tui.widgets.pressable import Pressable, with_action


@dataclass(frozen=True)
class AnsweredQuestion:
    """A line of the list.

    Attributes
    ----------
    path : str
        Path of the question.
    name : str
        Name of the question.
    words : str
        The answer in words.
    mark : str
        "✓" for an answer, "–" for a question that was skipped.
    """

    path: str
    name: str
    words: str
    mark: str = "✓"


def answers_of(flow: Flow, units: LengthUnit) -> tuple[AnsweredQuestion, ...]:
    """Answered and skipped questions of the step at hand, in order, before the question at hand."""
    kept = {entry.get("reading") for entry in flow.document.get("kept", ())}
    carried = value_at(flow.document, "session.carried", ())
    lines = []
    for question in flow.asked:
        if question is flow.question:
            break
        if flow.step_of(question) is not flow.step or not flow.is_settled(question):
            continue
        value = value_at(flow.document, question.path)
        if value is None:
            words, mark = ("read", "✓") if question.kind == "read" else ("skipped", "–")
        else:
            words, mark = answer_in_words(question, value, units), "✓"
        if question.path.removeprefix("readings.") in kept:
            words = f"{words}, kept"
        if question.path.removeprefix("readings.") in carried:
            words = f"{words}, carried over"
        lines.append(AnsweredQuestion(question.path, question.name, words, mark))
    return tuple(lines)


class AnswerList(Pressable):
    """A short list; a click on an answer asks its question again.

    Attributes
    ----------
    aim : str
        Aim of the step in a line.
    answers : sequence of AnsweredQuestion
    """

    answers: reactive[Sequence[AnsweredQuestion]] = reactive(())
    aim: reactive[str] = reactive("")

    def show(self, aim: str, answers: Sequence[AnsweredQuestion]) -> None:
        """Show the aim and the answers of a step."""
        self.aim, self.answers = aim, answers

    def render(self) -> Content:
        """The latest answers that have room; the aim of the step before the first answer."""
        if not self.answers:
            return Content.styled(self.aim, "$quiet")
        visible = self.answers[-self.size.height :]
        widest = max(cell_len(answer.name) for answer in visible)
        width = min(widest, max(self.size.width - 16, 12))
        return Content("\n").join(self._line(answer, width) for answer in visible)

    def _line(self, answer: AnsweredQuestion, width: int) -> Content:
        words = shortened(answer.words, max(self.size.width - width - 5, 8))
        line = Content.assemble(
            (answer.mark, "$accent"),
            (f" {set_cell_size(answer.name, width)}  ", "$quiet"),
            words,
        )
        return with_action(line, f"go_to({answer.path!r})")


def shortened(words: str, room: int) -> str:
    """An answer cut to the room (columns); readings stay whole, because half a fraction misleads.

    >>> shortened("25 in; 25 1/16 in; 25 1/8 in", 20)
    '25 in; 25 1/16 in; …'
    """
    text = plain(words, len(words) + 1)
    if cell_len(text) <= room:
        return text
    readings = text.split("; ")
    for count in range(len(readings) - 1, 0, -1):
        shorter = "; ".join((*readings[:count], "…"))
        if cell_len(shorter) <= room:
            return shorter
    return plain(words, room)
