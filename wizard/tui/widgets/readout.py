"""Numbers that follow something that moves; each keeps its place."""

from __future__ import annotations

from collections.abc import Sequence

from textual.content import Content
from textual.reactive import reactive
from textual.widget import Widget

from wizard.phrases.fact import LOOK, Fact

NAME = 14
"""Columns of a name."""


class Readout(Widget):
    """One line a fact."""

    facts: reactive[Sequence[Fact]] = reactive(())

    def render(self) -> Content:
        """Names on the left, numbers beside them."""
        return Content("\n").join(
            Content.assemble(
                (f"{fact.name:<{NAME}}", "$quiet"),
                (f"{fact.mark} {fact.text}", "bold $warning")
                if fact.mark == LOOK
                else (fact.text, "bold"),
            )
            for fact in self.facts
        )
