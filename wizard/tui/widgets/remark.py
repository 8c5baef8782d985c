"""The lines under the field: what may be typed, or what is wrong with what was."""

from textual.content import Content
from textual.widgets import Static

MARKS = {
    "refused": ("✗", "$error"),
    "queried": ("?", "$warning"),
    "trouble": ("■", "$error"),
    "undone": ("↶", "$warning"),
    "not entered": ("…", "$warning"),
}


class Remark(Static):
    """A hint, or a mark, a word and what they are about."""

    def hint(self, text: str) -> None:
        """Show the form of an answer."""
        self.update(Content.styled(text, "$quiet"))

    def say(self, what: str, text: str, way_out: str = "") -> None:
        """Say what is wrong with an answer, or with the machine: the way out first."""
        mark, colour = MARKS[what]
        head = f"{mark} {what}; {way_out}: " if way_out else f"{mark} {what}: "
        self.update(Content.assemble((head, f"bold {colour}"), text))
