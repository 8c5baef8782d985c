"""Steps that show a result instead of asking a question, each on a screen of its own.

Such a screen takes the flow, with its document and profile, and the session that is measured again,
if there is one. Its result is one of three:

- the flow to continue with: `flow.skipped()` for the next step, `flow.going_by(-1)` to go back;
- a `Retake`, to take a reading again;
- None, to leave the session unfinished.
"""

from collections.abc import Callable
from typing import Any

from textual.screen import Screen

from core.documents.document import Document
from wizard.flow.flow import Flow
from wizard.tui.screens.photographs import PhotographsStep
from wizard.tui.screens.plans import PlansScreen
from wizard.tui.screens.verdict import VerdictStep

STEP_SCREENS: dict[str, Callable[[Flow, Document | None], Screen[Any]]] = {
    "photographs": PhotographsStep,
    "verdict": VerdictStep,
    "fix": PlansScreen,
}
"""Screens by the path of the question."""
