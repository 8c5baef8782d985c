"""The verdict: the step of a session that is measured, and what a filed record's screen shares."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, TypeVar

from textual import work
from textual.app import ComposeResult
from textual.screen import Screen
from textual.worker import get_current_worker

from core.assess import assess
from core.document import Document
from core.entries import EntryError
from core.profile import Profile
from core.quantity import LengthUnit
from core.verdict import Verdict
from wizard.drafts import units_of
from wizard.flow import Flow, applying
from wizard.saying.fact import LOOK, Fact
from wizard.screens.help import HelpScreen
from wizard.screens.steps import StepsScreen
from wizard.verdict_help import help_on_verdict
from wizard.widgets.keys import Key, Keys
from wizard.widgets.verdict_page import VerdictPage

if TYPE_CHECKING:
    from wizard.app import EvenarcApp

Left = TypeVar("Left")

DRAWING = "the doubt is being drawn …"


class VerdictScreen(Screen[Left]):
    """Shows a verdict as soon as there is one, and once more when its doubt has been drawn.

    Parameters
    ----------
    document : mapping
    profile_of : callable
        Finds a profile by its name.
    """

    app: EvenarcApp

    BINDINGS = [
        ("escape", "back", "back"),
        ("f1", "help", "help"),
        ("f2", "units", "units"),
        ("t", "travel", "travel"),
        ("up", "scroll('scroll_up')", "up"),
        ("down", "scroll('scroll_down')", "down"),
        ("pageup", "scroll('scroll_page_up')", "page up"),
        ("pagedown,space", "scroll('scroll_page_down')", "page down"),
        ("home", "scroll('scroll_home')", "top"),
        ("end", "scroll('scroll_end')", "bottom"),
        *[(str(number), f"part({number})", "part") for number in range(1, 10)],
    ]

    def __init__(self, document: Document, profile_of: Callable[[str], Profile]) -> None:
        super().__init__()
        self.document = document
        self.profile_of = profile_of
        self.unit: LengthUnit = units_of(document)
        self.verdict: Verdict | None = None

    def compose(self) -> ComposeResult:
        """The page is all there is."""
        yield VerdictPage()

    @property
    def page(self) -> VerdictPage:
        """The page."""
        return self.query_one(VerdictPage)

    def on_mount(self) -> None:
        """Show the verdict by linear propagation at once; the draws take longer."""
        try:
            self.verdict = assess(self.document, self.profile_of, draws=0)
        except EntryError as error:
            self.page.cannot([Fact("missing", str(error), LOOK)])
            self.say_keys()
            return
        self.show()
        self.page.entitle(self.document, self.unit, DRAWING)
        self.draw_doubt()

    def show(self) -> None:
        """Show the verdict in the units at hand."""
        self.page.entitle(self.document, self.unit)
        if self.verdict:
            self.page.show(self.verdict, self.document, self.unit)
        self.say_keys()

    @work(thread=True, exclusive=True)
    def draw_doubt(self) -> None:
        """Draw the doubt of the peaks while the screen is looked at."""
        worker = get_current_worker()
        verdict = assess(self.document, self.profile_of)
        if not worker.is_cancelled:
            self.app.call_from_thread(self.settle, verdict)

    def settle(self, verdict: Verdict) -> None:
        """Put the drawn doubt in the place of the linear one."""
        self.verdict = verdict
        self.page.entitle(self.document, self.unit)
        self.page.tell(verdict, self.unit)
        self.say_keys()

    def say_keys(self) -> None:
        """Name the keys that do something now."""
        self.query_one(Keys).keys = self.keys()

    def keys(self) -> tuple[Key, ...]:
        """Keys of this screen; subclasses put theirs before them."""
        other = "in" if self.unit == "mm" else "mm"
        return (
            *([Key("T", "travel", "travel")] if self.verdict else []),
            Key("F2", other, "units"),
            Key("F1", "help", "help"),
        )

    def action_units(self) -> None:
        """Show lengths in the other unit."""
        self.unit = "in" if self.unit == "mm" else "mm"
        self.show()

    def action_part(self, number: int) -> None:
        """Go to a part of the page."""
        self.page.go_to(number)

    def action_scroll(self, how: str) -> None:
        """Scroll the page."""
        getattr(self.page.scroll_area, f"action_{how}")()

    def action_travel(self) -> None:
        """Move the axle through its travel."""

    def action_help(self) -> None:
        """Help on this screen."""
        self.app.push_screen(HelpScreen(help_on_verdict()))

    def action_back(self) -> None:
        """Leave as it is."""
        raise NotImplementedError


class VerdictStep(VerdictScreen[Flow | None]):
    """The verdict on the session that is measured; left with the flow to go on with.

    Parameters
    ----------
    flow : Flow
        At the verdict's step.
    """

    BINDINGS = [
        ("enter", "go_on", "go on"),
        ("f3", "steps", "steps"),
        ("f9", "leave", "leave"),
    ]

    def __init__(self, flow: Flow) -> None:
        self.flow = flow
        profile = flow.profile
        assert profile is not None  # a session has one before any reading is asked for
        super().__init__(applying(flow.document, profile), lambda _: profile)

    def keys(self) -> tuple[Key, ...]:
        """Going on comes first."""
        return (
            Key("Enter", "go on", "go_on"),
            Key("Esc", "back", "back"),
            *super().keys(),
            Key("F3", "steps", "steps"),
            Key("F9", "leave", "leave"),
        )

    def action_go_on(self) -> None:
        """To the next step; to the first reading that is missing where there is no verdict."""
        missing = self.flow.missing
        if self.verdict is None and missing:
            self.dismiss(self.flow.going_to(missing[0].path))
        else:
            self.dismiss(self.flow.skipped())

    def action_back(self) -> None:
        """To the question before."""
        self.dismiss(self.flow.going_by(-1))

    def action_steps(self) -> None:
        """Choose a step to go to."""

        def chosen(name: str | None) -> None:
            if name is not None:
                self.dismiss(self.flow.going_to_step(name))

        self.app.push_screen(StepsScreen(self.flow.progress), chosen)

    def action_leave(self) -> None:
        """To the first page; the draft stays."""
        self.dismiss(None)
