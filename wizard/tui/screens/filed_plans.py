"""What to move on a vehicle whose session is filed: the plans to look at; none is kept."""

from __future__ import annotations

from core.documents.document import Document
from core.profiles.profile import Profile
from wizard.flow.flow import Flow
from wizard.tui.screens.plans import PlansScreen
from wizard.tui.widgets.keys import Key

OF_A_DRAFT = frozenset(("choose", "without", "steps", "leave"))
"""What only an unfinished session has."""


class FiledPlansScreen(PlansScreen):
    """Plans for the vehicle of a record.

    Parameters
    ----------
    document : mapping
        The record.
    profile : Profile
        Its profile.
    """

    def __init__(self, document: Document, profile: Profile) -> None:
        super().__init__(Flow(document, profile))

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """Everything but what would change the session."""
        return action not in OF_A_DRAFT

    def keys(self) -> tuple[Key, ...]:
        """What can be done with the plan at hand."""
        every = super().keys()
        return tuple(key for key in every if key.action not in OF_A_DRAFT)

    def note(self, document: Document) -> None:
        """What is said here holds while the screen is open."""
        self.flow = self.flow.with_document(document)

    def action_back(self) -> None:
        """To the record."""
        self.dismiss(None)
