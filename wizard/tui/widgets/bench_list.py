"""The parts that can be moved on the bench, a line each, with their change."""

from __future__ import annotations

from collections.abc import Sequence

from rich.cells import set_cell_size
from textual.content import Content
from textual.reactive import reactive

from wizard.phrases.bench import Movable
from wizard.tui.widgets.pressable import Pressable, does

NAME, CHANGE, NOW = 20, 14, 16
"""Columns of a name, of how far it has been moved, and of where it is now."""


class BenchList(Pressable):
    """The line at hand is marked; a click on another takes it."""

    movables: reactive[Sequence[Movable]] = reactive(())
    at: reactive[int] = reactive(0)
    step: reactive[str] = reactive("")

    def render(self) -> Content:
        """Every line, and below them how far one step goes."""
        lines = [self._line(index) for index in range(len(self.movables))]
        step = Content.assemble(
            ("  one step: ", "$quiet"), (self.step, "bold"), ("   + - another", "$quiet")
        )
        return Content("\n").join([*lines, Content(), step])

    def _line(self, index: int) -> Content:
        one, is_here = self.movables[index], index == self.at
        name = set_cell_size(f"{'▸' if is_here else ' '} {index + 1} {one.name}", NAME + 4)
        now = one.now if self.size.width >= NAME + 4 + CHANGE + NOW else ""
        line = Content.assemble(
            (name, "bold $accent" if is_here else ""),
            (set_cell_size(one.change, CHANGE), "bold"),
            (now, "$quiet"),
        )
        return does(line, f"select({index})")
