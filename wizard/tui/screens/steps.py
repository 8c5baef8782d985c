"""A sheet with the steps, to go to one of them."""

from collections.abc import Callable, Sequence
from typing import Any

from textual import on
from textual.app import App, ComposeResult
from textual.containers import Vertical
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Static

from wizard.flow.progress import Progress
from wizard.questions.question import Choice
from wizard.tui.widgets.choice_list import ChoiceList
from wizard.tui.widgets.keys import Key, Keys
from wizard.tui.widgets.trail import MARKS

STATES = {"done": "done", "open": "not finished", "here": "you are here", "to come": "to come"}


def ask_step(app: App[Any], progress: Sequence[Progress], go_to: Callable[[str], None]) -> None:
    """Ask for a step, and call a function with its name."""

    def go_to_chosen(name: str | None) -> None:
        if name is not None:
            go_to(name)

    app.push_screen(StepsScreen(progress), go_to_chosen)


class StepsScreen(ModalScreen[str | None]):
    """Asks for a step. Its result is the name of the step, or None."""

    BINDINGS = [("escape,f3", "close", "back")]

    def __init__(self, progress: Sequence[Progress]) -> None:
        super().__init__()
        self.progress = progress

    def compose(self) -> ComposeResult:
        """Yield a list of the steps, each with mark and words."""
        with Vertical(classes="sheet"):
            yield Static(Content("Go to a step"), classes="title")
            yield ChoiceList()
            yield Keys()

    def on_mount(self) -> None:
        """Begin at the present step."""
        here = next((step.step.name for step in self.progress if step.state == "here"), None)
        choices = [
            Choice(step.step.name, f"{MARKS[step.state]} {step.step.name}", self.words(step))
            for step in self.progress
        ]
        self.query_one(ChoiceList).begin(choices, here)
        self.query_one(ChoiceList).focus()
        self.query_one(Keys).keys = (
            Key("↑ ↓", "choose"),
            Key("Enter", "go there", "go"),
            Key("Esc", "back", "close"),
        )

    @staticmethod
    def words(progress: Progress) -> str:
        """State of a step, and its count of answers."""
        counts = f", {progress.done} of {progress.total}" if progress.total > 1 else ""
        return f"{STATES[progress.state]}{counts}"

    @on(ChoiceList.Chosen)
    def choose(self, event: ChoiceList.Chosen) -> None:
        """Go to the step."""
        self.dismiss(event.value)

    def action_go(self) -> None:
        """Go to the step that is marked."""
        self.query_one(ChoiceList).action_submit()

    def action_close(self) -> None:
        """Stay at the present step."""
        self.dismiss(None)
