"""Probabilities that the deciding rules are within their limits after corrections.

Geometries are drawn from the uncertainty of the present readings. Each of them also gets a drawn
error of setting each moved pivot.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.fix.moves import Move, pivots_of_changes, with_moves
from core.kinematics.ball_path import effective_angle
from core.kinematics.linkage import Linkage
from core.kinematics.raising import raised
from core.kinematics.vectors import Array
from core.profiles.conversions import Change
from core.profiles.limits import Limits
from core.statistics.random_numbers import standard_normal, uniform
from core.text.quantity import INCH
from core.uncertainty.propagation import MeasuredLinkage
from core.verdict.curves import Curves
from core.verdict.model_doubt import model_uncertainty
from core.verdict.peak import SEED

SETTING = INCH / 16
"""Half-width of the error of setting a pivot at its planned height, mm."""

DRAWS = 2_000
"""Number of drawn geometries."""


@dataclass(frozen=True)
class Chances:
    """Probabilities that the deciding rules are within their limits.

    Attributes
    ----------
    effective, steer, toe : float
        Of each rule alone.
    together : float
        Of all three rules at once.
    """

    effective: float
    steer: float
    toe: float
    together: float


def chances_of(measured: MeasuredLinkage, moves: Sequence[Move], limits: Limits) -> Chances:
    """Chances of a measured vehicle after some moves."""
    return chances_among(measured.draw(DRAWS, SEED), moves, limits)


def chances_among(drawn: Linkage, moves: Sequence[Move], limits: Limits) -> Chances:
    """Chances after some moves, from drawn geometries of the measured vehicle."""
    moved = with_setting(with_moves(drawn, moves), [move.correction for move in moves])
    steer, toe = with_model_error(Curves.of(moved, limits).peaks())
    within = within_limits(effective_angle(moved), (steer, toe), limits)
    effective, steer, toe = within.mean(axis=-1).tolist()
    return Chances(effective, steer, toe, together=float(within.all(axis=0).mean()))


def with_setting(drawn: Linkage, corrections: Sequence[Change]) -> Linkage:
    """Drawn geometries with a drawn setting error of each pivot that the corrections move.

    A pivot has one setting error, whatever the number of corrections that move it. The ride
    height has one setting error for both frame ends.
    """
    count = len(drawn.drag_link_frame)
    for seed, pivot in enumerate(pivots_of_changes(corrections), start=SEED + 1):
        drawn = raised(drawn, pivot, SETTING * (2 * uniform(count, seed) - 1))
    return drawn


def with_model_error(peaks: tuple[Array, Array]) -> tuple[Array, Array]:
    """Drawn peaks (..., n) of steer and toe-in change, rad, each with a drawn error of the model.

    A toe-in change of zero is that of a layout that cannot change it, and stays.
    """
    steer, toe = peaks
    error = standard_normal((1, steer.shape[-1]), SEED + 100)[0]
    with_error = np.abs(steer + error * model_uncertainty(steer))
    return with_error, np.where(toe > 0, np.abs(toe + error * model_uncertainty(toe)), toe)


def within_limits(
    effective: Array, peaks: tuple[Array, Array], limits: Limits
) -> NDArray[np.bool_]:
    """True for each deciding rule that is within its limit; False where a link binds.

    Parameters
    ----------
    effective : array (...)
        Effective angle, rad.
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
        [np.abs(effective) <= limits.parallel, steer <= limits.steer, toe <= limits.toe_change]
    )
