"""Peaks of steer and toe-in change over the working travel, with their uncertainty.

A peak is a largest magnitude. Where one point of the curve is clearly the largest, the peak is as
good as linear in the pivots and is propagated linearly (GUM 5.2.2). Where the curve is near zero
or has two humps of one size, the uncertainty is drawn (Monte Carlo, JCGM 101:2008).
"""

from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from core.kinematics.linkage import Array, Linkage
from core.kinematics.motion import motion_at
from core.profiles.limits import Limits
from core.statistics.conformity import Ruling, magnitude_ruling
from core.uncertainty.propagation import MeasuredLinkage
from core.verdict.curves import Curves, working_heaves

SEED = 20080101
"""Seed of every Monte Carlo, so that the same readings always give the same result."""

CLEAR = 4.0
"""Standard uncertainties by which a clear peak exceeds zero and the rest of its curve; at 3
its u would still differ by several per cent from the u of drawn geometries."""


class Method(StrEnum):
    """Method that gave the uncertainty of a peak."""

    LINEAR = "linear"
    MONTE_CARLO = "monte carlo"


@dataclass(frozen=True)
class Peak:
    """A peak with its ruling.

    Attributes
    ----------
    ruling : Ruling
        The largest magnitude, rad.
    at_heave : float
        Heave of the peak, mm.
    method : Method
    """

    ruling: Ruling
    at_heave: float
    method: Method


def peaks_of(measured: MeasuredLinkage, limits: Limits, draws: int) -> tuple[Peak, Peak]:
    """Peak steer and peak toe-in change of a measured linkage.

    Parameters
    ----------
    measured : Measured
    limits : Limits
    draws : int
        Draws of the Monte Carlo, where it is needed; 0 for linear propagation in any case.
    """
    heaves = working_heaves(limits)

    def curves(linkage: Linkage) -> Array:
        motion = motion_at(linkage, heaves)
        return np.stack([motion.steer, motion.toe_in_change], axis=-2)

    nominal = curves(measured.linkage)
    gradient = measured.gradient(lambda linkage: curves(linkage.with_heave_axis()))
    held_to = (limits.steer, limits.toe_change)
    peaks = [
        Peak(_linear(measured, curve, gradient[:, i], limit), _at(heaves, curve), Method.LINEAR)
        for i, (curve, limit) in enumerate(zip(nominal, held_to, strict=True))
    ]
    unclear = [not is_clear(measured, curve, gradient[:, i]) for i, curve in enumerate(nominal)]
    if draws and any(unclear):
        portions = measured.draw_portions(draws, SEED)
        drawn = np.concatenate([Curves.of(some, limits).peaks() for some in portions], axis=-1)
        for i in np.flatnonzero(unclear):
            peaks[i] = Peak(
                _drawn(nominal[i], drawn[i], held_to[i]), peaks[i].at_heave, Method.MONTE_CARLO
            )
    return peaks[0], peaks[1]


def is_clear(measured: MeasuredLinkage, curve: Array, gradient: Array) -> bool:
    """True if one point of a curve is its peak whatever the uncertainty does to the curve.

    Parameters
    ----------
    measured : Measured
    curve : array (41,)
    gradient : array (K, 41)
    """
    if not np.isfinite(curve).all() or not np.isfinite(gradient).all():
        return False
    if not gradient.any():  # the toe of a layout that cannot change it
        return True
    magnitude, slope = np.abs(curve), gradient * np.sign(curve)
    peak = int(np.argmax(magnitude))
    margin = magnitude[peak] - np.delete(magnitude, peak)
    doubt = measured.u(slope[:, peak, None] - np.delete(slope, peak, axis=1))
    stands = magnitude[peak] > CLEAR * measured.u(slope[:, peak])
    return bool(stands and (margin > CLEAR * doubt).all())


def _where(curve: Array) -> int:
    magnitude = np.abs(curve)
    return int(np.nanargmax(magnitude)) if np.isfinite(magnitude).any() else 0


def _at(heaves: Array, curve: Array) -> float:
    return float(heaves[_where(curve)])


def _linear(measured: MeasuredLinkage, curve: Array, gradient: Array, limit: float) -> Ruling:
    at = _where(curve)
    return magnitude_ruling(float(np.abs(curve[at])), float(measured.u(gradient[:, at])), limit)


def _drawn(curve: Array, peak: Array, limit: float) -> Ruling:
    """Ruling from drawn peaks (count,); a geometry that binds in the working travel is out."""
    free = peak[np.isfinite(peak)]
    u = float(free.std()) if free.size else float("nan")
    within = np.count_nonzero(free <= limit) / peak.size
    return Ruling(float(np.abs(curve[_where(curve)])), limit, u, float(within))
