"""A long view in sections: its heading, its contents, the sections, its keys."""

from collections.abc import Iterable, Mapping

from textual import on
from textual.app import ComposeResult
from textual.containers import Vertical

from wizard.phrases.fact import Fact
from wizard.tui.widgets.contents import Contents
from wizard.tui.widgets.facts import Facts
from wizard.tui.widgets.heading import Heading
from wizard.tui.widgets.keys import Keys
from wizard.tui.widgets.sections import Sections


class SectionedView(Vertical):
    """Base of the long views; a subclass composes its sections and names them in SECTIONS."""

    SECTIONS: Mapping[str, str] = {}
    """Name of each section in the contents, by the id of its widget."""

    def compose(self) -> ComposeResult:
        """Yield heading, contents, sections and keys."""
        yield Heading()
        yield Contents()
        with Sections():
            yield from self.compose_sections()
        yield Keys()

    def compose_sections(self) -> ComposeResult:
        """Yield the widgets of the sections."""
        raise NotImplementedError

    def show_heading(self, left: str, right: str) -> None:
        """Show the name of the session on the left and its state on the right."""
        heading = self.query_one(Heading)
        heading.left, heading.right = left, right

    def show_facts(self, section: str, title: str, facts: Iterable[Fact]) -> None:
        """Show facts in a section."""
        self.query_one(f"#{section}", Facts).show(title, facts)

    @property
    def visible_sections(self) -> list[str]:
        """Ids of the sections that are displayed."""
        return [
            section
            for section in self.SECTIONS
            if any(widget.display for widget in self.query(f"#{section}"))
        ]

    def list_sections(self) -> None:
        """List the displayed sections in the contents."""
        names = [self.SECTIONS[section] for section in self.visible_sections]
        self.query_one(Contents).sections = names

    def go_to_section(self, number: int) -> None:
        """Scroll a section to the top; the first one has number 1."""
        sections = self.visible_sections
        if 1 <= number <= len(sections):
            section = self.query_one(f"#{sections[number - 1]}")
            self.query_one(Sections).scroll_to_widget(section, top=True, animate=False)
            self.query_one(Contents).at = number - 1

    def scroll(self, action: str) -> None:
        """Scroll by an action such as "scroll_down" or "page_down"."""
        getattr(self.query_one(Sections), f"action_{action}")()

    @on(Sections.Scrolled)
    def follow(self) -> None:
        """Mark the section at the top, after the scroll has been drawn."""
        self.call_after_refresh(self.mark_section)

    def mark_section(self) -> None:
        """Mark the section at the top, except at the end: the last ones may never reach the top."""
        sections = self.query_one(Sections)
        if sections.scroll_y < sections.max_scroll_y:
            tops = [self.query_one(f"#{section}").region.y for section in self.visible_sections]
            above = [index for index, top in enumerate(tops) if top <= sections.region.y + 1]
            self.query_one(Contents).at = max(above, default=0)
