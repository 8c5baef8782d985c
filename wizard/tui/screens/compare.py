"""Two sessions of a vehicle compared: before and after."""

from collections.abc import Callable, Sequence

from textual.app import ComposeResult

from core.documents.document import Document
from core.documents.entries import units_of
from core.profiles.profile import Profile
from wizard.phrases.help_on_verdict import help_on_comparison
from wizard.phrases.help_section import HelpSection
from wizard.tui.screens.sectioned import SectionedScreen
from wizard.tui.screens.workers import Reporter, run_beside
from wizard.tui.widgets.comparison_view import ComparisonView
from wizard.tui.widgets.keys import Key
from wizard.views.two_sessions import TwoSessions, two_sessions


class CompareScreen(SectionedScreen[bool]):
    """Two sessions of a vehicle. The result is True if the next step is to follow.

    Parameters
    ----------
    earlier, later : mapping
    profile_of : callable
        Finds a profile by its name.
    has_next_step : bool
        True if a step follows the comparison.
    choose_other : callable, optional
        Asks for another session to compare with.

    Raises
    ------
    core.documents.entries.EntryError, core.profiles.profile.ProfileError
        One of the sessions cannot be judged.
    """

    BINDINGS = [("enter", "next_step", "go on"), ("o,O", "other", "other")]

    def __init__(
        self,
        earlier: Document,
        later: Document,
        profile_of: Callable[[str], Profile],
        has_next_step: bool = False,
        choose_other: Callable[[], None] | None = None,
    ) -> None:
        super().__init__(units_of(later))
        self.earlier, self.later = earlier, later
        self.profile_of = profile_of
        self.has_next_step, self.choose_other = has_next_step, choose_other
        self.sessions: TwoSessions = two_sessions(earlier, later, profile_of, draws=0)

    def compose(self) -> ComposeResult:
        """Yield the view of the comparison."""
        yield ComparisonView()

    def on_mount(self) -> None:
        """Show the comparison by linear propagation, then draw the uncertainty of the peaks."""
        self.show()
        run_beside(self, self.draw_uncertainty)

    def draw_uncertainty(self, reporter: Reporter) -> None:
        """Draw the uncertainty of the peaks in the thread of the worker."""
        sessions = two_sessions(self.earlier, self.later, self.profile_of)
        reporter.call(self.show_drawn, sessions)

    def show_drawn(self, sessions: TwoSessions) -> None:
        """Show the drawn uncertainty in place of the linear one."""
        self.sessions = sessions
        self.show()

    def show(self) -> None:
        """Show the comparison in the unit at hand."""
        self.query_one(ComparisonView).show(self.sessions, self.unit)
        self.say_keys()

    def keys(self) -> tuple[Key, ...]:
        """Keys to the next step, back, and to another session."""
        next_step = [Key("Enter", "go on", "next_step")] if self.has_next_step else []
        other = [Key("O", "another session", "other")] if self.choose_other else []
        return (*next_step, Key("Esc", "back", "back"), *other, *super().keys())

    def help(self) -> Sequence[HelpSection]:
        """Help on a comparison."""
        return help_on_comparison()

    def action_next_step(self) -> None:
        """Go to the next step, if there is one."""
        if self.has_next_step:
            self.dismiss(True)

    def action_other(self) -> None:
        """Ask for another session to compare with."""
        if self.choose_other:
            self.dismiss(False)
            self.choose_other()

    def action_back(self) -> None:
        """Go back to the screen that opened this one."""
        self.dismiss(False)
