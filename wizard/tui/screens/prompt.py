"""One thing asked on a sheet of its own; what it would bring is said while it is typed."""

from __future__ import annotations

from collections.abc import Callable
from typing import Generic, TypeVar

from textual import on
from textual.app import ComposeResult
from textual.containers import Vertical
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Static

from core.text.quantity import QuantityError
from wizard.tui.widgets.field import Field
from wizard.tui.widgets.keys import Key, Keys
from wizard.tui.widgets.remark import Remark

Value = TypeVar("Value")


class PromptScreen(ModalScreen[Value | None], Generic[Value]):
    """Gives what was typed, or None.

    Parameters
    ----------
    ask : str
        The question.
    do : str
        What may be typed, and what for.
    text : str
        What stands in the field to begin with.
    judge : callable
        Takes what is typed and gives its value and what it would bring; raises QuantityError.
    """

    BINDINGS = [("escape", "close", "back")]

    def __init__(
        self, ask: str, do: str, text: str, judge: Callable[[str], tuple[Value, str]]
    ) -> None:
        super().__init__()
        self.ask, self.do, self.text, self.judge = ask, do, text, judge

    def compose(self) -> ComposeResult:
        """The question, its field, and what it would bring."""
        with Vertical(classes="sheet"):
            yield Static(Content(self.ask), classes="title")
            yield Static(Content(self.do), classes="text")
            yield Field()
            yield Remark()
            yield Keys()

    def on_mount(self) -> None:
        """What stood there is marked, so that typing replaces it."""
        field = self.query_one(Field)
        field.begin(self.text)
        field.begin_again()
        field.focus()
        self.query_one(Keys).keys = (Key("Enter", "take it", "take"), Key("Esc", "back", "close"))

    @on(Field.Changed)
    def say(self) -> None:
        """Say what it would bring, as soon as it is a quantity."""
        try:
            self.query_one(Remark).hint(self.judge(self.query_one(Field).value)[1])
        except QuantityError:
            self.query_one(Remark).hint("")

    @on(Field.Submitted)
    def action_take(self) -> None:
        """Take what was typed, or say why not."""
        try:
            self.dismiss(self.judge(self.query_one(Field).value)[0])
        except QuantityError as error:
            self.query_one(Remark).say("refused", str(error))

    def action_close(self) -> None:
        """Leave it as it was."""
        self.dismiss(None)
