"""The field an answer is typed into."""

from textual.binding import Binding
from textual.events import Key, Paste
from textual.widgets import Input
from textual.widgets.input import Selection

LONGEST = 4000
"""Characters of a line."""

EDITS = {
    key: binding.action
    for binding in Binding.make_bindings(Input.BINDINGS)
    for key in binding.key.split(",")
}
"""Actions of the keys that edit the line or submit it."""


class Field(Input):
    """One line of text; Enter submits it.

    With `keeps_typing_ahead`, keys take effect in the order they are pressed, however fast. Keys
    that are pressed between Enter and the next question wait for that question. So a tape that
    types its readings, or a busy laptop, does not run one answer into the next.
    """

    def __init__(self, *, id: str | None = None, keeps_typing_ahead: bool = False) -> None:
        super().__init__(id=id, select_on_focus=False, max_length=LONGEST)
        self.cursor_blink = False
        self.keeps_typing_ahead = keeps_typing_ahead
        self.typed_ahead: list[Key] | None = None
        """Keys that wait, after Enter; None while a line is being typed."""
        self.adds_reading = False
        """True if the next character begins a further reading."""

    async def _on_key(self, event: Key) -> None:
        if not self.keeps_typing_ahead or not (event.is_printable or event.key in EDITS):
            return  # the screen handles the key
        event.stop()
        event.prevent_default()
        if self.typed_ahead is None:
            await self._type(event)
        else:
            self.typed_ahead.append(event)

    async def _type(self, event: Key) -> None:
        # A binding would run only after the keys that follow it.
        if event.key not in EDITS:
            self._begin_reading(event.character or "")
            await super()._on_key(event)
            return
        self.adds_reading = self.adds_reading and event.key == "enter"
        await self.run_action(EDITS[event.key])
        if event.key == "enter":
            self.typed_ahead = []

    def _on_paste(self, event: Paste) -> None:
        """Insert a pasted text as one line, without control characters, as far as there is room."""
        event.stop()
        event.prevent_default()
        line = " ".join(event.text.replace("\t", " ").splitlines())
        line = "".join(character for character in line if character.isprintable())
        self._begin_reading(line)
        start, end = sorted(self.selection)
        room = LONGEST - len(self.value) + end - start
        if len(line) > room:
            self.app.notify(f"cut: a line takes {LONGEST} characters", markup=False)
        self.replace(line[:room], start, end)

    def begin(self, text: str) -> None:
        """Begin with a text; the cursor is at its end.

        Keys typed ahead follow on an empty line; with an older text they are dropped.
        """
        self.value = text
        self.cursor_position = len(text)
        self.adds_reading = False
        if self.typed_ahead and not text:
            self.call_later(self._type_ahead)
        else:
            self.typed_ahead = None

    async def _type_ahead(self) -> None:
        waiting, self.typed_ahead = self.typed_ahead or [], None
        for count, event in enumerate(waiting, 1):
            await self._type(event)
            if self.typed_ahead is not None:  # the line is submitted: the rest waits for the next
                self.typed_ahead += waiting[count:]
                return

    def select_text(self) -> None:
        """Select the text, so that typing replaces it."""
        self.typed_ahead = None
        self.adds_reading = False
        self.action_select_all()

    def select_last_reading(self) -> None:
        """Select the text after the last semicolon and its spaces."""
        last = self.value.rpartition(";")[2].lstrip()
        self.selection = Selection(len(self.value) - len(last), len(self.value))

    def add_to_text(self) -> None:
        """Keep the text, so that typing adds a reading to those that it has."""
        self.typed_ahead = None
        self.cursor_position = len(self.value)
        self.adds_reading = True

    def _begin_reading(self, typed: str) -> None:
        """Separate a further reading from those before it, unless the person does it."""
        if self.adds_reading and not f"{self.value}{typed}".rstrip().endswith(";"):
            self.value = f"{self.value}; "
            self.cursor_position = len(self.value)
        self.adds_reading = False

    def drop_typed_ahead(self) -> None:
        """Drop the keys typed ahead, which were meant for another question."""
        self.typed_ahead = None
