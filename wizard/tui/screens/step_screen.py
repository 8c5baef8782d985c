"""A step that has a screen of its own, and the ways from it to the other steps."""

from typing import Any

from wizard.flow.flow import Flow
from wizard.tui.screens.sectioned import SectionedScreen
from wizard.tui.screens.steps import ask_step


class StepScreen(SectionedScreen[Any]):
    """A step with a long view. Its result is the flow to continue with, or None to go home.

    Attributes
    ----------
    flow : Flow
        At the step.
    """

    flow: Flow

    BINDINGS = [("f3", "steps", "steps"), ("f9", "leave", "leave")]

    def action_back(self) -> None:
        """Go to the question before the step."""
        self.dismiss(self.flow.going_by(-1))

    def action_steps(self) -> None:
        """Ask for a step to go to."""
        ask_step(self.app, self.flow.progress, self.action_go_to_step)

    def action_go_to_step(self, name: str) -> None:
        """Go to a step."""
        self.dismiss(self.flow.going_to_step(name))

    def action_leave(self) -> None:
        """Go home; the draft stays."""
        self.dismiss(None)
