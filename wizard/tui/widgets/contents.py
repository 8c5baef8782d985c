"""The parts of a long page by number: a key each, or a click, goes there."""

from collections.abc import Sequence

from textual.content import Content
from textual.reactive import reactive

from wizard.tui.widgets.pressable import Pressable, does


class Contents(Pressable):
    """One line of parts; the one at hand is marked."""

    parts: reactive[Sequence[str]] = reactive(())
    at: reactive[int] = reactive(0)

    def render(self) -> Content:
        """Number and name of each part."""
        return Content("  ").join(self._part(index) for index in range(len(self.parts)))

    def _part(self, index: int) -> Content:
        is_here = index == self.at
        number = Content.styled(str(index + 1), "bold $accent")
        name = Content.styled(
            f"\N{NO-BREAK SPACE}{self.parts[index]}", "bold underline" if is_here else "$quiet"
        )
        return does(number + name, f"part({index + 1})")
