"""Steps that are looked at instead of answered, each on a screen of its own.

Such a screen is given the flow, with its document and profile, and the session that is measured
again, if there is one. It is left with the flow to go on with: `flow.skipped()` to the next step,
`flow.going_by(-1)` back; with a `Retake` to take a reading again; with None to leave the session
unfinished.
"""

from collections.abc import Callable
from typing import Any

from textual.screen import Screen

from core.documents.document import Document
from wizard.flow.flow import Flow
from wizard.tui.screens.plans import PlansScreen
from wizard.tui.screens.verdict import VerdictStep

STEP_SCREENS: dict[str, Callable[[Flow, Document | None], Screen[Any]]] = {
    "verdict": VerdictStep,
    "fix": PlansScreen,
}
"""By the path of the question."""
