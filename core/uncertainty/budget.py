"""The uncertainty budget of a result: the share of each reading in its variance."""

from dataclasses import dataclass

import numpy as np

from core.adjustment.least_squares import Adjustment
from core.kinematics.linkage import Array


@dataclass(frozen=True)
class Share:
    """Share of one reading in the variance of a result.

    Attributes
    ----------
    reading : str
        Name of the reading.
    share : float
        0 to 1.
    """

    reading: str
    share: float


def budget(adjustment: Adjustment, gradient: Array) -> tuple[Share, ...]:
    """Shares of the readings in the variance of a result, largest first.

    Parameters
    ----------
    adjustment : Adjustment
    gradient : array (3 P,)
        Derivative of the result with respect to the coordinates of the pivots.
    """
    variances = variances_of(adjustment, gradient)
    total = variances.sum() or 1.0
    order = largest_first(variances / total)
    return tuple(Share(adjustment.sources[i].name, float(variances[i] / total)) for i in order)


def largest_first(shares: Array) -> list[int]:
    """Indices of shares, largest first; shares that differ by rounding alone keep their order."""
    return [int(i) for i in np.argsort(-shares.round(9), kind="stable")]


def variances_of(adjustment: Adjustment, gradient: Array) -> Array:
    """Part of a result's variance that each source contributes, array (n + m,).

    Parameters
    ----------
    adjustment : Adjustment
    gradient : array (3 P,)
        Derivative of the result with respect to the coordinates of the pivots.
    """
    u = np.array([source.u for source in adjustment.sources])
    return np.asarray((gradient @ adjustment.sensitivity * u) ** 2)
