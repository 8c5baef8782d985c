"""The next readings to take: the fewest repeats that would settle a verdict.

Part of the variance of a reading is common to all its repeats, so repeats bring the uncertainty
down to a floor and no further. Where the floor of the best readings does not settle the verdict,
no number of repeats does.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import product
from math import sqrt

import numpy as np

from core.adjustment.least_squares import AdjustedReading, Adjustment
from core.kinematics.vectors import Array
from core.statistics.conformity import Conformity, Ruling, magnitude_ruling
from core.uncertainty.budget import largest_first
from core.uncertainty.propagation import MeasuredLinkage

MOST_REPEATS = 9
"""Largest number of further repeats of a reading that is advised."""

NOT_READ = ("guide.fore_aft_gain", "guide.effective_length")
"""Assumed values that no single reading replaces."""

MOST_READINGS = 4
"""Largest number of readings that advice names."""


@dataclass(frozen=True)
class Viewpoint:
    """Place of one more photograph beside an earlier one, seen from there.

    Attributes
    ----------
    beside : int
        Number of the earlier photograph.
    right, up : float
        mm
    """

    beside: int
    right: float
    up: float


@dataclass(frozen=True)
class Advice:
    """Readings to take again, or to take at all.

    Attributes
    ----------
    readings : tuple of str
        Names of the readings; empty where no number of repeats settles the verdict.
    repeats : int
        Number of further repeats of each of them.
    skipped : tuple of str
        Where no number of repeats settles the verdict: the names of the skipped readings that take
        away most of the uncertainty.
    settles : bool
        True if the advice settles the verdict where the new readings agree with the old ones.
    photograph : Viewpoint or None
        Place of one more photograph.
    tape : bool
        True where the session should be taken with the tape.
    """

    readings: tuple[str, ...]
    repeats: int
    skipped: tuple[str, ...] = ()
    settles: bool = True
    photograph: Viewpoint | None = None
    tape: bool = False


@dataclass(frozen=True, eq=False)
class ContestedRuling:
    """A ruling that is too close to call.

    Attributes
    ----------
    ruling : Ruling
    gradient : array (K,)
        Derivative of its value with respect to the parameters of the measured linkage, the
        coordinates of the pivots first.
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
    coordinates = len(adjustment.covariance)
    gradients = [each.gradient[:coordinates] for each in contested]
    variances = [_variances(adjustment, gradient) for gradient in gradients]
    weight = np.sum([variance / (variance.sum() or 1.0) for variance in variances], axis=0)
    weight = weight[: len(adjustment.items)]  # no repeat changes a prior
    order = [i for i in largest_first(weight)[:MOST_READINGS] if weight[i] > 0]
    first_readings = [order[:count] for count in range(1, len(order) + 1)]
    outcomes = [
        [_outcomes(adjustment, gradient, chosen) for chosen in first_readings]
        for gradient in gradients
    ]
    promising = []
    for repeats, count in _by_effort(len(order)):
        repeats_agree, repeats_equal = [], []
        for each, variance, by_count in zip(contested, variances, outcomes, strict=True):
            ruling, outcome = each.ruling, by_count[count - 1][repeats - 1]
            u = sqrt(max(ruling.u**2 - float(variance.sum()), 0.0) + outcome.variance)
            repeats_agree.append(magnitude_ruling(ruling.value, u, ruling.limit).verdict)
            shifted = ruling.value + outcome.shift
            repeats_equal.append(magnitude_ruling(shifted, u, ruling.limit).verdict)
        if is_settled(repeats_agree) and is_settled(repeats_equal):
            names = tuple(adjustment.items[i].reading.name for i in order[:count])
            promising.append(Advice(names, repeats))
    # Where the most work settles nothing, less does not: one trial then does for all.
    if promising and settles(promising[-1]):
        return next((advised for advised in promising if settles(advised)), promising[-1])
    return Advice((), 0, settles=False)


