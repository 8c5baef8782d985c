"""The field an answer is typed into."""

from textual.widgets import Input


class Field(Input):
    """One line of text; Enter hands it in."""

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(id=id, select_on_focus=False, max_length=4000)
        self.cursor_blink = False

    def begin(self, text: str) -> None:
        """With this text in it, ready to be gone on with at its end."""
        self.value = text
        self.cursor_position = len(text)

    def begin_again(self) -> None:
        """With what was typed marked, so that typing replaces it."""
        self.action_select_all()
