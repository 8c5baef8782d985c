"""Base of the screens with a long view in sections: scrolling, sections, units, help."""

from collections.abc import Sequence
from typing import TypeVar

from textual.screen import Screen

from core.text.quantity import LengthUnit, other_unit
from wizard.phrases.help_section import HelpSection
from wizard.tui.host import Host
from wizard.tui.screens.help import HelpScreen
from wizard.tui.widgets.keys import Key, Keys
from wizard.tui.widgets.sectioned_view import SectionedView

Result = TypeVar("Result")
"""Result of a screen, given to the screen that opened it."""


class SectionedScreen(Screen[Result]):
    """A long view in sections; subclasses compose a SectionedView.

    Parameters
    ----------
    unit : "in" or "mm"
        Unit of the lengths to begin with.
    """

    app: Host

    BINDINGS = [
        ("escape", "back", "back"),
        ("f1", "help", "help"),
        ("f2", "units", "units"),
        ("up", "scroll('scroll_up')", "up"),
        ("down", "scroll('scroll_down')", "down"),
        ("pageup", "scroll('page_up')", "page up"),
        ("pagedown,space", "scroll('page_down')", "page down"),
        ("home", "scroll('scroll_home')", "top"),
        ("end", "scroll('scroll_end')", "bottom"),
        *[(str(number), f"section({number})", "section") for number in range(1, 10)],
        ("0", "section(10)", "section"),
        ("0", "section(10)", "section"),
    ]

    def __init__(self, unit: LengthUnit) -> None:
        super().__init__()
        self.unit = unit

    def show(self) -> None:
        """Show the contents in the unit at hand."""
        raise NotImplementedError

    def keys(self) -> tuple[Key, ...]:
        """Keys that do something now; subclasses put theirs before these."""
        other = other_unit(self.unit)
        return (Key("F2", other, "units"), Key("F1", "help", "help"))

    def help(self) -> Sequence[HelpSection]:
        """Sections of the help on this screen."""
        raise NotImplementedError

    def say_keys(self) -> None:
        """Show the keys at the bottom."""
        self.query_one(Keys).keys = self.keys()

    def action_units(self) -> None:
        """Show lengths in the other unit."""
        self.unit = other_unit(self.unit)
        self.show()

    def action_section(self, number: int) -> None:
        """Go to a section by its number."""
        self.query_one(SectionedView).go_to_section(number)

    def action_scroll(self, action: str) -> None:
        """Scroll by an action of the view, such as page_down."""
        self.query_one(SectionedView).scroll(action)

    def action_help(self) -> None:
        """Show help on this screen."""
        self.app.push_screen(HelpScreen(self.help()))

    def action_back(self) -> None:
        """Leave the screen."""
        raise NotImplementedError
