"""The list of the home screen: unfinished sessions, then filed sessions, newest first."""

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from textual.content import Content
from textual.events import Click, Leave, MouseMove
from textual.geometry import Region, Size
from textual.message import Message
from textual.reactive import reactive
from textual.scroll_view import ScrollView
from textual.strip import Strip
from textual.visual import Visual

from core.documents.listed_session import ListedSession
from wizard.tui.widgets.tone_colours import TONE_COLOURS
from wizard.views.session_line import (
    Part,
    Widths,
    filed_parts,
    searched_text,
    unfinished_parts,
    widths_of,
)

NEW = ListedSession(Path())
"""The line that begins a new session."""

NEW_PARTS: tuple[Part, ...] = (("+ measure a new vehicle", "head"),)

STYLES = {
    "head": "bold",
    "look": "bold $error",
    "waiting": "bold $warning",
    "quiet": "italic",
    **TONE_COLOURS,
}
"""Styles of the parts of a line, by name."""

Line = tuple[ListedSession, bool]
"""A session, and True if it is unfinished."""


class Sessions(ScrollView):
    """One line for each session. Only the lines in view are drawn, however many there are."""

    COMPONENT_CLASSES = {"sessions--marked", "sessions--hovered"}

    highlighted: reactive[int | None] = reactive(None)
    """Index of the marked line, None for an empty list."""

    hovered: reactive[int | None] = reactive(None)
    """Index of the line under the mouse."""

    class Marked(Message):
        """Another line was marked."""

    class Opened(Message):
        """A line was chosen.

        Attributes
        ----------
        entry : ListedSession
        is_unfinished : bool
        """

        def __init__(self, entry: ListedSession, is_unfinished: bool) -> None:
            super().__init__()
            self.entry, self.is_unfinished = entry, is_unfinished

    def __init__(self) -> None:
        super().__init__()
        self.can_focus = False
        self.all_lines: list[Line] = []
        self.lines: list[Line] = []
        self.reached: Mapping[Path, str] = {}
        self.widths = Widths()
        self.sought = ""
        self.to_mark = ""
        """Id of a session that is marked when it comes into the list."""
        self.searched: dict[Path, tuple[ListedSession, str]] = {}
        """Text of each session that is searched for words; kept until the session changes."""

    def show(
        self,
        unfinished: Sequence[ListedSession],
        filed: Sequence[ListedSession],
        reached: Mapping[Path, str],
    ) -> None:
        """List the sessions of the files folder; the marked line stays marked.

        Parameters
        ----------
        unfinished, filed : sequence of ListedSession
        reached : mapping of Path to str
            The step that each unfinished session has reached.
        """
        marked = self.at_hand
        self.reached, self.widths = reached, widths_of(filed)
        begun = [(entry, True) for entry in unfinished]
        self.all_lines = [*begun, (NEW, False), *((entry, False) for entry in filed)]
        self.list_matches()
        index = self.index_of_path(marked[0].path) if marked else None
        if self.to_mark and (wanted := self.index_of_id(self.to_mark)) is not None:
            index, self.to_mark = wanted, ""
        self.mark(index or 0)

    def find(self, sought: str) -> None:
        """List the lines that contain every word of a text; the first line is marked."""
        self.sought = sought
        self.list_matches()
        self.mark(0)

    def list_matches(self) -> None:
        """List the lines that contain every sought word, and all lines without one."""
        words = self.sought.casefold().split()
        self.lines = [line for line in self.all_lines if self.matches(line, words)]
        self.virtual_size = Size(1, len(self.lines))
        self.refresh()

    def matches(self, line: Line, words: Sequence[str]) -> bool:
        """True if the text of a line contains every word."""
        if not words:
            return True
        if line[0] is NEW:
            return False
        text = self.searched_text(line)
        return all(word in text for word in words)

    def searched_text(self, line: Line) -> str:
        """Text of a line that is searched for words."""
        entry, is_unfinished = line
        known, text = self.searched.get(entry.path, (None, ""))
        if known is not entry:
            text = searched_text(entry, self.reached.get(entry.path, ""), is_unfinished)
            self.searched[entry.path] = (entry, text)
        return text

    def mark(self, index: int) -> None:
        """Mark a line; the nearest one if there is no such line."""
        self.highlighted = max(0, min(index, len(self.lines) - 1)) if self.lines else None
        self.post_message(self.Marked())  # another session may be on the same line

    def index_of_path(self, path: Path) -> int | None:
        """Index of the line of a file."""
        paths = (entry.path for entry, _ in self.lines)
        return next((index for index, other in enumerate(paths) if other == path), None)

    def index_of_id(self, session_id: str) -> int | None:
        """Index of the line of a session."""
        ids = (entry.id for entry, _ in self.lines)
        return next((index for index, other in enumerate(ids) if other == session_id), None)

    def watch_highlighted(self) -> None:
        """Scroll to the line that was marked."""
        self.scroll_to_mark()

    def on_resize(self) -> None:
        """Scroll to the marked line, which the new size may hide."""
        self.scroll_to_mark()

    def scroll_to_mark(self) -> None:
        """Scroll until the marked line is in view."""
        if self.highlighted is not None and self.size:
            line = Region(0, self.highlighted, 1, 1)
            self.scroll_to_region(line, animate=False, force=True, immediate=True)

    @property
    def at_hand(self) -> Line | None:
        """The marked line, None for an empty list."""
        return None if self.highlighted is None else self.lines[self.highlighted]

    @property
    def filed_at_hand(self) -> ListedSession | None:
        """The marked session, if it is filed and can be read."""
        entry, is_unfinished = self.at_hand or (NEW, False)
        return None if entry is NEW or is_unfinished or entry.fault else entry

    @property
    def filed_tags(self) -> tuple[str, ...]:
        """Tags of the listed vehicles that were filed and can be read, the marked one first."""
        entries = (entry for entry, is_unfinished in self.lines if not is_unfinished)
        filed = (entry for entry in entries if entry is not NEW and not entry.fault)
        marked = self.filed_at_hand
        return tuple(dict.fromkeys(entry.tag for entry in (marked, *filed) if entry))

    def action_select(self) -> None:
        """Open the marked line."""
        if self.at_hand is not None:
            self.post_message(self.Opened(*self.at_hand))

    def action_cursor_up(self) -> None:
        """Mark the line above; from the first line the last one."""
        self.move(-1)

    def action_cursor_down(self) -> None:
        """Mark the line below; from the last line the first one."""
        self.move(1)

    def action_page_up(self) -> None:
        """Mark the line one page above."""
        self.mark((self.highlighted or 0) - self.page_height)

    def action_page_down(self) -> None:
        """Mark the line one page below."""
        self.mark((self.highlighted or 0) + self.page_height)

    def move(self, by: int) -> None:
        """Mark another line; the list has no end."""
        if self.lines:
            self.mark(((self.highlighted or 0) + by) % len(self.lines))

    @property
    def page_height(self) -> int:
        """Lines in view."""
        return max(self.scrollable_content_region.height, 1)

    def on_click(self, event: Click) -> None:
        """Open the line under the mouse."""
        index = self.index_under(event)
        if index is not None:
            self.mark(index)
            self.action_select()

    def on_mouse_move(self, event: MouseMove) -> None:
        """Show which line is under the mouse."""
        self.hovered = self.index_under(event)

    def on_leave(self, _event: Leave) -> None:
        """The mouse has left the list."""
        self.hovered = None

    def index_under(self, event: Click | MouseMove) -> int | None:
        """Index of the line under the mouse, None below the last line."""
        offset = event.get_content_offset(self)
        index = -1 if offset is None else offset.y + self.scroll_offset.y
        return index if 0 <= index < len(self.lines) else None

    def render_line(self, y: int) -> Strip:
        """Draw a line of the list in view."""
        index = y + self.scroll_offset.y
        width = self.scrollable_content_region.width
        if index >= len(self.lines):
            return Strip.blank(width, self.visual_style.rich_style)
        classes = ("sessions--marked",) if index == self.highlighted else ()
        if index == self.hovered and not classes:
            classes = ("sessions--hovered",)
        style = self.get_visual_style(*classes)
        content = self.content_of(index).truncate(width, ellipsis=True)
        return Visual.to_strips(self, content, width, 1, style, pad=True)[0]

    def content_of(self, index: int) -> Content:
        """Text of a line; the marked line has an arrow, because a colour alone says too little."""
        parts: list[Any] = ["▸ " if index == self.highlighted else "  "]
        parts += [(text, STYLES.get(name, "")) for text, name in self.parts_of(self.lines[index])]
        return Content.assemble(*parts)

    def parts_of(self, line: Line) -> tuple[Part, ...]:
        """Parts of a line."""
        entry, is_unfinished = line
        if entry is NEW:
            return NEW_PARTS
        if is_unfinished:
            return unfinished_parts(entry, self.reached.get(entry.path, ""))
        return filed_parts(entry, self.widths)
