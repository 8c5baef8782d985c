"""The sections of a long view, which scroll."""

from textual.containers import VerticalScroll
from textual.message import Message


class Sections(VerticalScroll, can_focus=False):
    """Holds the sections, and posts a message when it has scrolled."""

    class Scrolled(Message):
        """Another section may be at the top now."""

    def watch_scroll_y(self, old_value: float, new_value: float) -> None:
        """Post the message."""
        super().watch_scroll_y(old_value, new_value)
        self.post_message(self.Scrolled())
