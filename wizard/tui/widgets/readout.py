"""Numbers of a moving axle; each keeps its place."""

from collections.abc import Sequence

from textual.content import Content
from textual.reactive import reactive
from textual.widget import Widget

from wizard.phrases.fact import Fact
from wizard.views.fact_sheet import needs_a_look

NAME = 14
"""Columns of a name."""


class Readout(Widget):
    """One line for each fact."""

    facts: reactive[Sequence[Fact]] = reactive(())

    def render(self) -> Content:
        """Names on the left, numbers beside them."""
        return Content("\n").join(
            Content.assemble(
                (f"{fact.name:<{NAME}}", "$quiet"),
                (f"{fact.mark} {fact.text}", "bold $warning")
                if needs_a_look(fact)
                else (fact.text, "bold"),
            )
            for fact in self.facts
        )
