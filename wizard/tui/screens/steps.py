"""The steps, to go to any of them."""

from collections.abc import Callable, Sequence
from typing import Any

from textual import on
from textual.app import App, ComposeResult
from textual.containers import Vertical
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Static

from wizard.flow.flow import Progress
from wizard.questions.question import Choice
from wizard.tui.widgets.choices import Choices
from wizard.tui.widgets.keys import Key, Keys
from wizard.tui.widgets.trail import MARKS

STATES = {"done": "done", "open": "not finished", "here": "you are here", "to come": "to come"}


def ask_step(app: App[Any], progress: Sequence[Progress], go: Callable[[str], None]) -> None:
    """Ask for a step; `go` is given its name."""

    def chosen(name: str | None) -> None:
        if name is not None:
            go(name)

    app.push_screen(StepsScreen(progress), chosen)


class StepsScreen(ModalScreen[str | None]):
    """Gives the name of the step to go to, or None."""

    BINDINGS = [("escape,f3", "close", "back")]

    def __init__(self, progress: Sequence[Progress]) -> None:
        super().__init__()
        self.progress = progress

    def compose(self) -> ComposeResult:
        """A list of the steps, each with mark and words."""
        with Vertical(classes="sheet"):
            yield Static(Content("Go to a step"), classes="title")
            yield Choices()
            yield Keys()

    def on_mount(self) -> None:
        """Begin at the step at hand."""
        here = next((one.step.name for one in self.progress if one.state == "here"), None)
        choices = [
            Choice(one.step.name, f"{MARKS[one.state]} {one.step.name}", self.words(one))
            for one in self.progress
        ]
        self.query_one(Choices).begin(choices, here)
        self.query_one(Choices).focus()
        self.query_one(Keys).keys = (
            Key("↑ ↓", "choose"),
            Key("Enter", "go there", "go"),
            Key("Esc", "back", "close"),
        )

    @staticmethod
    def words(progress: Progress) -> str:
        """How far a step is."""
        counts = f", {progress.done} of {progress.total}" if progress.total > 1 else ""
        return f"{STATES[progress.state]}{counts}"

    @on(Choices.Chosen)
    def choose(self, event: Choices.Chosen) -> None:
        """Go to the step."""
        self.dismiss(event.value)

    def action_go(self) -> None:
        """Go to the step that is marked."""
        self.query_one(Choices).action_hand_in()

    def action_close(self) -> None:
        """Stay where we were."""
        self.dismiss(None)
