"""The search: every combination of corrections worked through, and the best of them as plans.

Every combination is worked as if the readings were exact (`combinations`). Its probability is
estimated (`estimate`). The combinations that could come first by the order of `ranking` are drawn
in full (`chances`).
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from core.fix import chances, estimate
from core.fix.chances import chances_among
from core.fix.combinations import contenders
from core.fix.estimate import estimated_candidates
from core.fix.moves import correction_sets
from core.fix.plan import Plan, plan_of
from core.fix.ranking import Candidate
from core.kinematics.linkage import Linkage
from core.profiles.corrections import Correction
from core.profiles.limits import Limits
from core.statistics.conformity import SURE
from core.verdict.peak import SEED
from core.verdict.verdict import Overall, Verdict

MOST_PLANS = 5
"""Plans offered at most."""

SETS = 2 * MOST_PLANS
"""Sets of one size that are drawn in full."""


@dataclass(frozen=True, eq=False)
class SearchResult:
    """The plans that a search came to.

    Attributes
    ----------
    searched : int
        Number of combinations worked through.
    plans : tuple of Plan
        The first of each distinct set of corrections: those that steer true, five at most; where
        none does, the best one.
    """

    searched: int
    plans: tuple[Plan, ...]


def search(
    verdict: Verdict,
    corrections: Sequence[Correction],
    progress: Callable[[float], None] | None = None,
) -> SearchResult:
    """Plans that cure a vehicle; none where its verdict is not bump steer.

    Parameters
    ----------
    verdict : Verdict
    corrections : sequence of Correction
        The corrections that the shop can make.
    progress : callable
        Called with the share of the combinations that is worked through, 0 to 1.
    """
    if verdict.overall != Overall.BUMP_STEER:
        return SearchResult(0, ())
    sets = list(correction_sets(corrections))
    searched = sum(len(chosen.rises) for chosen in sets)
    done = 0

    def add_done(count: int) -> None:
        nonlocal done
        done += count
        if progress is not None:
            progress(done / searched)

    linkage, limits = verdict.measured.linkage, verdict.session.limits
    drawn = verdict.measured.draw(estimate.DRAWS, SEED)
    by_set = [
        estimated_candidates(contenders(linkage, limits, chosen, add_done), drawn, limits, place)
        for place, chosen in enumerate(sets)
    ]
    plans = tuple(plan_of(verdict, candidate.moves) for candidate in _best(verdict, by_set))
    return SearchResult(searched, plans)


def _best(verdict: Verdict, by_set: list[list[Candidate]]) -> list[Candidate]:
    """The first candidate of each set, drawn in full: those that steer true, or else the best.

    Sets come smallest first. The search stops at the size that has enough plans that steer true.
    """
    drawn = verdict.measured.draw(chances.DRAWS, SEED)
    found: list[Candidate] = []
    true: list[Candidate] = []
    for _, same_size in groupby(by_set, key=lambda candidates: len(candidates[0].moves)):
        likely = sorted(same_size, key=lambda candidates: candidates[0].order)[:SETS]
        found += [_first(candidates, drawn, verdict.session.limits) for candidates in likely]
        true = sorted(
            (candidate for candidate in found if candidate.p_true >= SURE),
            key=lambda candidate: candidate.order,
        )
        if len(true) >= MOST_PLANS:
            break
    best = sorted(found, key=lambda candidate: (candidate.likeliest, candidate.order))[:1]
    return true[:MOST_PLANS] or best


def _first(candidates: list[Candidate], drawn: Linkage, limits: Limits) -> Candidate:
    """The first of the candidates of one set, once their probabilities are drawn in full."""
    best: Candidate | None = None
    for candidate in candidates:
        if best is None or candidate.could_precede(best):
            p_true = chances_among(drawn, candidate.moves, limits).together
            full = replace(candidate, p_true=p_true)
            best = min(best or full, full, key=lambda candidate: candidate.order)
    assert best is not None  # a set has at least its nearest combination
    return best
