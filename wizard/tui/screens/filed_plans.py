"""The plans for a vehicle whose session is filed: to be looked at, not kept."""

from collections.abc import Sequence
from pathlib import Path

from core.documents.document import Document
from core.documents.record import RecordError
from core.profiles.profile import Profile, ProfileError
from core.text.plain_text import plain
from wizard.flow.flow import Flow
from wizard.flow.planning import adjusters_in
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
    path : Path
        File of the record.
    document : mapping
        The record.
    profile : Profile
        Its profile.
    """

    BINDINGS = [("o,O", "order", "work order")]

    def __init__(self, path: Path, document: Document, profile: Profile) -> None:
        super().__init__(Flow(document, profile))
        self.path = path

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """Allow all actions that leave the session as it is."""
        return action not in ACTIONS_OF_A_DRAFT

    def keys(self) -> tuple[Key, ...]:
        """Keys that do something with the plan at hand."""
        keys = super().keys()
        kept = tuple(key for key in keys if key.action not in ACTIONS_OF_A_DRAFT)
        order = (Key("O", "work order", "order"),) if self.plan else ()
        return (*kept[:1], *order, *kept[1:])

    def action_order(self) -> None:
        """Write the work order of the plan at hand beside the record."""
        if self.planning is None or self.plan is None:
            return
        document = self.flow.document
        adjusters, clearance = adjusters_in(document, self.profile), self.profile.clearance
        write, verdict = self.app.surroundings.write_order, self.planning.verdict
        try:
            path = write(self.path, document, verdict, self.plan, adjusters, clearance, self.unit)
        except (RecordError, ProfileError) as error:
            self.app.warn(str(error))
        else:
            self.notify(f"the work order is made: {plain(path, 300)}", markup=False)

    def help(self) -> Sequence[HelpSection]:
        """Help on plans that are not kept."""
        return help_on_plans(is_filed=True)

    def keep_document(self, document: Document) -> None:
        """Keep a changed document while the screen is open, not on the disk."""
        self.flow = self.flow.with_document(document)

    def action_back(self) -> None:
        """Go back to the record."""
        self.dismiss(None)
