"""The uncertainty budget of a result: the share of each source in its variance."""

from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from core.kinematics.vectors import Array
from core.uncertainty.propagation import MeasuredLinkage

THE_MODEL = "the model"
"""Name of the model's own uncertainty in a budget."""


class Part(StrEnum):
    """Part of the uncertainty that a source belongs to."""

    READINGS = "readings"
    ASSUMED = "assumed"
    MODEL = "model"


@dataclass(frozen=True)
class Share:
    """Share of one source in the variance of a result.

    Attributes
    ----------
    of : str
        Name of a reading, or THE_MODEL.
    part : Part
    share : float
        0 to 1.
    """

    of: str
    part: Part
    share: float


def budget(measured: MeasuredLinkage, gradient: Array, u_model: float = 0.0) -> tuple[Share, ...]:
    """Shares of all sources in the variance of a result, largest first.

    Parameters
    ----------
    measured : MeasuredLinkage
    gradient : array (K,)
        Derivative of the result with respect to each parameter.
    u_model : float
        Standard uncertainty of the result that comes from the model itself.
    """
    by_name: dict[tuple[str, Part], float] = {}
    # Both coordinates of a mark, and all unknowns of a camera, have one name.
    for source, variance in zip(measured.sources, measured.variances(gradient), strict=True):
        key = source.name, Part.ASSUMED if source.is_assumed else Part.READINGS
        by_name[key] = by_name.get(key, 0.0) + float(variance)
    by_name[THE_MODEL, Part.MODEL] = u_model**2
    named, variances = list(by_name), np.array(list(by_name.values()))
    total = variances.sum() or 1.0
    return tuple(
        Share(*named[i], float(variances[i] / total))
        for i in largest_first(variances / total)
        if variances[i] > 0
    )


def part_of(shares: tuple[Share, ...], part: Part) -> float:
    """Share of one part in the variance, 0 to 1."""
    return sum(share.share for share in shares if share.part == part)


def largest_first(shares: Array) -> list[int]:
    """Indices of shares, largest first; shares that differ by rounding alone keep their order."""
    return [int(i) for i in np.argsort(-shares.round(9), kind="stable")]
