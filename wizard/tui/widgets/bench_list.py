"""The parts that the bench can move, a line each, with the change so far."""

from collections.abc import Sequence

from rich.cells import set_cell_size
from textual.content import Content
from textual.reactive import reactive

from wizard.phrases.bench import Movable
from wizard.tui.widgets.pressable import Pressable, with_action

SPACED = 7
"""Most lines with a blank line below them."""

NAME, CHANGE, NOW = 20, 14, 16
"""Columns of a name, of its change, and of its place now."""


class BenchList(Pressable):
    """The line at hand is marked; a click selects another one.

    Attributes
    ----------
    movables : sequence of Movable
    at : int
        Index of the line at hand.
    step : str
        Length of a step in words.
    """

    movables: reactive[Sequence[Movable]] = reactive(())
    at: reactive[int] = reactive(0)
    step: reactive[str] = reactive("")

    def render(self) -> Content:
        """Every line, and the length of a step below them."""
        lines = [self._line(index) for index in range(len(self.movables))]
        step = Content.assemble(
            ("  one step: ", "$quiet"), (self.step, "bold"), ("   + - another", "$quiet")
        )
        space = [Content()] if len(lines) <= SPACED else []
        return Content("\n").join([*lines, *space, step])

    def _line(self, index: int) -> Content:
        movable, is_at_hand = self.movables[index], index == self.at
        mark = "▸" if is_at_hand else " "
        name = set_cell_size(f"{mark} {index + 1} {movable.name}", NAME + 4)
        now = movable.now if self.size.width >= NAME + 4 + CHANGE + NOW else ""
        line = Content.assemble(
            (name, "bold $accent" if is_at_hand else ""),
            (set_cell_size(movable.change, CHANGE), "bold"),
            (now, "$quiet"),
        )
        return with_action(line, f"select({index})")
