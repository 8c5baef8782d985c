"""Set-up of a direct check: cautions, the method with its picture, its length and its line."""

from typing import Any, cast

from textual import on
from textual.app import ComposeResult
from textual.containers import Horizontal, VerticalScroll
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

from core.documents.document import Document
from core.documents.entries import EntryError
from core.readings.direct import EXAMPLES, LENGTH_ENTRIES, METHODS, Method
from wizard.flow.direct_rows import with_method
from wizard.phrases.direct_steps import (
    CAUTIONS,
    HOW,
    LENGTH_ASKED,
    LINE_ASKED,
    SET_UP,
    SIDES_OF_LINE,
)
from wizard.phrases.direct_steps import METHODS as METHOD_CHOICES
from wizard.phrases.session_names import session_words
from wizard.tui.pictures.direct_view import DirectView
from wizard.tui.screens.pick import PickScreen
from wizard.tui.screens.prompt import PromptScreen
from wizard.tui.widgets.choice_list import ChoiceList
from wizard.tui.widgets.heading import Heading
from wizard.tui.widgets.keys import Key, Keys
from wizard.views.direct_above import direct_picture


class DirectSetUp(Screen[Document | None]):
    """Asks how the steer is read. Its result is the document with the method, or None.

    Parameters
    ----------
    document : mapping
        The session that is measured.
    """

    BINDINGS = [("escape", "close", "back")]

    def __init__(self, document: Document) -> None:
        super().__init__()
        self.document = document

    def compose(self) -> ComposeResult:
        """Yield the cautions, the methods beside their picture, and the keys."""
        yield Heading()
        with Horizontal(id="direct-set-up"):
            with VerticalScroll():
                yield Static(Content(CAUTIONS), classes="text caution")
                yield Static("How is the steer read?", classes="title", markup=False)
                yield ChoiceList()
                yield Static(id="direct-how")
                yield Static(Content(SET_UP), classes="text")
            yield DirectView()
        yield Keys()

    def on_mount(self) -> None:
        """Begin at the first method."""
        self.query_one(Heading).left = f"{session_words(self.document)}, direct check"
        choices = self.query_one(ChoiceList)
        choices.begin(METHOD_CHOICES)
        choices.focus()
        self.show_method(METHODS[0])
        self.query_one(Keys).keys = (
            Key("↑ ↓", "move"),
            Key("Enter", "take it", "accept"),
            Key("Esc", "back", "close"),
        )

    def show_method(self, method: Method) -> None:
        """Show the picture and the words of a method."""
        self.query_one(DirectView).show(direct_picture(method))
        self.query_one("#direct-how", Static).update(Content(HOW[method]))

    @on(ChoiceList.OptionHighlighted)
    def show_marked(self) -> None:
        """Show the method that is marked."""
        if marked := self.query_one(ChoiceList).answer:
            self.show_method(cast(Method, marked))

    @on(ChoiceList.Chosen)
    def take_method(self, event: ChoiceList.Chosen) -> None:
        """Ask for the length and the line that the method needs."""
        self.query_one(ChoiceList).reopen()
        method = cast(Method, event.value)
        if method not in LENGTH_ENTRIES:
            self.dismiss(with_method(self.document, method, "", ""))
            return
        ask, do = LENGTH_ASKED[method]

        def read(text: str) -> tuple[str, str]:
            try:
                with_method(self.document, method, text.strip(), "left")
            except EntryError as error:
                raise ValueError(error.reason) from None
            return text.strip(), ""

        def ask_line(length: str | None) -> None:
            if length is not None:
                self.ask_line(method, length)

        example = EXAMPLES[LENGTH_ENTRIES[method]]
        self.app.push_screen(PromptScreen(ask, f"{do} Such as {example}.", "", read), ask_line)

    def ask_line(self, method: Method, length: str) -> None:
        """Ask for the side of the line, then leave with the method."""

        def leave(line: Any) -> None:
            if line is not None:
                self.dismiss(with_method(self.document, method, length, str(line)))

        do = "Left and right are the driver's."
        question = PickScreen(LINE_ASKED[method], do, SIDES_OF_LINE, SIDES_OF_LINE[0].value)
        self.app.push_screen(question, leave)

    def action_accept(self) -> None:
        """Take the marked method, for the mouse."""
        self.query_one(ChoiceList).action_submit()

    def action_close(self) -> None:
        """Leave without a method."""
        self.dismiss(None)
