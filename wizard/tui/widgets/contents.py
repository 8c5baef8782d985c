"""The sections of a long view by number: a key or a click goes to each."""

from collections.abc import Sequence

from textual.content import Content
from textual.reactive import reactive

from wizard.tui.widgets.pressable import Pressable, with_action


class Contents(Pressable):
    """One line of section names; the section at the top is marked.

    Attributes
    ----------
    sections : sequence of str
        Names of the sections.
    at : int
        Index of the section at the top.
    """

    sections: reactive[Sequence[str]] = reactive(())
    at: reactive[int] = reactive(0)

    def render(self) -> Content:
        """Number and name of each section, closer together where the line is too short."""
        sections = [self._section(index) for index in range(len(self.sections))]
        apart = Content("  ").join(sections)
        return apart if apart.cell_length <= self.size.width else Content(" ").join(sections)

    def _section(self, index: int) -> Content:
        number = Content.styled(str((index + 1) % 10), "bold $accent")
        name = Content.styled(
            f"\N{NO-BREAK SPACE}{self.sections[index]}",
            "bold underline" if index == self.at else "$quiet",
        )
        return with_action(number + name, f"section({index + 1})")
