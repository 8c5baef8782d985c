"""States of the plans' screen: it searches, it has planned, or it cannot plan."""

from dataclasses import dataclass

from core.fix.plan import Plan
from core.fix.search import SearchResult
from core.verdict.verdict import Verdict
from wizard.flow.planning import Planning, TitledPlan


@dataclass(frozen=True, eq=False)
class Searching:
    """A search runs.

    Attributes
    ----------
    verdict : Verdict or None
        The verdict that an earlier search was made on; None before the first search.
    made_by_hand : tuple of (str, Plan)
        Plans made by hand beside an earlier search.
    continues : bool
        Enter was pressed before the end of the search: without a plan the screen is left at once.
    """

    verdict: Verdict | None = None
    made_by_hand: tuple[TitledPlan, ...] = ()
    continues: bool = False

    def planned(self, verdict: Verdict, result: SearchResult, kept: Plan | None) -> "Planned":
        """State after the search, at the plan that was chosen before."""
        return Planned(Planning(verdict, result, self.made_by_hand).with_kept(kept))


@dataclass(frozen=True, eq=False)
class Planned:
    """The search has ended.

    Attributes
    ----------
    planning : Planning
        The plans, one of them at hand.
    warned_of : Plan or None
        The plan at hand, if it does not steer true and Enter was pressed once.
    """

    planning: Planning
    warned_of: Plan | None = None

    def searching(self) -> Searching:
        """State during another search on the same verdict."""
        return Searching(self.planning.verdict, self.planning.made_by_hand)


@dataclass(frozen=True)
class CannotPlan:
    """The session has no verdict to plan on.

    Attributes
    ----------
    fault : str
        The reason.
    """

    fault: str


PlansState = Searching | Planned | CannotPlan
