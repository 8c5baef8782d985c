"""A long page in parts: its heading, its contents, what scrolls, its keys."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from textual import on
from textual.app import ComposeResult
from textual.containers import Vertical, VerticalScroll
from textual.message import Message

from wizard.phrases.fact import Fact
from wizard.tui.widgets.contents import Contents
from wizard.tui.widgets.facts import Facts
from wizard.tui.widgets.heading import Heading
from wizard.tui.widgets.keys import Keys


class Sections(VerticalScroll, can_focus=False):
    """The sections, which scroll and report it."""

    class Scrolled(Message):
        """Another part may be at the top now."""

    def watch_scroll_y(self, old_value: float, new_value: float) -> None:
        """Tell the page."""
        super().watch_scroll_y(old_value, new_value)
        self.post_message(self.Scrolled())


class SectionedView(Vertical):
    """Subclasses yield what scrolls in `sheet`, and name its parts in PARTS."""

    PARTS: Mapping[str, str] = {}
    """The parts by the ids of their widgets, and what the contents call them."""

    def compose(self) -> ComposeResult:
        """Yield heading, contents, sections and keys."""
        yield Heading()
        yield Contents()
        with Sections():
            yield from self.sheet()
        yield Keys()

    def sheet(self) -> ComposeResult:
        """Yield the widgets of the sections."""
        raise NotImplementedError

    def entitle(self, left: str, right: str) -> None:
        """Set the heading: the title, and the state on its right."""
        heading = self.query_one(Heading)
        heading.left, heading.right = left, right

    def facts(self, part: str, title: str, facts: Iterable[Fact]) -> None:
        """Show facts in a part of the page."""
        self.query_one(f"#{part}", Facts).show(title, facts)

    @property
    def parts(self) -> list[str]:
        """Ids of the parts that are shown."""
        return [part for part in self.PARTS if any(one.display for one in self.query(f"#{part}"))]

    def name_parts(self) -> None:
        """Name the parts that there are."""
        self.query_one(Contents).parts = [self.PARTS[part] for part in self.parts]

    def go_to(self, number: int) -> None:
        """Bring a part to the top."""
        parts = self.parts
        if 1 <= number <= len(parts):
            part = self.query_one(f"#{parts[number - 1]}")
            self.query_one(Sections).scroll_to_widget(part, top=True, animate=False)
            self.query_one(Contents).at = number - 1

    def scroll(self, how: str) -> None:
        """Scroll by "scroll_down", "page_down" and the like."""
        getattr(self.query_one(Sections), f"action_{how}")()

    @on(Sections.Scrolled)
    def follow(self) -> None:
        """Mark the part that is at the top, once it has got there."""
        self.call_after_refresh(self.find_part)

    def find_part(self) -> None:
        """Mark the part that is at the top; the last ones may never get there."""
        sheet = self.query_one(Sections)
        if sheet.scroll_y < sheet.max_scroll_y:
            tops = [self.query_one(f"#{part}").region.y for part in self.parts]
            above = [index for index, top in enumerate(tops) if top <= sheet.region.y + 1]
            self.query_one(Contents).at = max(above, default=0)
