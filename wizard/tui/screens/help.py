"""Help: the whole guidance of the question at hand, the keys, and the cautions."""

from __future__ import annotations

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Static

from wizard.tui.widgets.keys import Key, Keys

Section = tuple[str, str | Content]


class HelpScreen(ModalScreen[None]):
    """Some sections of text, each under its heading, scrolled with the arrows."""

    BINDINGS = [("escape,f1,enter", "close", "back")]

    def __init__(self, sections: Sequence[Section]) -> None:
        super().__init__()
        self.sections = sections

    def compose(self) -> ComposeResult:
        """The sections under each other."""
        with VerticalScroll(classes="sheet"):
            for heading, text in self.sections:
                yield Static(Content(heading), classes="title")
                yield Static(Content(text) if isinstance(text, str) else text, classes="text")
        yield Keys()

    def on_mount(self) -> None:
        """The arrows scroll at once."""
        self.query_one(VerticalScroll).focus()
        self.query_one(Keys).keys = (Key("↑ ↓", "scroll"), Key("Esc", "back", "close"))

    def action_close(self) -> None:
        """Back to where we were."""
        self.dismiss(None)
