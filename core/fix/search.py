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

from core.fix.combinations import Nominal, worked
from core.fix.moves import ARMS, Move, apply, choices
from core.fix.prediction import Chances, Outlook, outlook
from core.kinematics.linkage import Array, Linkage
from core.profiles.corrections import Correction
from core.profiles.limits import Limits
from core.statistics.conformity import SURE
from core.statistics.random_numbers import uniform
from core.verdict.curves import Curves
from core.verdict.peak import SEED
from core.verdict.rules import parallel_angle
from core.verdict.verdict import BUMP_STEER, Verdict

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

PORTION = 128
"""Combinations estimated at a time: fewer than could fill the fast memory."""

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
        Arms tried in another length, by the name of their reading (core.fix.moves.ARMS), mm.
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
        return (len(self.moves), *self.likeliest, *self.small, self.place)

    @property
    def small(self) -> tuple[float, float]:
        """What counts among equally likely ones of a size: sum of rises, then flatness."""
        return round(sum(abs(move.rise) for move in self.moves), 6), self.flatness

    @property
    def likeliest(self) -> tuple[float, float]:
        """Steps of probability short of sure, and what counts where there is none."""
        steps = round(self.p_true / STEP)
        return -steps, 0.0 if steps else self.excess

    @property
    def is_sure(self) -> bool:
        """Whether none can be likelier."""
        return round((1 - self.p_true) / STEP) == 0

    def could_precede(self, other: "Candidate") -> bool:
        """Whether it may come before another one of its set, whatever its chance turns out."""
        return not other.is_sure or self.small < other.small


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
    done = 0

    def tick(more: int) -> None:
        nonlocal done
        done += more
        if progress is not None:
            progress(done / searched)

    linkage, limits = verdict.measured.linkage, verdict.session.limits
    few = verdict.measured.draw(SKETCH, SEED)
    sketches = [
        _sketch(worked(linkage, limits, one, tick), few, limits, place)
        for place, one in enumerate(sets)
    ]
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


def chances_of(verdict: Verdict, moves: Sequence[Move]) -> Chances:
    """How likely the deciding rules are within their limits after some moves."""
    return _chances(verdict.measured.draw(DRAWS, SEED), moves, verdict.session.limits)


def _chances(drawn: Linkage, moves: Sequence[Move], limits: Limits) -> Chances:
    """The same of geometries that were drawn from today's doubt."""
    corrections = [move.correction for move in moves]
    there = _set(apply(drawn, corrections, np.array([move.rise for move in moves])), corrections)
    held = _held(parallel_angle(there), Curves.of(there, limits).peaks(), limits)
    parallel, steer, toe = held.mean(axis=-1).tolist()
    return Chances(parallel, steer, toe, together=float(held.all(axis=0).mean()))


def _set(drawn: Linkage, corrections: Sequence[Correction]) -> Linkage:
    """Drawn geometries with the doubt of setting each pivot that some corrections move.

    Each pivot is set once, whatever the number of corrections that move it; with the ride height
    the springs set both frame ends together.
    """
    count = len(drawn.track_bar_frame)
    pivots = list(dict.fromkeys(correction.pivot for correction in corrections))
    for pivot, number in zip(pivots, range(SEED + 1, SEED + 1 + len(pivots)), strict=True):
        drawn = drawn.raised(pivot, SETTING * (2 * uniform(count, number) - 1))
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


def _sketch(nominal: Nominal, few: Linkage, limits: Limits, place: int) -> list[Candidate]:
    """The combinations of one set that could come first, best first, with estimated p_true.

    What the doubt does to the curves hardly differs among the combinations of a set, so the
    changes drawn about the nearest one are added to the curves of each.
    """
    corrections, nearest = nominal.choices.corrections, nominal.nearest
    drawn = _set(apply(few, corrections, nominal.choices.rises[nearest]), corrections)
    turned = parallel_angle(drawn) - nominal.parallel[nearest]
    bent = Curves.of(drawn, limits).less(nominal.curves.of_row(nearest))
    found: list[Candidate] = []
    for start in range(0, len(nominal.parallel), PORTION):
        rows = np.arange(start, min(start + PORTION, len(nominal.parallel)))
        parallel = nominal.parallel[rows, None] + turned
        peaks = nominal.curves.of_row(rows[:, None]).more(bent).peaks(ROUGH)
        likely = _held(parallel, peaks, limits).all(axis=0).mean(axis=-1)
        found += [
            Candidate(
                nominal.choices.moves(row),
                p_true,
                float(nominal.excess[row]),
                float(nominal.flatness[row]),
                place,
            )
            for row, p_true in zip(rows.tolist(), likely.tolist(), strict=True)
        ]
        found = sorted(found, key=lambda candidate: candidate.order)[:FINALISTS]
        if len(found) == FINALISTS and found[-1].is_sure:
            break  # what is left has larger rises, and no better chance is to be had
    return found


def _best(verdict: Verdict, sketches: list[list[Candidate]]) -> list[Candidate]:
    """The first of each set of corrections, drawn in full: those that steer true, or the best."""
    many = verdict.measured.draw(DRAWS, SEED)
    found: list[Candidate] = []
    true: list[Candidate] = []
    for _, same_size in groupby(sketches, key=lambda sketch: len(sketch[0].moves)):
        likely = sorted(same_size, key=lambda sketch: sketch[0].order)[:SETS]
        found += [_first(sketch, many, verdict.session.limits) for sketch in likely]
        true = sorted((one for one in found if one.p_true >= SURE), key=lambda one: one.order)
        if len(true) >= SHOWN:
            break
    return true[:SHOWN] or sorted(found, key=lambda one: (one.likeliest, one.order))[:1]


def _first(sketch: list[Candidate], many: Linkage, limits: Limits) -> Candidate:
    """The first of the candidates of one set, once their chances are drawn in full."""
    best: Candidate | None = None
    for one in sketch:
        if best is None or one.could_precede(best):
            drawn = replace(one, p_true=_chances(many, one.moves, limits).together)
            best = min(best or drawn, drawn, key=lambda candidate: candidate.order)
    assert best is not None  # a set has at least its nearest combination
    return best
