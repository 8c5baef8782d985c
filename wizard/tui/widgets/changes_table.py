"""The table of changes on a screen."""

from collections.abc import Iterable

from rich.style import Style
from textual.widgets import Static

from wizard.views.changes_table import ChangeRow, ChangesGrid


class ChangesTable(Static):
    """Each value before and after, with the change and its uncertainty."""

    COMPONENT_CLASSES = {
        "changes-table--good",
        "changes-table--bad",
        "changes-table--open",
        "changes-table--held",
        "changes-table--unknown",
        "changes-table--head",
        "changes-table--rule",
        "changes-table--quiet",
    }

    def __init__(self) -> None:
        super().__init__(markup=False)

    def show(self, rows: Iterable[ChangeRow]) -> None:
        """Show other changes."""
        self.update(ChangesGrid(rows, self.style_of))

    def style_of(self, name: str) -> Style:
        """Style of a component class."""
        return self.get_component_rich_style(f"changes-table--{name}")
