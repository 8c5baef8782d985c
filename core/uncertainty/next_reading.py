"""The next readings to take: the fewest repeats that would settle a verdict."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import product
from math import sqrt

import numpy as np

from core.adjustment.least_squares import Adjustment
from core.kinematics.vectors import Array
from core.statistics.conformity import Conformity, Ruling, magnitude_ruling
from core.uncertainty.budget import largest_first, variances_of

MOST_REPEATS = 9
"""Largest number of further repeats of a reading that is advised."""

MOST_READINGS = 4
"""Largest number of readings that advice names."""


@dataclass(frozen=True)
class Advice:
    """Readings to take again.

    Attributes
    ----------
    readings : tuple of str
        Names of the readings; empty where no number of repeats settles the verdict.
    repeats : int
        Number of further repeats of each of them.
    """

    readings: tuple[str, ...]
    repeats: int


@dataclass(frozen=True, eq=False)
class ContestedRuling:
    """A ruling that is too close to call.

    Attributes
    ----------
    ruling : Ruling
    gradient : array (3 P,)
        Derivative of its value with respect to the coordinates of the pivots.
    """

    ruling: Ruling
    gradient: Array


@dataclass(frozen=True)
class _Outcome:
    """A contested value after some readings were taken again.

    Attributes
    ----------
    variance : float
        Variance of the value that the readings cause.
    shift : float
        Change of the value where every new repeat equals the mean of the old ones.
    """

    variance: float
    shift: float


def advice(
    adjustment: Adjustment,
    contested: Sequence[ContestedRuling],
    settles: Callable[[Advice], bool] = lambda _: True,
) -> Advice:
    """The fewest repeats that would settle a verdict which is too close to call.

    A verdict is settled when one rule is out, or when no rule is too close to call. Two outcomes
    of the new repeats are considered, and both have to settle it. In the first the repeats agree
    with the adjusted pivots, which changes no value. In the second they equal the earlier
    readings, which pulls the values towards these readings. Uncertainty that the readings do
    not cause (that of the arms) remains.

    Parameters
    ----------
    adjustment : Adjustment
    contested : sequence of ContestedRuling
    settles : callable
        Full trial of an advice; called for an advice that should settle the verdict.
    """
    variances = [variances_of(adjustment, each.gradient) for each in contested]
    weight = np.sum([variance / (variance.sum() or 1.0) for variance in variances], axis=0)
    order = [i for i in largest_first(weight)[:MOST_READINGS] if weight[i] > 0]
    first_readings = [order[:count] for count in range(1, len(order) + 1)]
    outcomes = [
        [_outcomes(adjustment, each.gradient, chosen) for chosen in first_readings]
        for each in contested
    ]
    for repeats, count in _by_effort(len(order)):
        repeats_agree, repeats_equal = [], []
        for each, variance, by_count in zip(contested, variances, outcomes, strict=True):
            ruling, outcome = each.ruling, by_count[count - 1][repeats - 1]
            u = sqrt(max(ruling.u**2 - float(variance.sum()), 0.0) + outcome.variance)
            repeats_agree.append(magnitude_ruling(ruling.value, u, ruling.limit).verdict)
            shifted = ruling.value + outcome.shift
            repeats_equal.append(magnitude_ruling(shifted, u, ruling.limit).verdict)
        if _is_settled(repeats_agree) and _is_settled(repeats_equal):
            names = tuple(adjustment.items[i].reading.name for i in order[:count])
            advised = Advice(names, repeats)
            if settles(advised):
                return advised
    return Advice((), 0)


def _is_settled(decisions: list[Conformity]) -> bool:
    """True if one rule is out, or no rule is too close to call."""
    return Conformity.OUT in decisions or Conformity.TOO_CLOSE not in decisions


def _by_effort(most_readings: int) -> list[tuple[int, int]]:
    """Pairs of repeats and number of readings, least work first."""
    pairs = product(range(1, MOST_REPEATS + 1), range(1, most_readings + 1))
    return sorted(pairs, key=lambda pair: (pair[0] * pair[1], pair[1]))


def _outcomes(adjustment: Adjustment, gradient: Array, chosen: list[int]) -> list[_Outcome]:
    """Outcomes for a value after some readings were taken 1 to MOST_REPEATS times again.

    The weight of a reading with n repeats that is taken m times again grows by the factor
    (n + m) / n. In the normal matrix that is one rank more for each reading (Woodbury identity).

    Parameters
    ----------
    adjustment : Adjustment
    gradient : array (3 P,)
        Derivative of the value with respect to the coordinates of the pivots.
    chosen : list of int
        Indices of the readings among the items of the adjustment.
    """
    items = [adjustment.items[i] for i in chosen]
    square = np.array([item.u**2 for item in items])
    counts = np.array([len(item.reading.repeats) for item in items])
    # A N^-1 A^T of the chosen readings: their covariance less the covariance of their residuals.
    fitted = np.diag(square) - adjustment.residual_covariance[np.ix_(chosen, chosen)]
    further = np.arange(1, MOST_REPEATS + 1)
    added = np.eye(len(chosen)) * (square * counts) / further[:, None, None]
    # N^-1 A^T = sensitivity * u^2, column by column.
    reach = gradient @ adjustment.sensitivity[:, chosen] * square
    gain = np.linalg.solve(added + fitted, reach[:, None])[..., 0]
    variance = gradient @ adjustment.covariance @ gradient - gain @ reach
    shift = -gain @ np.array([item.residual for item in items])
    return [_Outcome(*pair) for pair in zip(variance.tolist(), shift.tolist(), strict=True)]
