"""The answers of a step so far, the latest at the bottom."""

from collections.abc import Sequence
from dataclasses import dataclass

from rich.cells import cell_len, set_cell_size
from textual.content import Content
from textual.reactive import reactive

from core.documents.document import value_at
from core.text.plain_text import plain
from core.text.quantity import LengthUnit
from wizard.flow.flow import Flow, step_of
from wizard.phrases.answer_words import answer_in_words
from wizard.tui.widgets.pressable import Pressable, does


@dataclass(frozen=True)
class AnsweredQuestion:
    """A question of the step as the list shows it: its name, its answer, and where it stands."""

    path: str
    name: str
    words: str
    mark: str = "✓"


def answers_of(flow: Flow, units: LengthUnit) -> tuple[AnsweredQuestion, ...]:
    """Answered and skipped questions of the present step, in order, up to the present question."""
    kept = {entry.get("reading") for entry in flow.document.get("kept", ())}
    found = []
    for question in flow.asked:
        if question is flow.question:
            break
        if step_of(question) is not flow.step or not flow.is_settled(question):
            continue
        value = value_at(flow.document, question.path)
        if value is None:
            words, mark = ("read", "✓") if question.kind == "read" else ("skipped", "–")
        else:
            words, mark = answer_in_words(question, value, units), "✓"
        if question.path.removeprefix("readings.") in kept:
            words = f"{words}, kept"
        found.append(AnsweredQuestion(question.path, question.name, words, mark))
    return tuple(found)


class Answers(Pressable):
    """A short list; an answer that is clicked is asked again."""

    answers: reactive[Sequence[AnsweredQuestion]] = reactive(())
    aim: reactive[str] = reactive("")

    def show(self, aim: str, answers: Sequence[AnsweredQuestion]) -> None:
        """Another step, or one answer more."""
        self.aim, self.answers = aim, answers

    def render(self) -> Content:
        """The last answers that have room; the aim of the step as long as there is none."""
        if not self.answers:
            return Content.styled(self.aim, "$quiet")
        room = self.size.height
        shown = self.answers[-room:]
        widest = max(cell_len(answer.name) for answer in shown)
        width = min(widest, max(self.size.width - 16, 12))
        return Content("\n").join(self._line(answer, width) for answer in shown)

    def _line(self, answer: AnsweredQuestion, width: int) -> Content:
        words = shortened(answer.words, max(self.size.width - width - 5, 8))
        line = Content.assemble(
            (answer.mark, "$accent"),
            (f" {set_cell_size(answer.name, width)}  ", "$quiet"),
            words,
        )
        return does(line, f"go_to({answer.path!r})")


def shortened(words: str, room: int) -> str:
    """The words that have room; of several readings only whole ones, as half a fraction misleads.

    >>> shortened("25 in; 25 1/16 in; 25 1/8 in", 20)
    '25 in; 25 1/16 in; …'
    """
    shown = plain(words, len(words) + 1)
    if cell_len(shown) <= room:
        return shown
    parts = shown.split("; ")
    for count in range(len(parts) - 1, 0, -1):
        fits = "; ".join((*parts[:count], "…"))
        if cell_len(fits) <= room:
            return fits
    return plain(words, room)
