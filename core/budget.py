"""Whose doubt it is, and which readings to take again."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from math import sqrt

import numpy as np

from core.adjustment import Adjustment
from core.conformity import OUT, TOO_CLOSE, Ruling, decide, p_between
from core.linkage import Array

MOST_REPEATS = 9
"""Nobody takes the same reading more often than this."""

MOST_READINGS = 4
"""Readings that advice names at most."""


@dataclass(frozen=True)
class Share:
    """Share of one reading in the variance of a result, 0 to 1."""

    reading: str
    share: float


@dataclass(frozen=True, eq=False)
class Advice:
    """Readings to take again, and how many times more each.

    Attributes
    ----------
    readings : tuple of str
        () where no number of repeats will settle it.
    repeats : int
    """

    readings: tuple[str, ...]
    repeats: int


def budget(adjustment: Adjustment, gradient: Array) -> tuple[Share, ...]:
    """Shares of the readings in the variance of a result, largest first.

    Parameters
    ----------
    adjustment : Adjustment
    gradient : array (3 P,)
        Derivative of the result with the coordinates of the pivots.
    """
    variances = _variances(adjustment, gradient)
    whole = variances.sum() or 1.0
    order = _largest_first(variances / whole)
    return tuple(
        Share(adjustment.items[i].reading.name, float(variances[i] / whole)) for i in order
    )


def advice(adjustment: Adjustment, contested: Sequence[tuple[Ruling, Array]]) -> Advice:
    """The fewest repeats that would settle a verdict which is too close to call.

    The values are taken to stay where they are. Doubt that the readings do not carry (of the
    arms) stays too. Up to four readings, those that weigh most, are taken again one to nine
    times; the verdict is settled when one rule is out or none is too close to call.

    Parameters
    ----------
    adjustment : Adjustment
    contested : sequence of (Ruling, array (3 P,))
        The rulings that are too close to call, each with the derivative of its value with the
        coordinates of the pivots.
    """
    variances = [_variances(adjustment, gradient) for _, gradient in contested]
    weight = np.sum([variance / (variance.sum() or 1.0) for variance in variances], axis=0)
    order = [i for i in _largest_first(weight)[:MOST_READINGS] if weight[i] > 0]
    for more, count in _plans(len(order)):
        chosen = order[:count]
        decisions = [
            _decision(ruling, variance, _repeated(adjustment, gradient, chosen, more))
            for (ruling, gradient), variance in zip(contested, variances, strict=True)
        ]
        if OUT in decisions or TOO_CLOSE not in decisions:
            return Advice(tuple(adjustment.items[i].reading.name for i in chosen), more)
    return Advice((), 0)


def _decision(ruling: Ruling, variance: Array, repeated: float) -> str:
    u = sqrt(max(ruling.u**2 - float(variance.sum()), 0.0) + repeated)
    return decide(p_between(ruling.value, u, -ruling.limit, ruling.limit))


def _plans(most: int) -> Iterator[tuple[int, int]]:
    """(repeats, readings), the least work first."""
    pairs = product(range(1, MOST_REPEATS + 1), range(1, most + 1))
    return iter(sorted(pairs, key=lambda pair: (pair[0] * pair[1], pair[1])))


def _largest_first(shares: Array) -> list[int]:
    """Places of shares in order; of those that only rounding tells apart the first goes first."""
    return [int(i) for i in np.argsort(-shares.round(9), kind="stable")]


def _variances(adjustment: Adjustment, gradient: Array) -> Array:
    u = np.array([item.u for item in adjustment.items])
    return np.asarray((gradient @ adjustment.sensitivity * u) ** 2)


def _repeated(adjustment: Adjustment, gradient: Array, chosen: list[int], more: int) -> float:
    """Variance of the result with some readings taken again, by adjusting their weights.

    A reading taken `more` times again has its weight multiplied by (n + more) / n, which the
    normal matrix takes up as one rank more for each reading (Woodbury).
    """
    covariance = adjustment.covariance
    u = np.array([adjustment.items[i].u for i in chosen])
    counts = np.array([len(adjustment.items[i].reading.repeats) for i in chosen])
    # A N^-1 A^T of the chosen readings is their own covariance less that of their residuals.
    fitted = np.diag(u**2) - adjustment.residual_covariance[np.ix_(chosen, chosen)]
    added = np.diag(u**2 * counts / more)
    # N^-1 A^T = sensitivity * u^2, column by column.
    reach = gradient @ adjustment.sensitivity[:, chosen] * u**2
    gain = float(reach @ np.linalg.solve(added + fitted, reach))
    return float(gradient @ covariance @ gradient) - gain
