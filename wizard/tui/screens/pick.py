"""A list on a sheet of its own, to choose one line of it or to tick several."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from textual import on
from textual.app import ComposeResult
from textual.containers import Vertical
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Static

from wizard.questions.question import Choice
from wizard.tui.widgets.choices import Choices
from wizard.tui.widgets.keys import Key, Keys


class PickScreen(ModalScreen[Any]):
    """Gives the value of the line that was chosen, the list of those ticked, or None.

    Parameters
    ----------
    ask : str
    do : str
        What the choice means.
    choices : sequence of Choice
    chosen
        The value, or the list of values, to begin with.
    several : bool
        Whether several can be ticked.
    """

    BINDINGS = [("escape", "close", "back")]

    def __init__(
        self, ask: str, do: str, choices: Sequence[Choice], chosen: Any, several: bool = False
    ) -> None:
        super().__init__()
        self.ask, self.do, self.choices = ask, do, choices
        self.chosen, self.several = chosen, several

    def compose(self) -> ComposeResult:
        """The question and its list."""
        with Vertical(classes="sheet"):
            yield Static(Content(self.ask), classes="title")
            yield Static(Content(self.do), classes="text")
            yield Choices()
            yield Keys()

    def on_mount(self) -> None:
        """Begin where it stands now."""
        choices = self.query_one(Choices)
        choices.begin(self.choices, self.chosen, self.several)
        choices.focus()
        tick = [Key("Space", "tick", "tick")] if self.several else []
        self.query_one(Keys).keys = (
            Key("↑ ↓", "move"),
            *tick,
            Key("Enter", "take it", "take"),
            Key("Esc", "back", "close"),
        )

    @on(Choices.Chosen)
    def choose(self, event: Choices.Chosen) -> None:
        """Give what was chosen."""
        self.dismiss(event.value)

    def action_tick(self) -> None:
        """Space, for the mouse."""
        self.query_one(Choices).action_select()

    def action_take(self) -> None:
        """Enter, for the mouse."""
        self.query_one(Choices).action_hand_in()

    def action_close(self) -> None:
        """Leave it as it was."""
        self.dismiss(None)
