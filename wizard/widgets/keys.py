"""The bottom lines: the keys in plain words. Each can be clicked as well."""

from collections.abc import Sequence
from typing import NamedTuple

from textual.content import Content
from textual.reactive import reactive

from wizard.widgets.pressable import Pressable, does


class Key(NamedTuple):
    """A key, what it does in a word or two, and the action of the screen behind it."""

    key: str
    words: str
    action: str


class Keys(Pressable):
    """Keys in the order given; they wrap to a second line where one is too narrow."""

    keys: reactive[Sequence[Key]] = reactive((), layout=True)

    def render(self) -> Content:
        """Key and words, a pair never parted at a line's end."""
        return Content("  ").join(self._pair(key) for key in self.keys)

    @staticmethod
    def _pair(key: Key) -> Content:
        words = f" {key.words}".replace(" ", "\N{NO-BREAK SPACE}")
        pair = Content.assemble((key.key.replace(" ", "\N{NO-BREAK SPACE}"), "bold $accent"), words)
        return does(pair, key.action)
