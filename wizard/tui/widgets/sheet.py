"""A sheet: all questions of a step on one screen, each line with a key of its own."""

from collections.abc import Sequence
from dataclasses import dataclass

from rich.cells import cell_len, set_cell_size
from textual.binding import Binding
from textual.content import Content
from textual.events import Key
from textual.geometry import Size
from textual.message import Message
from textual.reactive import reactive

from core.documents.document import value_at
from core.text.quantity import LengthUnit
from wizard.flow.flow import Flow
from wizard.phrases.answer_words import answer_in_words
from wizard.phrases.fact import LOOK
from wizard.questions.short_way import tick_values
from wizard.tui.widgets.answer_list import shortened
from wizard.tui.widgets.pressable import Pressable, with_action

LETTERS = "abcdefghijklmnopqrstuvwxyz"


@dataclass(frozen=True)
class SheetLine:
    """A line of a sheet.

    Attributes
    ----------
    path : str
        Path of the question.
    key : str
        Letter that ticks the line; empty for a line that is typed.
    name : str
    words : str
        The answer in words.
    mark : str
        "✓" for an answer, "!" for an answer that holds something back, "–" for a skipped line.
    is_here : bool
        True for the question at hand.
    """

    path: str
    key: str
    name: str
    words: str
    mark: str
    is_here: bool


def lines_of(flow: Flow, units: LengthUnit) -> tuple[SheetLine, ...]:
    """Lines of the sheet that has the question at hand; () without a sheet."""
    letters = iter(LETTERS)
    lines = []
    for question in flow.sheet:
        values = tick_values(question)
        answer = value_at(flow.document, question.path)
        words = answer_in_words(question, answer, units)
        mark = "✓" if answer is not None else " "
        if values and answer is not None and answer != values[0]:
            mark = LOOK
        if answer is None and flow.is_settled(question):
            words, mark = "passed", "–"
        lines.append(
            SheetLine(
                question.path,
                next(letters) if values else "",
                question.name,
                words,
                mark,
                question.path == flow.question.path,
            )
        )
    return tuple(lines)


class Sheet(Pressable, can_focus=True):
    """Lines that their letters tick. The line at hand is typed in the field below, or ticked.

    Attributes
    ----------
    lines : sequence of SheetLine
    """

    BINDINGS = [
        Binding("enter", "go_on", show=False),
        Binding("up", "go_by(-1)", show=False),
        Binding("down", "go_by(1)", show=False),
    ]

    lines: reactive[Sequence[SheetLine]] = reactive((), layout=True)

    class Ticked(Message):
        """A line was ticked.

        Attributes
        ----------
        path : str
        """

        def __init__(self, path: str) -> None:
            super().__init__()
            self.path = path

    class GoneOn(Message):
        """Enter was pressed beside a line that is ticked, not typed."""

    class GoneTo(Message):
        """Another line was chosen.

        Attributes
        ----------
        path : str
        """

        def __init__(self, path: str) -> None:
            super().__init__()
            self.path = path

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """Number of lines."""
        return len(self.lines)

    def render(self) -> Content:
        """Every line with its key, its mark, its name and its answer."""
        widest = max((cell_len(line.name) for line in self.lines), default=0)
        return Content("\n").join(self._line(line, widest) for line in self.lines)

    def _line(self, line: SheetLine, width: int) -> Content:
        arrow = "▸" if line.is_here else " "
        key = f"[{line.key}]" if line.key else " # "
        mark_colour = "bold $warning" if line.mark == LOOK else "$accent"
        words = shortened(line.words, max(self.size.width - width - 12, 8))
        content = Content.assemble(
            (arrow, "bold $accent"),
            (f" {key} ", "bold $accent"),
            (line.mark, mark_colour),
            (f" {set_cell_size(line.name, width)}", "bold" if line.is_here else ""),
            f"  {words}",
        )
        action = f"tick({line.path!r})" if line.key else f"go_to({line.path!r})"
        return with_action(content, action)

    def on_key(self, event: Key) -> None:
        """Tick the line of a letter."""
        letter = (event.character or "").lower()
        path = next((line.path for line in self.lines if letter and line.key == letter), "")
        if path:
            event.stop()
            event.prevent_default()
            self.post_message(self.Ticked(path))

    def action_go_on(self) -> None:
        """Go on from the line at hand."""
        self.post_message(self.GoneOn())

    def action_go_by(self, by: int) -> None:
        """Go to the line above or below."""
        here = next((i for i, line in enumerate(self.lines) if line.is_here), 0)
        there = min(max(here + by, 0), len(self.lines) - 1)
        self.post_message(self.GoneTo(self.lines[there].path))
