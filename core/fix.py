"""The fix: every combination of corrections worked through, and the best of them as plans.

Every combination is worked nominally. How sure one is takes thousands of drawn geometries: it is
estimated for all combinations of a set from a few hundred geometries drawn about the best one of
that set, and drawn in full for those that could come first. The doubt of today's readings is
carried over, and the doubt of setting a pivot is added.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import groupby

import numpy as np

from core.conformity import SURE
from core.corrections import Correction
from core.limits import Limits
from core.linkage import Array, Linkage
from core.moves import Choices, Move, apply, choices
from core.outlook import Outlook, outlook
from core.peak import SEED, Curves
from core.rules import parallel_angle, slopes
from core.verdict import BUMP_STEER, Verdict

SETTING = 25.4 / 16
"""Half-width of setting a pivot where it is meant to be, mm."""

STEP = 0.05
"""Probabilities in one step of this count as equal."""

SHOWN = 5
"""Plans shown at most."""

SKETCH, DRAWS = 300, 4_000
"""Drawn geometries of the estimate, and of the full probability."""

ROUGH = 5
"""Heaves of the working travel at which the estimate looks for the peak."""

FINALISTS, SETS = 6, 2 * SHOWN
"""Combinations of a set, and sets of a size, that are drawn in full."""


@dataclass(frozen=True)
class Plan:
    """One combination of corrections and what it would bring."""

    moves: tuple[Move, ...]
    after: Outlook

    @property
    def steers_true(self) -> bool:
        """Whether it reaches the probability from which a vehicle is said to steer true."""
        return self.after.p_true >= SURE


@dataclass(frozen=True)
class Fix:
    """What the search found.

    Attributes
    ----------
    searched : int
        Combinations worked through.
    plans : tuple of Plan
        The first of each distinct set of corrections: those that steer true, five at most; where
        none does, the best one.
    """

    searched: int
    plans: tuple[Plan, ...]


@dataclass(frozen=True)
class Candidate:
    """A combination with what it is ordered by."""

    moves: tuple[Move, ...]
    p_true: float
    flatness: float

    @property
    def order(self) -> tuple[int, int, float, float]:
        """Fewest corrections, likeliest, smallest sum of rises, flattest pair."""
        rises = sum(abs(move.rise) for move in self.moves)
        return len(self.moves), -round(self.p_true / STEP), round(rises, 6), self.flatness


def search(
    verdict: Verdict,
    corrections: Sequence[Correction],
    progress: Callable[[float], None] | None = None,
) -> Fix:
    """Plans that cure a vehicle; none where its verdict is not `bump steer`.

    Parameters
    ----------
    verdict : Verdict
    corrections : sequence of Correction
        What the shop can make.
    progress : callable
        Told the share of the combinations that is worked through, 0 to 1.
    """
    if verdict.overall != BUMP_STEER:
        return Fix(0, ())
    sets = list(choices(corrections))
    searched = sum(len(one.rises) for one in sets)
    sketches, done = [], 0
    for one in sets:
        sketches.append(_sketch(verdict, one))
        done += len(one.rises)
        if progress is not None:
            progress(done / searched)
    best = _best(verdict, sketches)
    return Fix(searched, tuple(plan_of(verdict, one.moves, one.p_true) for one in best))


def plan_of(verdict: Verdict, moves: tuple[Move, ...], p_true: float | None = None) -> Plan:
    """A plan of some moves; its probability is drawn where it is not known."""
    if p_true is None:
        p_true = p_true_of(verdict, moves)
    linkage = _made(verdict.measured.linkage, moves)
    return Plan(moves, outlook(verdict, linkage, p_true))


def p_true_of(verdict: Verdict, moves: Sequence[Move], draws: int = DRAWS) -> float:
    """Probability that parallel, steer and toe are all within their limits after some moves."""
    corrections = [move.correction for move in moves]
    rises = np.array([move.rise for move in moves])
    drawn = _drawn(verdict, corrections, rises, draws)
    limits = verdict.session.limits
    return float(np.mean(_within(parallel_angle(drawn), Curves.of(drawn, limits).peaks(), limits)))


def _made(linkage: Linkage, moves: Sequence[Move]) -> Linkage:
    return apply(
        linkage, [move.correction for move in moves], np.array([move.rise for move in moves])
    )


def _drawn(
    verdict: Verdict, corrections: Sequence[Correction], rises: Array, draws: int
) -> Linkage:
    """Geometries drawn from today's doubt, moved by the rises and by the doubt of setting them.

    Each pivot is set once, whatever the number of corrections that move it; with the ride height
    the springs set both frame ends together.
    """
    drawn = apply(verdict.measured.draw(draws, SEED), corrections, rises)
    random = np.random.default_rng(SEED + 1)
    for pivot in dict.fromkeys(correction.pivot for correction in corrections):
        drawn = drawn.raised(pivot, random.uniform(-SETTING, SETTING, draws))
    return drawn


def _within(parallel: Array, peaks: tuple[Array, Array], limits: Limits) -> Array:
    """Which geometries have all three deciding rules within; one that binds has not."""
    steer, toe = peaks
    return np.asarray(
        (np.abs(parallel) <= limits.parallel) & (steer <= limits.steer) & (toe <= limits.toe_change)
    )


def _sketch(verdict: Verdict, choice: Choices) -> list[Candidate]:
    """The combinations of one set that could come first, best first, with estimated p_true.

    Those whose rules are nominally all within are looked at, or else the nearest one. What the
    doubt does to the curves hardly differs among the combinations of a set, so the changes drawn
    about the nearest one are added to the curves of each.
    """
    limits = verdict.session.limits
    linkage = apply(verdict.measured.linkage, choice.corrections, choice.rises)
    parallel, curves = parallel_angle(linkage), Curves.of(linkage, limits)
    steer, toe = curves.peaks()
    excess = np.max(
        [np.abs(parallel) / limits.parallel, steer / limits.steer, toe / limits.toe_change], axis=0
    )
    excess = np.where(np.isnan(excess), np.inf, excess)
    nearest = int(np.argmin(excess))
    rows = np.flatnonzero(excess <= 1) if excess[nearest] <= 1 else np.array([nearest])

    drawn = _drawn(verdict, choice.corrections, choice.rises[nearest], SKETCH)
    about = Curves.of(drawn, limits)
    likely = _within(
        parallel[rows, None] + (parallel_angle(drawn) - parallel[nearest]),
        Curves(
            curves.steer[rows, None] + (about.steer - curves.steer[nearest]),
            None
            if curves.toe is None or about.toe is None
            else curves.toe[rows, None] + (about.toe - curves.toe[nearest]),
        ).peaks(ROUGH),
        limits,
    ).mean(axis=-1)
    flatness = np.abs(slopes(linkage)).sum(axis=-1)
    found = [
        Candidate(choice.moves(int(row)), float(p), float(flatness[row]))
        for row, p in zip(rows, likely, strict=True)
    ]
    return sorted(found, key=lambda candidate: candidate.order)[:FINALISTS]


def _best(verdict: Verdict, sketches: list[list[Candidate]]) -> list[Candidate]:
    """The first of each set of corrections, drawn in full: those that steer true, or the best."""
    found: list[Candidate] = []
    true: list[Candidate] = []
    for _, same_size in groupby(sketches, key=lambda sketch: len(sketch[0].moves)):
        for sketch in sorted(same_size, key=lambda sketch: sketch[0].order)[:SETS]:
            full = [
                Candidate(one.moves, p_true_of(verdict, one.moves), one.flatness) for one in sketch
            ]
            found.append(min(full, key=lambda candidate: candidate.order))
        true = sorted((one for one in found if one.p_true >= SURE), key=lambda one: one.order)
        if len(true) >= SHOWN:
            break
    return true[:SHOWN] or sorted(found, key=lambda one: (-one.p_true, one.order))[:1]
