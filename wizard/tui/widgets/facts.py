"""A section of facts on a screen."""

from collections.abc import Iterable

from rich.style import Style
from textual.widgets import Static

from wizard.phrases.fact import Fact
from wizard.views.fact_sheet import FactSheet


class Facts(Static):
    """Shows facts; hidden without any."""

    COMPONENT_CLASSES = {
        "facts--title",
        "facts--name",
        "facts--text",
        "facts--look",
        "facts--good",
        "facts--bad",
        "facts--open",
        "facts--held",
        "facts--unknown",
    }

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(id=id, markup=False)

    def show(self, title: str, facts: Iterable[Fact]) -> None:
        """Show other facts."""
        facts = tuple(facts)
        self.display = bool(facts)
        self.update(FactSheet(title, facts, self.style_of))

    def style_of(self, name: str) -> Style:
        """Style of a component class."""
        return self.get_component_rich_style(f"facts--{name}")