def advice_on_skipped(measured: MeasuredLinkage, contested: Sequence[ContestedRuling]) -> Advice:
    """The fewest skipped readings that would settle a verdict, or the one that is worth most.

    A reading that is taken leaves next to nothing of the uncertainty of the assumed value.

    Parameters
    ----------
    measured : MeasuredLinkage
    contested : sequence of ContestedRuling
    """
    by_ruling = [measured.variances(each.gradient) for each in contested]
    can_be_taken = np.array(
        [source.is_assumed and source.name not in NOT_READ for source in measured.sources]
    )
    weight = np.sum(by_ruling, axis=0) * can_be_taken
    order = [i for i in largest_first(weight / (weight.sum() or 1.0)) if weight[i] > 0]
    for count in range(1, MOST_READINGS + 1):
        taken = order[:count]
        decisions = []
        for each, variances in zip(contested, by_ruling, strict=True):
            ruling = each.ruling
            u = sqrt(max(ruling.u**2 - float(variances[taken].sum()), 0.0))
            decisions.append(magnitude_ruling(ruling.value, u, ruling.limit).verdict)
        if taken and is_settled(decisions):
            return Advice((), 0, tuple(measured.sources[i].name for i in taken))
    return Advice((), 0, tuple(measured.sources[i].name for i in order[:1]), settles=False)


def is_settled(decisions: list[Conformity]) -> bool:
    """True if one rule is out, or no rule is too close to call."""
    return Conformity.OUT in decisions or Conformity.TOO_CLOSE not in decisions


def _by_effort(most_readings: int) -> list[tuple[int, int]]:
    """Pairs of repeats and number of readings, least work first."""
    pairs = product(range(1, MOST_REPEATS + 1), range(1, most_readings + 1))
    return sorted(pairs, key=lambda pair: (pair[0] * pair[1], pair[1]))


def _variances(adjustment: Adjustment, gradient: Array) -> Array:
    """Part of a value's variance that each reading and prior contributes, array (n + m,)."""
    u = np.array([source.u for source in adjustment.sources])
    return np.asarray((gradient @ adjustment.sensitivity * u) ** 2)


def _outcomes(adjustment: Adjustment, gradient: Array, chosen: list[int]) -> list[_Outcome]:
    """Outcomes for a value after some readings were taken 1 to MOST_REPEATS times again.

    The weight of such a reading grows. In the normal matrix that is one rank more for each
    reading (Woodbury identity).

    Parameters
    ----------
    adjustment : Adjustment
    gradient : array (3 P,)
        Derivative of the value with respect to the coordinates of the pivots.
    chosen : list of int
        Indices of the readings among the items of the adjustment.
    """
    items = [adjustment.items[i] for i in chosen]
    variance = np.array([item.u**2 for item in items])
    # A N^-1 A^T of the chosen readings: their covariance less the covariance of their residuals.
    fitted = np.diag(variance) - adjustment.residual_covariance[np.ix_(chosen, chosen)]
    # N^-1 A^T = sensitivity * u^2, column by column.
    reach = gradient @ adjustment.sensitivity[:, chosen] * variance
    repeated = np.array([variances_with_repeats(item) for item in items]).T
    # The inverse of the weight that the repeats add to each reading.
    added = np.eye(len(chosen)) * (variance * repeated / (variance - repeated))[:, None, :]
    gain = np.linalg.solve(added + fitted, reach[:, None])[..., 0]
    variance_after = gradient @ adjustment.covariance @ gradient - gain @ reach
    shift = -gain @ np.array([item.residual for item in items])
    return [_Outcome(*pair) for pair in zip(variance_after.tolist(), shift.tolist(), strict=True)]


def variances_with_repeats(item: AdjustedReading) -> Array:
    """Variance of a reading after 1 to MOST_REPEATS further repeats, array (MOST_REPEATS,).

    The part above the floor falls with the number of repeats (GUM, JCGM 100:2008, 4.2.3).
    """
    floor, count = item.least_u**2, len(item.reading.repeats)
    further = np.arange(1, MOST_REPEATS + 1)
    return np.asarray(floor + (item.u**2 - floor) * count / (count + further))
