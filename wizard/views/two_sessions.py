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
from wizard.phrases.comparison import plan_of_record


@dataclass(frozen=True)
class TwoSessions:
    """Everything that a comparison is shown from.

    Attributes
    ----------
    earlier, later : mapping
        The documents.
    before, after : Verdict
    comparison : Comparison
    altered : collection of str or None
        What was moved between them, None where that is not known.
    planned : Planned or None
        The earlier session's plan.
    moves : tuple of Reached
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
    """Two documents compared. Raises EntryError and ProfileError like `core.verdict.assess`."""
    before = assess(earlier, profile_of, draws)
    after = assess(later, profile_of, draws)
    return compare_judged(earlier, later, before, after)


def compare_judged(
    earlier: Document, later: Document, before: Verdict, after: Verdict
) -> TwoSessions:
    """Two sessions that have been judged."""
    moved, planned = altered_pivots(earlier, later), plan_of_record(earlier)
    return TwoSessions(
        earlier,
        later,
        before,
        after,
        compare(before, after, moved),
        moved,
        planned,
        () if planned is None else reached_moves(planned, before, after),
    )
