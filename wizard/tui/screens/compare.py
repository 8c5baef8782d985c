"""Before beside after."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from contextlib import suppress

from textual import work
from textual.app import ComposeResult
from textual.css.query import NoMatches
from textual.worker import get_current_worker

from core.documents.document import Document
from core.documents.entries import units_of
from core.profiles.profile import Profile
from wizard.phrases.help_on_verdict import help_on_comparison
from wizard.phrases.help_section import HelpSection
from wizard.tui.screens.sectioned import SectionedScreen
from wizard.tui.widgets.comparison_view import ComparisonView
from wizard.tui.widgets.keys import Key
from wizard.views.two_sessions import TwoSessions, two_sessions


class CompareScreen(SectionedScreen[bool]):
    """Two sessions of a vehicle; left with whether to go on.

    Parameters
    ----------
    earlier, later : mapping
    profile_of : callable
        Finds a profile by its name.
    goes_on : bool
        There is a next step to go on to.
    choose : callable, optional
        Lets another session be chosen in the place of the earlier one.

    Raises
    ------
    core.documents.entries.EntryError, core.profiles.profile.ProfileError
        One of them cannot be judged.
    """

    BINDINGS = [("enter", "go_on", "go on"), ("o,O", "other", "other")]

    def __init__(
        self,
        earlier: Document,
        later: Document,
        profile_of: Callable[[str], Profile],
        goes_on: bool = False,
        choose: Callable[[], None] | None = None,
    ) -> None:
        super().__init__(units_of(later))
        self.earlier, self.later = earlier, later
        self.profile_of = profile_of
        self.goes_on, self.choose = goes_on, choose
        self.both: TwoSessions = two_sessions(earlier, later, profile_of, draws=0)

    def compose(self) -> ComposeResult:
        """The page is all there is."""
        yield ComparisonView()

    def on_mount(self) -> None:
        """Show it by linear propagation at once, and once more when the doubt has been drawn."""
        self.show()
        self.draw_doubt()

    @work(thread=True, exclusive=True)
    def draw_doubt(self) -> None:
        """Draw the doubt of the peaks while the screen is looked at."""
        both = two_sessions(self.earlier, self.later, self.profile_of)
        if not get_current_worker().is_cancelled:
            self.app.call_from_thread(self.settle, both)

    def settle(self, both: TwoSessions) -> None:
        """Put the drawn doubt in the place of the linear one."""
        self.both = both
        with suppress(NoMatches):  # the screen may be on its way out
            self.show()

    def show(self) -> None:
        """Show it in the units at hand."""
        self.query_one(ComparisonView).show(self.both, self.unit)
        self.say_keys()

    def keys(self) -> tuple[Key, ...]:
        """Going on, or back."""
        go_on = [Key("Enter", "go on", "go_on")] if self.goes_on else []
        other = [Key("O", "another session", "other")] if self.choose else []
        return (*go_on, Key("Esc", "back", "back"), *other, *super().keys())

    def help(self) -> Sequence[HelpSection]:
        """Help on a comparison."""
        return help_on_comparison()

    def action_go_on(self) -> None:
        """To the next step, where there is one."""
        if self.goes_on:
            self.dismiss(True)

    def action_other(self) -> None:
        """Beside another session."""
        if self.choose:
            self.dismiss(False)
            self.choose()

    def action_back(self) -> None:
        """To where it was opened from."""
        self.dismiss(False)
