"""An earlier and a later session of a vehicle, judged and compared."""

from __future__ import annotations

from collections.abc import Callable, Collection
from dataclasses import dataclass

from core.documents.document import Document
from core.fix.comparison import Comparison, altered_pivots, compare
from core.fix.plan_record import FiledPlan
from core.fix.reached import ReachedMove, reached_moves
from core.profiles.profile import Profile
from core.verdict.assess import assess
from core.verdict.verdict import DRAWS, Verdict
from wizard.phrases.reached_plan import plan_of_earlier


@dataclass(frozen=True)
class TwoSessions:
    """Two sessions of a vehicle with their verdicts and the comparison of both.

    Attributes
    ----------
    earlier, later : mapping
        The documents.
    before, after : Verdict
    comparison : Comparison
    altered : collection of str or None
        Pivots that were moved between the sessions; None where that is not known.
    planned : FiledPlan or None
        The earlier session's plan.
    moves : tuple of ReachedMove
        The planned moves, each with its reached rise.
    """

    earlier: Document
    later: Document
    before: Verdict
    after: Verdict
    comparison: Comparison
    altered: Collection[str] | None
    planned: FiledPlan | None
    moves: tuple[ReachedMove, ...]


def two_sessions(
    earlier: Document,
    later: Document,
    profile_of: Callable[[str], Profile],
    draws: int = DRAWS,
) -> TwoSessions:
    """Judge two documents and compare them.

    Parameters
    ----------
    earlier, later : mapping
    profile_of : callable
        Finds a profile by its name.
    draws : int
        Draws of the Monte Carlo for the peaks.

    Raises
    ------
    EntryError, ProfileError
        As in `core.verdict.assess`.
    """
    before = assess(earlier, profile_of, draws)
    after = assess(later, profile_of, draws)
    return compare_judged(earlier, later, before, after)


def compare_judged(
    earlier: Document, later: Document, before: Verdict, after: Verdict
) -> TwoSessions:
    """Compare two sessions that have their verdicts."""
    altered, planned = altered_pivots(earlier, later), plan_of_earlier(earlier)
    return TwoSessions(
        earlier=earlier,
        later=later,
        before=before,
        after=after,
        comparison=compare(before, after, altered),
        altered=altered,
        planned=planned,
        moves=() if planned is None else reached_moves(planned, before, after),
    )
