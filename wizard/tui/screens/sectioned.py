"""What the screens with a long page have in common: scrolling, parts, units, help."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

from textual.screen import Screen

from core.text.quantity import LengthUnit, other_unit
from wizard.phrases.help_section import HelpSection
from wizard.tui.host import Host
from wizard.tui.screens.help import HelpScreen
from wizard.tui.widgets.keys import Key, Keys
from wizard.tui.widgets.sectioned_view import SectionedView

Left = TypeVar("Left")


class SectionedScreen(Screen[Left]):
    """A page that is looked at.

    Parameters
    ----------
    unit : "in" or "mm"
        To begin with.
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
        *[(str(number), f"part({number})", "part") for number in range(1, 10)],
    ]

    def __init__(self, unit: LengthUnit) -> None:
        super().__init__()
        self.unit = unit

    def show(self) -> None:
        """Show what there is in the units at hand."""
        raise NotImplementedError

    def keys(self) -> tuple[Key, ...]:
        """The keys that do something now; subclasses put theirs before these."""
        other = other_unit(self.unit)
        return (Key("F2", other, "units"), Key("F1", "help", "help"))

    def help(self) -> Sequence[HelpSection]:
        """What F1 says."""
        raise NotImplementedError

    def say_keys(self) -> None:
        """Name the keys."""
        self.query_one(Keys).keys = self.keys()

    def action_units(self) -> None:
        """Show lengths in the other unit."""
        self.unit = other_unit(self.unit)
        self.show()

    def action_part(self, number: int) -> None:
        """Go to a part of the page."""
        self.query_one(SectionedView).go_to(number)

    def action_scroll(self, how: str) -> None:
        """Scroll the page."""
        self.query_one(SectionedView).scroll(how)

    def action_help(self) -> None:
        """Help on this page."""
        self.app.push_screen(HelpScreen(self.help()))

    def action_back(self) -> None:
        """Leave as it is."""
        raise NotImplementedError
