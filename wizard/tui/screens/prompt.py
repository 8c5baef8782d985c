"""A sheet with a field: the outcome of a text is said while it is typed."""

from collections.abc import Callable
from typing import Generic, TypeVar

from textual import on
from textual.app import ComposeResult
from textual.containers import Vertical
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Static

from wizard.tui.widgets.field import Field
from wizard.tui.widgets.keys import Key, Keys
from wizard.tui.widgets.remark import Remark

Value = TypeVar("Value")


class PromptScreen(ModalScreen[Value | None], Generic[Value]):
    """Asks for a quantity or a name. Its result is the value that was typed, or None.

    Parameters
    ----------
    ask : str
        The question.
    do : str
        How to answer it.
    text : str
        Text of the field to begin with.
    read : callable
        Takes the typed text, and returns its value and its outcome in words. Raises ValueError.
    """

    BINDINGS = [("escape", "close", "back")]

    def __init__(
        self, ask: str, do: str, text: str, read: Callable[[str], tuple[Value, str]]
    ) -> None:
        super().__init__()
        self.ask, self.do, self.text, self.read = ask, do, text, read

    def compose(self) -> ComposeResult:
        """Yield the question, its field, and the outcome."""
        with Vertical(classes="sheet"):
            yield Static(Content(self.ask), classes="title")
            yield Static(Content(self.do), classes="text")
            yield Field()
            yield Remark()
            yield Keys()

    def on_mount(self) -> None:
        """Mark the text of the field, so that typing replaces it."""
        field = self.query_one(Field)
        field.begin(self.text)
        field.select_text()
        field.focus()
        self.query_one(Keys).keys = (Key("Enter", "take it", "accept"), Key("Esc", "back", "close"))

    @on(Field.Changed)
    def say_outcome(self) -> None:
        """Say the outcome of the typed text; nothing while it has none."""
        try:
            _, outcome = self.read(self.query_one(Field).value)
        except ValueError:
            outcome = ""
        self.query_one(Remark).hint(outcome)

    @on(Field.Submitted)
    def action_accept(self) -> None:
        """Leave with the typed value, or say why it is refused."""
        try:
            value, _ = self.read(self.query_one(Field).value)
        except ValueError as error:
            self.query_one(Remark).say("refused", str(error))
        else:
            self.dismiss(value)

    def action_close(self) -> None:
        """Leave without a value."""
        self.dismiss(None)
