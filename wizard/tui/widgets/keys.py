"""The bottom lines: the keys in plain words. Each can be clicked as well."""

from collections.abc import Sequence
from typing import NamedTuple

from textual.content import Content
from textual.geometry import Size
from textual.reactive import reactive

from wizard.tui.widgets.pressable import Pressable, does


class Key(NamedTuple):
    """A key, what it does in a word or two, and the action of the screen behind it.

    Without an action it is for the keyboard alone, as arrows are.
    """

    key: str
    words: str
    action: str = ""


class Keys(Pressable):
    """Keys in the order given; they wrap to a second line where one is too narrow."""

    keys: reactive[Sequence[Key]] = reactive((), layout=True)

    def render(self) -> Content:
        """Key and words, a pair never parted at a line's end."""
        return Content("\n").join(Content("  ").join(line) for line in self.lines(self.size.width))

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """Number of rows that the keys take."""
        return len(self.lines(width))

    def lines(self, width: int) -> list[list[Content]]:
        """The pairs of each line."""
        lines: list[list[Content]] = [[]]
        used = 0
        for key in self.keys:
            pair = Content.assemble((key.key, "bold $accent"), f" {key.words}")
            pair = does(pair, key.action) if key.action else pair
            if lines[-1] and used + 2 + pair.cell_length > width:
                lines.append([])
            used = pair.cell_length + (used + 2 if lines[-1] else 0)
            lines[-1].append(pair)
        return lines
