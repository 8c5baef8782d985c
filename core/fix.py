"""The fix: every combination of corrections worked through, and the best of them as plans.

Every combination is worked nominally. How sure one is takes thousands of drawn geometries: it is
estimated for all combinations of a set from a few hundred geometries drawn about the best one of
that set, and drawn in full for those that could come first. The doubt of today's readings is
carried over, and the doubt of setting a pivot is added.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import groupby

import numpy as np
from numpy.typing import NDArray

from core.conformity import SURE
from core.corrections import Correction
from core.curves import Curves
from core.limits import Limits
from core.linkage import Array, Linkage
from core.moves import ARMS, Choices, Move, apply, choices
from core.outlook import Chances, Outlook, outlook
from core.peak import SEED
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


@dataclass(frozen=True, eq=False)
class Plan:
    """One combination of corrections and what it would bring.

    Attributes
    ----------
    moves : tuple of Move
    after : Outlook
    arms : dict of float
        Arms tried in another length, by the name of their reading (core.moves.ARMS), mm.
    """

    moves: tuple[Move, ...]
    after: Outlook
    arms: Mapping[str, float] = field(default_factory=dict)

    @property
    def steers_true(self) -> bool:
        """Whether it reaches the probability from which a vehicle is said to steer true."""
        return self.after.p_true >= SURE

    @property
    def corrections(self) -> tuple[Correction, ...]:
        """What is corrected."""
        return tuple(move.correction for move in self.moves)


@dataclass(frozen=True, eq=False)
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
    """A combination with what it is ordered by.

    Attributes
    ----------
    moves : tuple of Move
    p_true : float
    excess : float
        Largest of the three deciding rules as a share of its limit.
    flatness : float
        Sum of both links' slopes, rad.
    place : int
        Of its set of corrections among all sets.
    """

    moves: tuple[Move, ...]
    p_true: float
    excess: float
    flatness: float
    place: int

    @property
    def order(self) -> tuple[float, ...]:
        """Fewest corrections, likeliest, smallest sum of rises, flattest pair.

        Where none has a chance, the one that comes nearest to the limits goes first.
        """
        rises = sum(abs(move.rise) for move in self.moves)
        return (len(self.moves), *self.likeliest, round(rises, 6), self.flatness, self.place)

    @property
    def likeliest(self) -> tuple[float, float]:
        """Steps of probability short of sure, and what counts where there is none."""
        steps = round(self.p_true / STEP)
        return -steps, 0.0 if steps else self.excess


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
    for place, one in enumerate(sets):
        sketches.append(_sketch(verdict, one, place))
        done += len(one.rises)
        if progress is not None:
            progress(done / searched)
    return Fix(searched, tuple(plan_of(verdict, one.moves) for one in _best(verdict, sketches)))


def plan_of(
    verdict: Verdict, moves: tuple[Move, ...], arms: Mapping[str, float] | None = None
) -> Plan:
    """A plan of some moves, whether they are on offer or not, and of arms of other lengths."""
    arms = arms or {}
    lengths = {ARMS[name]: length for name, length in arms.items()}
    tried = replace(verdict.measured, linkage=replace(verdict.measured.linkage, **lengths))  # type: ignore[arg-type]
    chances = chances_of(replace(verdict, measured=tried), moves)
    return Plan(moves, outlook(verdict, made(tried.linkage, moves), chances), arms)


def made(linkage: Linkage, moves: Sequence[Move]) -> Linkage:
    """The linkage with moves made."""
    return apply(
        linkage, [move.correction for move in moves], np.array([move.rise for move in moves])
    )


def chances_of(verdict: Verdict, moves: Sequence[Move], draws: int = DRAWS) -> Chances:
    """How likely the deciding rules are within their limits after some moves."""
    corrections = [move.correction for move in moves]
    rises = np.array([move.rise for move in moves])
    drawn = _drawn(verdict, corrections, rises, draws)
    limits = verdict.session.limits
    held = _held(parallel_angle(drawn), Curves.of(drawn, limits).peaks(), limits)
    parallel, steer, toe = held.mean(axis=-1).tolist()
    return Chances(parallel, steer, toe, together=float(held.all(axis=0).mean()))


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


def _held(parallel: Array, peaks: tuple[Array, Array], limits: Limits) -> NDArray[np.bool_]:
    """Which geometries have parallel, steer and toe within; one that binds has not.

    Returns
    -------
    array (3, ...)
    """
    steer, toe = peaks
    return np.stack(
        [np.abs(parallel) <= limits.parallel, steer <= limits.steer, toe <= limits.toe_change]
    )


def _sketch(verdict: Verdict, choice: Choices, place: int) -> list[Candidate]:
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
    held = _held(
        parallel[rows, None] + (parallel_angle(drawn) - parallel[nearest]),
        Curves(
            curves.steer[rows, None] + (about.steer - curves.steer[nearest]),
            None
            if curves.toe is None or about.toe is None
            else curves.toe[rows, None] + (about.toe - curves.toe[nearest]),
        ).peaks(ROUGH),
        limits,
    )
    flatness = np.abs(slopes(linkage)).sum(axis=-1).round(6)
    found = [
        Candidate(choice.moves(row), p, float(excess[row]), float(flatness[row]), place)
        for row, p in zip(rows.tolist(), held.all(axis=0).mean(axis=-1).tolist(), strict=True)
    ]
    return sorted(found, key=lambda candidate: candidate.order)[:FINALISTS]


def _best(verdict: Verdict, sketches: list[list[Candidate]]) -> list[Candidate]:
    """The first of each set of corrections, drawn in full: those that steer true, or the best."""
    found: list[Candidate] = []
    true: list[Candidate] = []
    for _, same_size in groupby(sketches, key=lambda sketch: len(sketch[0].moves)):
        for sketch in sorted(same_size, key=lambda sketch: sketch[0].order)[:SETS]:
            full = [replace(one, p_true=chances_of(verdict, one.moves).together) for one in sketch]
            found.append(min(full, key=lambda candidate: candidate.order))
        true = sorted((one for one in found if one.p_true >= SURE), key=lambda one: one.order)
        if len(true) >= SHOWN:
            break
    return true[:SHOWN] or sorted(found, key=lambda one: (one.likeliest, one.order))[:1]
