"""Suspect readings, in groups of readings that cannot be told apart.

A reading whose standardized residual exceeds 3.29 (0.1 %, two-sided) is a suspect. Readings
whose residuals are correlated above 0.9 would show a mistake in the same way, so the whole group
is named. One mistake raises many residuals. So after the worst group is named, its leading reading
is set aside and the rest is examined again. The adjustment itself keeps every reading.

A mark in a photograph counts as one reading with two coordinates.

References
----------
W. Baarda, A testing procedure for use in geodetic networks, 1968 (data snooping).
"""

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from core.adjustment.least_squares import Adjustment
from core.adjustment.marks import standardized
from core.adjustment.observation import NOTHING_REDUNDANT
from core.kinematics.vectors import Array
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
        Mistake of each reading (read less true) if it is the wrong one; mm, or rad for slopes. For
        a mark in a photograph its distance, pixels.
    """

    readings: tuple[str, ...]
    mistakes: tuple[float, ...]


class _Test(NamedTuple):
    """Standardized residual, redundancy number and mistake of a reading or a mark."""

    w: float
    redundancy_number: float
    mistake: float


def suspect_groups(adjustment: Adjustment) -> tuple[SuspectGroup, ...]:
    """Suspect groups, the worst first; () where every reading agrees with the others."""
    observed = adjustment.observed
    if all(each.w is None or abs(each.w) <= CRITICAL for each in observed):
        return ()
    names = [each.name for each in observed]
    rows = _rows(adjustment)
    u = np.array([*(item.u for item in adjustment.items), *_u_of_marks(adjustment)])
    residual = np.array(
        [
            *(item.residual for item in adjustment.items),
            *(part for mark in adjustment.marks for part in mark.residual),
        ]
    )
    # In units of each reading's own u.
    residual, covariance = residual / u, adjustment.residual_covariance / np.outer(u, u)
    groups = []
    for _ in range(adjustment.redundancy):
        tests = [_test(residual[each], covariance[each, each], u[each.start]) for each in rows]
        # Where readings differ only by rounding, the best checked reading goes first: it needs
        # the smallest mistake to explain the residuals.
        order = sorted(
            range(len(rows)),
            key=lambda i: (-round(tests[i].w, 6), -round(tests[i].redundancy_number, 9)),
        )
        first = order[0]
        if tests[first].w <= CRITICAL:
            break
        leader = rows[first]
        group = [
            i
            for i in order
            if i == first or _correlation(covariance, leader, rows[i]) > INSEPARABLE
        ]
        groups.append(
            SuspectGroup(tuple(names[i] for i in group), tuple(tests[i].mistake for i in group))
        )
        # A reading that is set aside is one more unknown: the part of the other residuals that
        # is correlated with it goes out of them.
        pull = covariance[:, leader] @ _inverse(covariance[leader, leader])
        residual = residual - pull @ residual[leader]
        covariance = covariance - pull @ covariance[leader]
    return tuple(groups)


def _rows(adjustment: Adjustment) -> list[slice]:
    """Rows of the residuals of each reading, and of each mark, which has two."""
    readings, marks = len(adjustment.items), len(adjustment.marks)
    return [
        *(slice(i, i + 1) for i in range(readings)),
        *(slice(i, i + 2) for i in range(readings, readings + 2 * marks, 2)),
    ]


def _u_of_marks(adjustment: Adjustment) -> list[float]:
    """Standard uncertainty of each coordinate of the marks, pixels."""
    return [mark.u for mark in adjustment.marks for _ in mark.residual]


def _test(residual: Array, covariance: Array, u: float) -> _Test:
    """Test of a reading (1 row) or a mark (2 rows).

    The mistake is the change of the reading that would take its residual away.
    """
    w = standardized(residual, covariance)
    mistake = -u * (_inverse(covariance) @ residual)
    return _Test(
        0.0 if w is None else w,
        float(np.trace(covariance)) / len(covariance),
        float(mistake[0]) if len(mistake) == 1 else float(np.hypot(*mistake)),
    )


def _inverse(covariance: Array) -> Array:
    """Inverse of a covariance; 0 in a direction that nothing checks."""
    values, vectors = np.linalg.eigh(covariance)
    is_checked = values > NOTHING_REDUNDANT
    return np.asarray(vectors[:, is_checked] / values[is_checked] @ vectors[:, is_checked].T)


def _correlation(covariance: Array, leader: slice, other: slice) -> float:
    """Largest correlation of the residuals of two readings or marks (canonical correlation)."""
    cross = covariance[leader, other]
    square = (
        _inverse(covariance[leader, leader]) @ cross @ _inverse(covariance[other, other]) @ cross.T
    )
    return float(np.sqrt(max(np.linalg.eigvals(square).real.max(), 0.0)))
