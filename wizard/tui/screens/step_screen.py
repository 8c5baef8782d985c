"""A step that has a page of its own, and the ways from it to the other steps."""

from __future__ import annotations

from typing import Any

from wizard.flow.flow import Flow
from wizard.tui.screens.sectioned import SectionedScreen
from wizard.tui.screens.steps import ask_step


class StepScreen(SectionedScreen[Any]):
    """Left with the flow to go on with, or with None for the first page."""

    flow: Flow

    BINDINGS = [("f3", "steps", "steps"), ("f9", "leave", "leave")]

    def action_back(self) -> None:
        """To the question before."""
        self.dismiss(self.flow.going_by(-1))

    def action_steps(self) -> None:
        """Choose a step to go to."""
        ask_step(self.app, self.flow.progress, self.action_go_to_step)

    def action_go_to_step(self, name: str) -> None:
        """To a step."""
        self.dismiss(self.flow.going_to_step(name))

    def action_leave(self) -> None:
        """To the first page; the draft stays."""
        self.dismiss(None)
