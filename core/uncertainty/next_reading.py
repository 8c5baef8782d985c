"""The next reading to take: the fewest repeats that would settle a verdict."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from math import sqrt

import numpy as np

from core.adjustment.least_squares import Adjustment
from core.kinematics.linkage import Array
from core.statistics.conformity import Conformity, Ruling, decide, probability_between
from core.uncertainty.budget import largest_first, variances_of

MOST_REPEATS = 9
"""Most repeats of one reading."""

MOST_READINGS = 4
"""Readings that advice names at most."""


@dataclass(frozen=True)
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


def advice(
    adjustment: Adjustment,
    contested: Sequence[tuple[Ruling, Array]],
    holds: Callable[[Advice], bool] = lambda _: True,
) -> Advice:
    """The fewest repeats that would settle a verdict which is too close to call.

    The verdict has to be settled in two cases. The repeats may come out as the pivots say now,
    which leaves every result unchanged. Or they come out as they were read before, which pulls
    the results towards these readings. Uncertainty of the arms stays. Up to four readings, the
    ones with the largest shares, are taken again one to nine times. The verdict is settled when
    one rule is out or none is too close to call.

    Parameters
    ----------
    adjustment : Adjustment
    contested : sequence of (Ruling, array (3 P,))
        The rulings that are too close to call, each with the derivative of its value with the
        coordinates of the pivots.
    holds : callable
        Tries an advice in full on the readings; True if it settles the verdict.
    """
    variances = [variances_of(adjustment, gradient) for _, gradient in contested]
    weight = np.sum([variance / (variance.sum() or 1.0) for variance in variances], axis=0)
    order = [i for i in largest_first(weight)[:MOST_READINGS] if weight[i] > 0]
    choices = [order[:count] for count in range(1, len(order) + 1)]
    outcomes = [
        [_repeated(adjustment, gradient, chosen) for chosen in choices] for _, gradient in contested
    ]
    for more, count in _plans(len(order)):
        as_now, as_read = [], []
        for (ruling, _), variance, by_count in zip(contested, variances, outcomes, strict=True):
            repeated, pull = by_count[count - 1][more - 1]
            u = sqrt(max(ruling.u**2 - float(variance.sum()), 0.0) + repeated)
            as_now.append(_decision(ruling.value, u, ruling.limit))
            as_read.append(_decision(ruling.value + pull, u, ruling.limit))
        if _settles(as_now) and _settles(as_read):
            names = tuple(adjustment.items[i].reading.name for i in order[:count])
            advised = Advice(names, more)
            if holds(advised):
                return advised
    return Advice((), 0)


def _decision(value: float, u: float, limit: float) -> str:
    return decide(probability_between(value, u, -limit, limit))


def _settles(decisions: list[str]) -> bool:
    return Conformity.OUT in decisions or Conformity.TOO_CLOSE not in decisions


def _plans(most: int) -> Iterator[tuple[int, int]]:
    """(repeats, readings), the least work first."""
    pairs = product(range(1, MOST_REPEATS + 1), range(1, most + 1))
    return iter(sorted(pairs, key=lambda pair: (pair[0] * pair[1], pair[1])))


def _repeated(adjustment: Adjustment, gradient: Array, chosen: list[int]) -> list[list[float]]:
    """Variance of a result with some readings taken 1 to MOST_REPEATS times again, and its change.

    A reading taken `more` times again has its weight multiplied by (n + more) / n, which the
    normal matrix takes up as one rank more for each reading (Woodbury). The change is that where
    every repeat comes out as the reading did.
    """
    items = [adjustment.items[i] for i in chosen]
    square = np.array([item.u**2 for item in items])
    counts = np.array([len(item.reading.repeats) for item in items])
    # A N^-1 A^T of the chosen readings is their own covariance less that of their residuals.
    fitted = np.diag(square) - adjustment.residual_covariance[np.ix_(chosen, chosen)]
    more = np.arange(1, MOST_REPEATS + 1)
    added = np.eye(len(chosen)) * (square * counts) / more[:, None, None]
    # N^-1 A^T = sensitivity * u^2, column by column.
    reach = gradient @ adjustment.sensitivity[:, chosen] * square
    gain = np.linalg.solve(added + fitted, reach[:, None])[..., 0]
    variance = gradient @ adjustment.covariance @ gradient - gain @ reach
    pull = -gain @ np.array([item.residual for item in items])
    return np.stack([variance, pull], axis=-1).tolist()  # type: ignore[no-any-return]
