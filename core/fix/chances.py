"""Probabilities that the deciding rules are within their limits after corrections.

Geometries are drawn from the uncertainty of the present readings. Each of them also gets a drawn
error of setting each moved pivot.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.fix.moves import Move, with_moves
from core.kinematics.linkage import Array, Linkage
from core.profiles.corrections import Correction
from core.profiles.limits import Limits
from core.statistics.random_numbers import uniform
from core.text.quantity import INCH
from core.uncertainty.propagation import MeasuredLinkage
from core.verdict.curves import Curves
from core.verdict.peak import SEED
from core.verdict.rules import parallel_angle

SETTING = INCH / 16
"""Half-width of the error of setting a pivot at its planned height, mm."""

DRAWS = 4_000
"""Number of drawn geometries."""


@dataclass(frozen=True)
class Chances:
    """Probabilities that the deciding rules are within their limits.

    Attributes
    ----------
    parallel, steer, toe : float
        Of each rule alone.
    together : float
        Of all three rules at once.
    """

    parallel: float
    steer: float
    toe: float
    together: float


def chances_of(measured: MeasuredLinkage, moves: Sequence[Move], limits: Limits) -> Chances:
    """Chances of a measured vehicle after some moves."""
    return chances_among(measured.draw(DRAWS, SEED), moves, limits)


def chances_among(drawn: Linkage, moves: Sequence[Move], limits: Limits) -> Chances:
    """Chances after some moves, from drawn geometries of the measured vehicle."""
    moved = with_setting(with_moves(drawn, moves), [move.correction for move in moves])
    within = within_limits(parallel_angle(moved), Curves.of(moved, limits).peaks(), limits)
    parallel, steer, toe = within.mean(axis=-1).tolist()
    return Chances(parallel, steer, toe, together=float(within.all(axis=0).mean()))


def with_setting(drawn: Linkage, corrections: Sequence[Correction]) -> Linkage:
    """Drawn geometries with a drawn setting error of each pivot that the corrections move.

    A pivot has one setting error, whatever the number of corrections that move it. The ride
    height has one setting error for both frame ends.
    """
    count = len(drawn.track_bar_frame)
    pivots = list(dict.fromkeys(correction.pivot for correction in corrections))
    for seed, pivot in enumerate(pivots, start=SEED + 1):
        drawn = drawn.raised(pivot, SETTING * (2 * uniform(count, seed) - 1))
    return drawn


def within_limits(parallel: Array, peaks: tuple[Array, Array], limits: Limits) -> NDArray[np.bool_]:
    """True for each deciding rule that is within its limit; False where a link binds.

    Parameters
    ----------
    parallel : array (...)
        rad
    peaks : (array (...), array (...))
        Peak steer and peak toe-in change, rad; nan where a link binds.
    limits : Limits

    Returns
    -------
    array (3, ...)
        Parallel, steer, toe.
    """
    steer, toe = peaks
    return np.stack(
        [np.abs(parallel) <= limits.parallel, steer <= limits.steer, toe <= limits.toe_change]
    )
