"""The largest steer and toe-in change over the working travel, and how sure they are.

Peaks are taken over 41 equally spaced heaves. A peak is a largest magnitude, which is not linear
in the pivots where the curve is near zero or has two humps of a size: its doubt is drawn (Monte
Carlo, JCGM 101:2008).
"""

from dataclasses import dataclass
from functools import cache

import numpy as np
from numpy.polynomial.chebyshev import chebpts1, chebvander

from core.conformity import Ruling, hold
from core.limits import Limits
from core.linkage import Array, Linkage
from core.motion import moved
from core.propagation import Measured

HEAVES = 41
NODES = 9
SEED = 20080101
"""Of every Monte Carlo, so that the same readings always give the same answer."""


@dataclass(frozen=True)
class Peak:
    """A peak held to its limit.

    Attributes
    ----------
    ruling : Ruling
        The largest magnitude, rad.
    at_heave : float
        Where it is, mm.
    method : str
        "linear" or "monte carlo": how its doubt was found.
    """

    ruling: Ruling
    at_heave: float
    method: str


def working_heaves(limits: Limits) -> Array:
    """The heaves that peaks are taken over, array (41,), mm."""
    return np.linspace(-limits.working_droop, limits.working_bump, HEAVES)


def peaks_of(linkage: Linkage, limits: Limits) -> tuple[Array, Array]:
    """Peak steer and peak toe-in change of many geometries at once, arrays (...), rad.

    nan where a link binds in the working travel.
    """
    curves = Curves.of(linkage, limits)
    return curves.peaks()


@dataclass(frozen=True)
class Curves:
    """Steer and toe-in change of many geometries over the working travel.

    The model is worked at a few Chebyshev nodes and carried to the 41 heaves by the polynomial
    through them: over a working travel the curves are so smooth that this agrees with the model
    at every heave to some 1e-9 rad (a test holds it to that), in a quarter of the time.

    Attributes
    ----------
    steer : array (..., NODES), rad
    toe : array (..., NODES) or None
        None for layouts which cannot change it.
    """

    steer: Array
    toe: Array | None

    @classmethod
    def of(cls, linkage: Linkage, limits: Limits) -> "Curves":
        """The curves of a linkage with any leading axes."""
        middle = (limits.working_bump - limits.working_droop) / 2
        half = (limits.working_bump + limits.working_droop) / 2
        motion = moved(linkage.spread(), middle + half * chebpts1(NODES))
        return cls(motion.steer, None if linkage.near_ball is None else motion.toe_in_change)

    def peaks(self, heaves: int = HEAVES) -> tuple[Array, Array]:
        """Largest magnitudes over equally spaced heaves, arrays (...), rad."""
        carry = _carry(heaves)
        steer = np.abs(self.steer @ carry).max(axis=-1)
        if self.toe is None:
            return steer, np.zeros_like(steer)
        return steer, np.abs(self.toe @ carry).max(axis=-1)


@cache
def _carry(heaves: int) -> Array:
    """Matrix (NODES, heaves) from values at the nodes to values at equally spaced heaves."""
    at_nodes = chebvander(chebpts1(NODES), NODES - 1)
    return np.asarray(
        (chebvander(np.linspace(-1, 1, heaves), NODES - 1) @ np.linalg.inv(at_nodes)).T
    )


def rule_peaks(measured: Measured, limits: Limits, draws: int) -> tuple[Peak, Peak]:
    """Peak steer and peak toe-in change of a measured linkage.

    Parameters
    ----------
    measured : Measured
    limits : Limits
    draws : int
        Of the Monte Carlo; 0 for linear propagation at the heave of the peak, which is quick and
        good where the curve has one clear peak.
    """
    heaves = working_heaves(limits)
    motion = moved(measured.linkage, heaves)
    curves = (motion.steer, motion.toe_in_change)
    if draws:
        drawn = peaks_of(measured.draw(draws, SEED), limits)
        rulings = [
            _drawn(curve, peak, limit)
            for curve, peak, limit in zip(curves, drawn, _limits(limits), strict=True)
        ]
    else:
        rulings = _linear(measured, heaves, curves, limits)
    method = "monte carlo" if draws else "linear"
    steer, toe = (
        Peak(ruling, float(heaves[_where(curve)]), method)
        for ruling, curve in zip(rulings, curves, strict=True)
    )
    return steer, toe


def _limits(limits: Limits) -> tuple[float, float]:
    return limits.steer, limits.toe_change


def _where(curve: Array) -> int:
    magnitude = np.abs(curve)
    return int(np.nanargmax(magnitude)) if np.isfinite(magnitude).any() else 0


def _drawn(curve: Array, peak: Array, limit: float) -> Ruling:
    """A drawn geometry that binds in the working travel is out."""
    free = peak[np.isfinite(peak)]
    u = float(free.std()) if free.size else float("nan")
    within = np.count_nonzero(free <= limit) / peak.size
    return Ruling(float(np.abs(curve[_where(curve)])), limit, u, within)


def _linear(
    measured: Measured, heaves: Array, curves: tuple[Array, Array], limits: Limits
) -> list[Ruling]:
    at = [_where(curve) for curve in curves]

    def values(linkage: Linkage) -> Array:
        motion = moved(linkage.spread(), heaves[at])
        return np.stack([motion.steer[..., 0], motion.toe_in_change[..., 1]], axis=-1)

    u = measured.u(measured.gradient(values)).tolist()
    return [
        hold(float(np.abs(curve[i])), one, limit)
        for curve, i, one, limit in zip(curves, at, u, _limits(limits), strict=True)
    ]
