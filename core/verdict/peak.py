"""Peak steer and peak toe-in change over the working travel, with their uncertainty.

A peak is the largest magnitude of a curve. Where one point of the curve is clearly the largest,
the peak is nearly linear in the pivots and takes linear propagation (GUM, JCGM 100:2008, 5.2.2).
A curve near zero, or with two humps of almost one size, takes a Monte Carlo (JCGM 101:2008).
The model's own uncertainty is added to both.
"""

from dataclasses import dataclass, replace
from enum import StrEnum

import numpy as np

from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at
from core.kinematics.vectors import Array
from core.profiles.limits import Limits
from core.statistics.conformity import Ruling, magnitude_ruling
from core.statistics.random_numbers import standard_normal
from core.uncertainty.propagation import MeasuredLinkage
from core.verdict.curves import Curves, working_heaves
from core.verdict.model_doubt import model_uncertainty

SEED = 20080101
"""Seed of every Monte Carlo, so that the same readings always give the same numbers."""

CLEAR = 4.0
"""Standard uncertainties by which a clear peak exceeds zero and the rest of its curve.

At 3 its standard uncertainty would still differ by several per cent from a Monte Carlo.
"""


class Method(StrEnum):
    """Method by which the uncertainty of a peak was determined."""

    LINEAR = "linear"
    MONTE_CARLO = "monte carlo"


@dataclass(frozen=True, eq=False)
class Peak:
    """A peak compared with its limit.

    Attributes
    ----------
    ruling : Ruling
        The largest magnitude, rad.
    at_heave : float
        Heave at which the curve has its peak, mm.
    method : Method
    u_model : float
        Part of the standard uncertainty that comes from the model itself, rad.
    gradient : array (K,)
        Derivative of the peak with respect to each parameter of the measured linkage.
    """

    ruling: Ruling
    at_heave: float
    method: Method
    u_model: float
    gradient: Array


def peaks_of(measured: MeasuredLinkage, limits: Limits, draws: int) -> tuple[Peak, Peak]:
    """Peak steer and peak toe-in change of a measured linkage.

    Parameters
    ----------
    measured : MeasuredLinkage
    limits : Limits
    draws : int
        Number of draws of the Monte Carlo, where one is needed. 0 for linear propagation in any
        case, which is quick.
    """
    heaves = working_heaves(limits)

    def curves(linkage: Linkage) -> Array:
        motion = motion_at(linkage, heaves)
        return np.stack([motion.steer, motion.toe_in_change], axis=-2)

    nominal = curves(measured.linkage)
    gradient = measured.gradient(lambda linkage: curves(linkage.with_heave_axis()))
    largest_allowed = (limits.steer, limits.toe_change)
    peaks = [
        _linear_peak(measured, curve, gradient[:, i], heaves, limit)
        for i, (curve, limit) in enumerate(zip(nominal, largest_allowed, strict=True))
    ]
    unclear = [not is_clear(measured, curve, gradient[:, i]) for i, curve in enumerate(nominal)]
    if draws and any(unclear):
        portions = measured.draw_portions(draws, SEED)
        drawn = np.concatenate([Curves.of(part, limits).peaks() for part in portions], axis=-1)
        for i in np.flatnonzero(unclear):
            ruling = _drawn_ruling(nominal[i], drawn[i], largest_allowed[i])
            peaks[i] = replace(peaks[i], ruling=ruling, method=Method.MONTE_CARLO)
    return peaks[0], peaks[1]


def is_clear(measured: MeasuredLinkage, curve: Array, gradient: Array) -> bool:
    """True if one point of a curve is its peak within the uncertainty of the curve.

    Parameters
    ----------
    measured : MeasuredLinkage
    curve : array (41,)
        rad
    gradient : array (K, 41)
        Derivative of the curve with respect to each parameter.
    """
    if not np.isfinite(curve).all() or not np.isfinite(gradient).all():
        return False
    if not gradient.any():  # the toe of a layout that cannot change it
        return True
    magnitude, slope = np.abs(curve), gradient * np.sign(curve)
    peak = int(np.argmax(magnitude))
    margin = magnitude[peak] - np.delete(magnitude, peak)
    u_margin = measured.standard_uncertainty(slope[:, peak, None] - np.delete(slope, peak, axis=1))
    u_peak = measured.standard_uncertainty(slope[:, peak])
    return bool(magnitude[peak] > CLEAR * u_peak and (margin > CLEAR * u_margin).all())


def _peak_index(curve: Array) -> int:
    """Index of the largest magnitude of a curve; 0 where the curve has no finite value."""
    magnitude = np.abs(curve)
    return int(np.nanargmax(magnitude)) if np.isfinite(magnitude).any() else 0


def _linear_peak(
    measured: MeasuredLinkage, curve: Array, gradient: Array, heaves: Array, limit: float
) -> Peak:
    """Peak of a curve (41,), by linear propagation of its gradient (K, 41)."""
    place = _peak_index(curve)
    # The peak is a magnitude: where the steer is negative it grows as the steer falls.
    at_peak = gradient[:, place] * np.sign(curve[place])
    value = float(np.abs(curve[place]))
    u_model = float(model_uncertainty(value)) if gradient.any() else 0.0
    u = float(np.hypot(measured.standard_uncertainty(at_peak), u_model))
    ruling = magnitude_ruling(value, u, limit)
    return Peak(ruling, float(heaves[place]), Method.LINEAR, u_model, at_peak)


def _drawn_ruling(curve: Array, drawn_peaks: Array, limit: float) -> Ruling:
    """Ruling on the peak of a curve (41,), from the peaks (n,) of drawn geometries.

    A drawn geometry that binds in the working travel is out of the limit. Each drawn peak gets a
    drawn error of the model.
    """
    error = standard_normal((1, drawn_peaks.size), SEED + 1)[0]
    peaks = np.abs(drawn_peaks + error * model_uncertainty(drawn_peaks))
    value = float(np.abs(curve[_peak_index(curve)]))
    finite = drawn_peaks[np.isfinite(drawn_peaks)]
    u = float("nan")
    if finite.size:
        u = float(np.sqrt(finite.var() + np.mean(model_uncertainty(finite) ** 2)))
    return Ruling(value, limit, u, float(np.mean(peaks <= limit)))
