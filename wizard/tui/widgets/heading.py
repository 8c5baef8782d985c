"""The top line: the session on the left, its state on the right."""

from rich.cells import cell_len
from textual.content import Content
from textual.reactive import reactive
from textual.widget import Widget

from core.text.plain_text import plain


class Heading(Widget):
    """One line with a left and a right part; the left part is cut when there is no room."""

    left: reactive[str] = reactive("")
    right: reactive[str] = reactive("")

    def render(self) -> Content:
        """Program, left part, and the right part at the right edge."""
        name = "Evenarc"
        right = self.right[-max(self.size.width - len(name) - 2, 0) :]
        room = self.size.width - cell_len(name) - cell_len(right) - 4
        left = plain(self.left, max(room, 0)) if self.left else ""
        gap = self.size.width - cell_len(name) - cell_len(left) - cell_len(right) - 2
        return Content.assemble(
            (name, "bold $accent"), "  ", left, " " * max(gap, 1), (right, "$quiet")
        )
