"""The search of every combination of corrections, with the best of them as plans.

Every combination is computed as if the readings were exact (`combinations`). The probability of
each promising one is estimated (`estimate`). A full draw (`chances`) follows for those that could
come first in the order of `ranking`.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from typing import Any

from core.fix import chances, estimate
from core.fix.chances import chances_among
from core.fix.combinations import excess_over_travel, promising_combinations
from core.fix.estimate import estimated_candidates
from core.fix.moves import can_be_combined
from core.fix.plan import Plan, plan_of
from core.fix.possible import possible_sets
from core.fix.ranking import By, Candidate, cost_key
from core.kinematics.linkage import Linkage
from core.profiles.conversions import Change
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
    corrections: Sequence[Change],
    progress: Callable[[float], None] | None = None,
    by: By = "parts",
    unless_true: bool = False,
) -> SearchResult:
    """Plans that cure a vehicle; no plans unless its verdict is bump steer.

    A vehicle that does not do what its pivots say gets none: a plan moves pivots, and would promise
    what the direct check has just disproved.

    Parameters
    ----------
    verdict : Verdict
    corrections : sequence of Correction and Conversion
        The changes that the shop can make. Those of a pivot that the vehicle does not have are
        left out.
    progress : callable
        Called with the share of the combinations that is computed, 0 to 1.
    by : "parts", "price" or "hours"
        What decides which plans come first. Plans of unknown price or hours come last.
    unless_true : bool
        Search where the verdict is too close to call as well. No reading can settle a vehicle
        that is planned and not built.
    """
    searched_for = {Overall.BUMP_STEER, *([Overall.TOO_CLOSE] if unless_true else [])}
    if verdict.overall not in searched_for or decided_by(verdict) == DecidedBy.DIRECT:
        return SearchResult(0, ())
    session = verdict.session
    sets = possible_sets(session, corrections)
    searched = sum(len(correction_set.rises) for correction_set in sets)
    done = 0

    def add_done(count: int) -> None:
        nonlocal done
        done += count
        if progress is not None:
            progress(done / searched)

    linkage, limits = verdict.measured.linkage, session.limits
    excess = float(excess_over_travel(linkage, limits))
    drawn = verdict.measured.draw(estimate.DRAWS, SEED)
    by_set = [
        estimated_candidates(
            promising_combinations(linkage, limits, correction_set, add_done), drawn, limits, place
        )
        for place, correction_set in enumerate(sets)
    ]
    drawn = verdict.measured.draw(chances.DRAWS, SEED)
    plans = tuple(
        plan_of(verdict, candidate.moves, drawn=drawn)
        for candidate in _best(drawn, limits, by_set, by, excess)
    )
    return SearchResult(searched, plans)


def _best(
    drawn: Linkage, limits: Limits, by_set: list[list[Candidate]], by: By, excess: float
) -> list[Candidate]:
    """The candidates for the plans, with their probabilities drawn in full.

    The sets are sorted by size. By parts, larger sets are left out once there are MOST_PLANS
    candidates that steer true. A candidate with a move that it could do without is not offered.
    Where none steers true, the MOST_IMPROVED best candidates are left.

    Parameters
    ----------
    drawn : Linkage
        Geometries of the measured vehicle for the full draw.
    limits : Limits
    by_set : list of list of Candidate
        The estimated candidates of each set, smallest sets first.
    by : "parts", "price" or "hours"
    excess : float
        Excess of the measured vehicle. Candidates that do not lessen it come only where none does.
    """
    costs = cost_key(by, [candidates[0] for candidates in by_set])

    def rank(candidate: Candidate) -> tuple[Any, ...]:
        return (*costs(candidate), *candidate.order)

    def rank_of_set(candidates: list[Candidate]) -> tuple[Any, ...]:
        return (by != "parts" and not candidates[0].is_promising, *rank(candidates[0]))

    firsts: list[Candidate] = []
    true: list[Candidate] = []
    for _, same_size in groupby(by_set, key=lambda candidates: len(candidates[0].moves)):
        likely = sorted(same_size, key=rank_of_set)[:SETS]
        best_of_sets = [_first(candidates, drawn, limits) for candidates in likely]
        firsts += best_of_sets
        true += [
            candidate
            for candidate in best_of_sets
            if candidate.p_true >= SURE and not _has_token_move(candidate, drawn, limits)
        ]
        if by == "parts" and len(true) >= MOST_PLANS:
            break
    true = sorted(true, key=rank)[:MOST_PLANS]
    if true:
        return true
    best = sorted(firsts, key=lambda candidate: (candidate.by_probability, candidate.order))
    improving = [candidate for candidate in best if candidate.excess < excess]
    return (improving or best)[:MOST_IMPROVED]


def _has_token_move(candidate: Candidate, drawn: Linkage, limits: Limits) -> bool:
    """True if the vehicle would steer true without one of the moves."""
    moves = candidate.moves
    if len(moves) == 1:
        return False
    fewer = (moves[:i] + moves[i + 1 :] for i in range(len(moves)))
    return any(
        can_be_combined([move.correction for move in others])
        and chances_among(drawn, others, limits).together >= SURE
        for others in fewer
    )


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
