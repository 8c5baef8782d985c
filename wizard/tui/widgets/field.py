"""The field an answer is typed into."""

from textual.binding import Binding
from textual.events import Key, Paste
from textual.widgets import Input

LONGEST = 4000
"""Characters of a line."""

EDITS = {
    key: binding.action
    for binding in Binding.make_bindings(Input.BINDINGS)
    for key in binding.key.split(",")
}
"""What the keys do that edit the line or hand it in, by key."""


class Field(Input):
    """One line of text; Enter hands it in.

    Where `holds`, keys take effect in the order they are pressed, however fast, and what is typed
    between Enter and the next question waits for that question: a tape that types its readings, or
    a laptop that was busy, must not run one answer into the next.
    """

    def __init__(self, *, id: str | None = None, holds: bool = False) -> None:
        super().__init__(id=id, select_on_focus=False, max_length=LONGEST)
        self.cursor_blink = False
        self.holds = holds
        self.ahead: list[Key] | None = None
        """Keys that wait, after Enter; None while a line is being typed."""

    async def _on_key(self, event: Key) -> None:
        if not self.holds or not (event.is_printable or event.key in EDITS):
            return  # to the keys of the screen, as any other line
        event.stop()
        event.prevent_default()
        if self.ahead is None:
            await self._type(event)
        else:
            self.ahead.append(event)

    async def _type(self, event: Key) -> None:
        # As a binding an edit would wait until the keys behind it are typed.
        if event.key not in EDITS:
            await super()._on_key(event)
            return
        await self.run_action(EDITS[event.key])
        if event.key == "enter":
            self.ahead = []

    def _on_paste(self, event: Paste) -> None:
        """Insert pasted text as one line, without control characters, up to the longest line."""
        event.stop()
        event.prevent_default()
        line = " ".join(event.text.replace("\t", " ").splitlines())
        line = "".join(character for character in line if character.isprintable())
        start, end = sorted(self.selection)
        room = LONGEST - len(self.value) + end - start
        if len(line) > room:
            self.app.notify(f"cut: a line takes {LONGEST} characters", markup=False)
        self.replace(line[:room], start, end)

    def begin(self, text: str) -> None:
        """Begin with a text, the cursor at its end.

        Keys typed ahead follow on an empty line; beside an older text they are dropped.
        """
        self.value = text
        self.cursor_position = len(text)
        if self.ahead and not text:
            self.call_later(self._type_ahead)
        else:
            self.ahead = None

    async def _type_ahead(self) -> None:
        waiting, self.ahead = self.ahead or [], None
        for place, event in enumerate(waiting, 1):
            await self._type(event)
            if self.ahead is not None:  # a whole line was typed ahead: the rest waits for its turn
                self.ahead += waiting[place:]
                return

    def begin_again(self) -> None:
        """Mark the typed text, so that typing replaces it."""
        self.ahead = None
        self.action_select_all()

    def stay(self) -> None:
        """Stay at this question, and drop the keys typed ahead for another one."""
        self.ahead = None
