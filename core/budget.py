"""Whose doubt it is, and which readings to take again."""

from collections.abc import Callable, Iterator, Sequence
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


def advice(
    adjustment: Adjustment,
    contested: Sequence[tuple[Ruling, Array]],
    holds: Callable[[Advice], bool] = lambda _: True,
) -> Advice:
    """The fewest repeats that would settle a verdict which is too close to call.

    It has to be settled both where the new repeats come out as the pivots say now, which leaves
    every result where it is, and where they come out as they were read before, which pulls the
    results towards these readings. Doubt that the readings do not carry (of the arms) stays. Up
    to four readings, those that weigh most, are taken again one to nine times; the verdict is
    settled when one rule is out or none is too close to call.

    Parameters
    ----------
    adjustment : Adjustment
    contested : sequence of (Ruling, array (3 P,))
        The rulings that are too close to call, each with the derivative of its value with the
        coordinates of the pivots.
    holds : callable
        Tries out in full what looks as if it would settle it.
    """
    variances = [_variances(adjustment, gradient) for _, gradient in contested]
    weight = np.sum([variance / (variance.sum() or 1.0) for variance in variances], axis=0)
    order = [i for i in _largest_first(weight)[:MOST_READINGS] if weight[i] > 0]
    for more, count in _plans(len(order)):
        chosen = order[:count]
        as_now, as_read = [], []
        for (ruling, gradient), variance in zip(contested, variances, strict=True):
            repeated, pull = _repeated(adjustment, gradient, chosen, more)
            u = sqrt(max(ruling.u**2 - float(variance.sum()), 0.0) + repeated)
            as_now.append(_decision(ruling.value, u, ruling.limit))
            as_read.append(_decision(ruling.value + pull, u, ruling.limit))
        if _settles(as_now) and _settles(as_read):
            advised = Advice(tuple(adjustment.items[i].reading.name for i in chosen), more)
            if holds(advised):
                return advised
    return Advice((), 0)


def _decision(value: float, u: float, limit: float) -> str:
    return decide(p_between(value, u, -limit, limit))


def _settles(decisions: list[str]) -> bool:
    return OUT in decisions or TOO_CLOSE not in decisions


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


def _repeated(
    adjustment: Adjustment, gradient: Array, chosen: list[int], more: int
) -> tuple[float, float]:
    """Variance of the result with some readings taken again, by adjusting their weights.

    A reading taken `more` times again has its weight multiplied by (n + more) / n, which the
    normal matrix takes up as one rank more for each reading (Woodbury). The second number is
    the change of the result where every repeat comes out as the reading did.
    """
    covariance = adjustment.covariance
    items = [adjustment.items[i] for i in chosen]
    u = np.array([item.u for item in items])
    counts = np.array([len(item.reading.repeats) for item in items])
    # A N^-1 A^T of the chosen readings is their own covariance less that of their residuals.
    fitted = np.diag(u**2) - adjustment.residual_covariance[np.ix_(chosen, chosen)]
    added = np.diag(u**2 * counts / more)
    # N^-1 A^T = sensitivity * u^2, column by column.
    reach = gradient @ adjustment.sensitivity[:, chosen] * u**2
    gain = np.linalg.solve(added + fitted, reach)
    pull = -float(gain @ np.array([item.residual for item in items]))
    return float(gradient @ covariance @ gradient) - float(gain @ reach), pull
