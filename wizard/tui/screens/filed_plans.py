"""The plans for a vehicle whose session is filed: to be looked at, not kept."""

from collections.abc import Sequence

from core.documents.document import Document
from core.profiles.profile import Profile
from wizard.flow.flow import Flow
from wizard.phrases.help_on_plans import help_on_plans
from wizard.phrases.help_section import HelpSection
from wizard.tui.screens.plans import PlansScreen
from wizard.tui.widgets.keys import Key

ACTIONS_OF_A_DRAFT = frozenset(("choose", "without", "steps", "leave"))
"""Actions that only an unfinished session has."""


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
        """Allow all actions that leave the session as it is."""
        return action not in ACTIONS_OF_A_DRAFT

    def keys(self) -> tuple[Key, ...]:
        """Keys that do something with the plan at hand."""
        keys = super().keys()
        return tuple(key for key in keys if key.action not in ACTIONS_OF_A_DRAFT)

    def help(self) -> Sequence[HelpSection]:
        """Help on plans that are not kept."""
        return help_on_plans(is_filed=True)

    def keep_document(self, document: Document) -> None:
        """Keep a changed document while the screen is open, not on the disk."""
        self.flow = self.flow.with_document(document)

    def action_back(self) -> None:
        """Go back to the record."""
        self.dismiss(None)
