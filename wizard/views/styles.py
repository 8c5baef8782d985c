"""Text in styles by name, for renderables that are drawn on a screen and in a report."""

from collections.abc import Callable

from rich.style import Style
from rich.text import Text

StyleOf = Callable[[str], Style]
"""Returns the style of a name: good, bad, open, held, unknown, head, rule, quiet and others."""


class Styled:
    """A renderable whose parts take their styles by name."""

    def __init__(self, style_of: StyleOf) -> None:
        self.style_of = style_of

    def text(self, words: str, name: str) -> Text:
        """Words in the style of a name."""
        return Text(words, style=self.style_of(name))
