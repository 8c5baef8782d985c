"""The rules of the verdict on a screen."""

from collections.abc import Iterable

from rich.style import Style
from textual.widgets import Static

from wizard.views.picture_data import RuleRow
from wizard.views.rules_table import RulesGrid


class RulesTable(Static):
    """Draws rules, each in one line, or in two lines where the screen is narrow."""

    COMPONENT_CLASSES = {
        "rules-table--good",
        "rules-table--bad",
        "rules-table--open",
        "rules-table--held",
        "rules-table--unknown",
        "rules-table--head",
        "rules-table--rule",
        "rules-table--quiet",
    }

    def __init__(
        self,
        rows: Iterable[RuleRow] = (),
        *,
        id: str | None = None,
        classes: str | None = None,
    ) -> None:
        super().__init__(id=id, classes=classes, markup=False)
        self.rows = tuple(rows)

    def on_mount(self) -> None:
        """Draw the first rules."""
        self.show(self.rows)

    def show(self, rows: Iterable[RuleRow]) -> None:
        """Show other rules."""
        self.rows = tuple(rows)
        self.update(RulesGrid(self.rows, self.style_of))

    def style_of(self, name: str) -> Style:
        """Style of a component class."""
        return self.get_component_rich_style(f"rules-table--{name}")
