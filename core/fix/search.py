"""The search of every combination of corrections, with the best of them as plans.

Every combination is computed as if the readings were exact (`combinations`). The probability of
each promising one is estimated (`estimate`). A full draw (`chances`) follows for those that could
come first in the order of `ranking`.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from core.fix import chances, estimate
from core.fix.chances import chances_among
from core.fix.combinations import promising_combinations
from core.fix.estimate import estimated_candidates
from core.fix.moves import correction_sets
from core.fix.plan import Plan, plan_of
from core.fix.possible import possible_corrections
from core.fix.ranking import Candidate
from core.kinematics.linkage import Linkage
from core.profiles.corrections import Correction
from core.profiles.limits import Limits
from core.statistics.conformity import SURE
from core.verdict.direct_check import DecidedBy
from core.verdict.peak import SEED
from core.verdict.verdict import Overall, Verdict, decided_by

MOST_PLANS = 5
"""Largest number of plans that a search offers."""

MOST_IMPROVED = 3
"""Largest number of plans that improve the vehicle where none cures it."""

SETS = 2 * MOST_PLANS
"""Largest number of sets of one size that are drawn in full."""


@dataclass(frozen=True)
class SearchResult:
    """The plans of a search.

    Attributes
    ----------
    searched : int
        Number of combinations that were computed.
    plans : tuple of Plan
        Up to MOST_PLANS plans that steer true, one for each set of corrections. Where none steers
        true, up to MOST_IMPROVED plans that improve the vehicle.
    """

    searched: int
    plans: tuple[Plan, ...]


def search(
    verdict: Verdict,
    corrections: Sequence[Correction],
    progress: Callable[[float], None] | None = None,
) -> SearchResult:
    """Plans that cure a vehicle; no plans unless its verdict is bump steer.

    A vehicle that does not do what its pivots say gets none: a plan moves pivots, and would promise
    what the direct check has just disproved.

    Parameters
    ----------
    verdict : Verdict
    corrections : sequence of Correction
        The corrections that the shop can make. Those of a pivot that the vehicle does not have
        are left out.
    progress : callable
        Called with the share of the combinations that is computed, 0 to 1.
    """
    if verdict.overall != Overall.BUMP_STEER or decided_by(verdict) == DecidedBy.DIRECT:
        return SearchResult(0, ())
    session = verdict.session
    sets = list(correction_sets(possible_corrections(session, corrections)))
    searched = sum(len(correction_set.rises) for correction_set in sets)
    done = 0

    def add_done(count: int) -> None:
        nonlocal done
        done += count
        if progress is not None:
            progress(done / searched)

    linkage, limits = verdict.measured.linkage, session.limits
    drawn = verdict.measured.draw(estimate.DRAWS, SEED)
    by_set = [
        estimated_candidates(
            promising_combinations(linkage, limits, correction_set, add_done), drawn, limits, place
        )
        for place, correction_set in enumerate(sets)
    ]
    drawn = verdict.measured.draw(chances.DRAWS, SEED)
    plans = tuple(
        plan_of(verdict, candidate.moves, drawn=drawn) for candidate in _best(drawn, limits, by_set)
    )
    return SearchResult(searched, plans)


def _best(drawn: Linkage, limits: Limits, by_set: list[list[Candidate]]) -> list[Candidate]:
    """The candidates for the plans, with their probabilities drawn in full.

    The sets are sorted by size. Larger sets are left out once there are MOST_PLANS candidates
    that steer true. A candidate with a move that it could do without is not offered. Where none
    steers true, the MOST_IMPROVED best candidates are left.

    Parameters
    ----------
    drawn : Linkage
        Geometries of the measured vehicle for the full draw.
    limits : Limits
    by_set : list of list of Candidate
        The estimated candidates of each set, smallest sets first.
    """
    firsts: list[Candidate] = []
    true: list[Candidate] = []
    for _, same_size in groupby(by_set, key=lambda candidates: len(candidates[0].moves)):
        likely = sorted(same_size, key=lambda candidates: candidates[0].order)[:SETS]
        best_of_sets = [_first(candidates, drawn, limits) for candidates in likely]
        firsts += best_of_sets
        true += [
            candidate
            for candidate in best_of_sets
            if candidate.p_true >= SURE and not _has_token_move(candidate, drawn, limits)
        ]
        if len(true) >= MOST_PLANS:
            break
    true = sorted(true, key=lambda candidate: candidate.order)[:MOST_PLANS]
    best = sorted(firsts, key=lambda candidate: (candidate.by_probability, candidate.order))
    return true or best[:MOST_IMPROVED]


def _has_token_move(candidate: Candidate, drawn: Linkage, limits: Limits) -> bool:
    """True if the vehicle would steer true without one of the moves."""
    moves = candidate.moves
    if len(moves) == 1:
        return False
    fewer = (moves[:i] + moves[i + 1 :] for i in range(len(moves)))
    return any(chances_among(drawn, others, limits).together >= SURE for others in fewer)


def _first(candidates: list[Candidate], drawn: Linkage, limits: Limits) -> Candidate:
    """First of the candidates of one set in the order, by probabilities drawn in full."""
    best: Candidate | None = None
    for candidate in candidates:
        if best is None or candidate.could_precede(best):
            p_true = chances_among(drawn, candidate.moves, limits).together
            full = replace(candidate, p_true=p_true)
            best = min(best or full, full, key=lambda candidate: candidate.order)
    assert best is not None  # every set has at least its combination of least excess
    return best
