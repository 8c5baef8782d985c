"""A filed session: its verdict once more, computed afresh from the record alone."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from core.document import Document
from core.profile import Profile
from wizard.screens.sign import SignScreen
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

    BINDINGS = [
        ("c", "compare", "compare"),
        ("d", "decide", "decide"),
        ("f6", "again", "again"),
    ]

    def __init__(
        self, path: Path, document: Document, profile_of: Callable[[str], Profile]
    ) -> None:
        super().__init__(document, profile_of)
        self.path = path

    def keys(self) -> tuple[Key, ...]:
        """What can be done with a record."""
        return (
            Key("Esc", "back", "back"),
            *([Key("C", "before and after", "compare")] if self.verdict else []),
            Key("D", "sign or send back", "decide"),
            Key("F6", "measure again", "again"),
            *super().keys(),
        )

    def action_compare(self) -> None:
        """Beside the session it follows, or another one."""
        if self.verdict:
            self.app.compare(self.path)

    def action_decide(self) -> None:
        """The lead's decision."""

        def decided(document: Document | None) -> None:
            if document is not None:
                self.document = document
                self.show()

        self.app.push_screen(SignScreen(self.path, self.document), decided)

    def action_again(self) -> None:
        """Measure this vehicle again."""
        self.dismiss(None)
        self.app.measure_again(self.path)

    def action_back(self) -> None:
        """To where it was opened from."""
        self.dismiss(None)
