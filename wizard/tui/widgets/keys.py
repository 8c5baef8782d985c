"""The bottom lines: the keys in plain words; each can be clicked too."""

from collections.abc import Sequence
from typing import NamedTuple

from textual.content import Content
from textual.geometry import Size
from textual.reactive import reactive

from wizard.tui.widgets.pressable import Pressable, with_action


class Key(NamedTuple):
    """A key with its meaning.

    Attributes
    ----------
    key : str
    words : str
        Effect of the key in a word or two.
    action : str
        Action of the screen that a click runs; "" for a key of the keyboard alone, such as an
        arrow.
    """

    key: str
    words: str
    action: str = ""


class Keys(Pressable):
    """Keys in their order; they wrap to a second line where one is too narrow."""

    keys: reactive[Sequence[Key]] = reactive((), layout=True)

    def render(self) -> Content:
        """Every key with its words; a line never ends between the two."""
        return Content("\n").join(Content("  ").join(line) for line in self.lines(self.size.width))

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """Number of lines of the keys."""
        return len(self.lines(width))

    def lines(self, width: int) -> list[list[Content]]:
        """Pairs of key and words in each line."""
        lines: list[list[Content]] = [[]]
        used = 0
        for key in self.keys:
            pair = Content.assemble((key.key, "bold $accent"), f" {key.words}")
            pair = with_action(pair, key.action) if key.action else pair
            if lines[-1] and used + 2 + pair.cell_length > width:
                lines.append([])
            used = pair.cell_length + (used + 2 if lines[-1] else 0)
            lines[-1].append(pair)
        return lines
