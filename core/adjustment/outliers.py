"""Suspect readings, in groups of readings that cannot be told apart.

A reading whose standardized residual exceeds 3.29 (0.1 %, two-sided) is a suspect. Readings
whose residuals are correlated above 0.9 would show a mistake in the same way, so the whole group
is named. One mistake raises many residuals. So after the worst group is named, its leading reading
is set aside and the rest is examined again. The adjustment itself keeps every reading.

References
----------
W. Baarda, A testing procedure for use in geodetic networks, 1968 (data snooping).
"""

from dataclasses import dataclass

import numpy as np

from core.adjustment.least_squares import Adjustment
from core.adjustment.observation import NOTHING_REDUNDANT
from core.readings.reading import CRITICAL

INSEPARABLE = 0.9
"""Correlation of residuals above which readings cannot be told apart."""


@dataclass(frozen=True)
class SuspectGroup:
    """A group of readings of which one is probably mistaken.

    Attributes
    ----------
    readings : tuple of str
        Names, the most suspect one first.
    mistakes : tuple of float
        Mistake of each reading (read less true) if it is the wrong one; mm, or rad for slopes.
    """

    readings: tuple[str, ...]
    mistakes: tuple[float, ...]


def suspect_groups(adjustment: Adjustment) -> tuple[SuspectGroup, ...]:
    """Suspect groups, the worst first; () where every reading agrees with the others."""
    names = [item.reading.name for item in adjustment.items]
    u = np.array([item.u for item in adjustment.items])
    residual = np.array([item.residual for item in adjustment.items])
    covariance = adjustment.residual_covariance
    groups = []
    for _ in range(adjustment.redundancy):
        redundancy = np.diag(covariance) / u**2
        checked = redundancy > NOTHING_REDUNDANT
        spread = np.sqrt(np.where(checked, np.diag(covariance), np.inf))
        w = np.abs(residual) / spread
        # Where readings differ only by rounding, the best checked reading goes first: it needs
        # the smallest mistake to explain the residuals.
        order = [int(i) for i in np.lexsort((-redundancy.round(9), -w.round(6)))]
        leader = order[0]
        if w[leader] <= CRITICAL:
            break
        correlation = np.abs(covariance[leader]) / (spread[leader] * spread)
        group = [i for i in order if correlation[i] > INSEPARABLE]
        groups.append(
            SuspectGroup(
                tuple(names[i] for i in group),
                tuple(float(-residual[i] / redundancy[i]) for i in group),
            )
        )
        # A reading that is set aside is one more unknown: the part of the other residuals that
        # is correlated with it goes out of them.
        pull = covariance[:, leader] / covariance[leader, leader]
        residual = residual - pull * residual[leader]
        covariance = covariance - np.outer(pull, covariance[leader])
    return tuple(groups)
