"""The lines under the field: what may be typed, or what is wrong with what was."""

from textual.content import Content
from textual.widgets import Static

MARKS = {"refused": ("✗", "$error"), "queried": ("?", "$warning"), "trouble": ("■", "$error")}


class Remark(Static):
    """A hint, or a mark, a word and what they are about."""

    def hint(self, text: str) -> None:
        """What may be typed."""
        self.update(Content.styled(text, "$quiet"))

    def say(self, what: str, text: str, way_out: str = "") -> None:
        """Something is refused, queried, or the machine is in trouble."""
        mark, colour = MARKS[what]
        head = Content.assemble((f"{mark} {what}: ", f"bold {colour}"), text)
        self.update(head + Content.styled(f" {way_out}", f"bold {colour}") if way_out else head)
