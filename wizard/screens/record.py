"""A filed session: its verdict once more, computed afresh from the record alone."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from core.document import Document
from core.profile import Profile
from wizard.screens.verdict import VerdictScreen
from wizard.widgets.keys import Key


class RecordScreen(VerdictScreen[None]):
    """The verdict on a record.

    Parameters
    ----------
    path : Path
    document : mapping
        What was read from it.
    profile_of : callable
    """

    def __init__(
        self, path: Path, document: Document, profile_of: Callable[[str], Profile]
    ) -> None:
        super().__init__(document, profile_of)
        self.path = path

    def keys(self) -> tuple[Key, ...]:
        """Going back comes first."""
        return (Key("Esc", "back", "back"), *super().keys())

    def action_back(self) -> None:
        """To where it was opened from."""
        self.dismiss(None)
