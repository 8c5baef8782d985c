"""A sheet with a list: one line is chosen, or several are ticked."""

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
    """Asks for a choice. Its result is the value chosen, the list of values ticked, or None.

    Parameters
    ----------
    ask : str
        The question.
    do : str
        Meaning of the choice.
    choices : sequence of Choice
    chosen
        The value, or the list of values, to begin with.
    several : bool
        True if several lines can be ticked.
    """

    BINDINGS = [("escape", "close", "back")]

    def __init__(
        self, ask: str, do: str, choices: Sequence[Choice], chosen: Any, several: bool = False
    ) -> None:
        super().__init__()
        self.ask, self.do, self.choices = ask, do, choices
        self.chosen, self.several = chosen, several

    def compose(self) -> ComposeResult:
        """Yield the question and its list."""
        with Vertical(classes="sheet"):
            yield Static(Content(self.ask), classes="title")
            yield Static(Content(self.do), classes="text")
            yield Choices()
            yield Keys()

    def on_mount(self) -> None:
        """Begin at the present choice."""
        choices = self.query_one(Choices)
        choices.begin(self.choices, self.chosen, self.several)
        choices.focus()
        tick = [Key("Space", "tick", "tick")] if self.several else []
        self.query_one(Keys).keys = (
            Key("↑ ↓", "move"),
            *tick,
            Key("Enter", "take it", "accept"),
            Key("Esc", "back", "close"),
        )

    @on(Choices.Chosen)
    def choose(self, event: Choices.Chosen) -> None:
        """Leave with the choice."""
        self.dismiss(event.value)

    def action_tick(self) -> None:
        """Tick a line, for the mouse."""
        self.query_one(Choices).action_select()

    def action_accept(self) -> None:
        """Accept the choice, for the mouse."""
        self.query_one(Choices).action_hand_in()

    def action_close(self) -> None:
        """Leave without a choice."""
        self.dismiss(None)
