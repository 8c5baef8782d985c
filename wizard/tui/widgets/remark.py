"""The lines under the field: a hint, or a remark on the answer."""

from typing import Literal

from textual.content import Content
from textual.widgets import Static

RemarkKind = Literal["refused", "queried", "trouble", "undone", "not entered"]

MARKS: dict[RemarkKind, tuple[str, str]] = {
    "refused": ("✗", "$error"),
    "queried": ("?", "$warning"),
    "trouble": ("■", "$error"),
    "undone": ("↶", "$warning"),
    "not entered": ("…", "$warning"),
}
"""Mark and colour of each kind of remark."""


class Remark(Static):
    """A hint, or the mark and the word of a remark before its text."""

    def hint(self, text: str) -> None:
        """Show a hint on the answer."""
        self.update(Content.styled(text, "$quiet"))

    def say(self, kind: RemarkKind, text: str, way_out: str = "") -> None:
        """Show a remark, with the way out before its text."""
        mark, colour = MARKS[kind]
        head = f"{mark} {kind}; {way_out}: " if way_out else f"{mark} {kind}: "
        self.update(Content.assemble((head, f"bold {colour}"), text))
