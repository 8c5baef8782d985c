"""Observation equations: each reading and prior as a function of the pivots, with derivatives."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from core.adjustment.prior import Prior
from core.kinematics.vectors import Array
from core.readings.reading import Kind, Reading
from core.readings.survey import ends_of

SHORTEST = 1.0
"""Least distance of two ends, mm. Where two ends fall together, nothing has a derivative."""

NOTHING_REDUNDANT = 1e-6
"""Redundancy number below which no other observation checks an observation."""

IntArray = np.ndarray[tuple[Any, ...], np.dtype[np.int_]]

_AXIS: dict[Kind, tuple[int, float]] = {
    "station": (0, 1.0),
    "offset": (1, -1.0),
    "height": (2, 1.0),
}


@dataclass(frozen=True, eq=False)
class Observations:
    """Observation matrices of n readings and priors for the 3 P coordinates of P pivots.

    Attributes
    ----------
    direct : array (n, 3 P)
        Coefficients of heights, offsets, stations and priors; 0 for other readings.
    distances, slopes : array of int
        Rows of the lengths and braces, and of the slopes.
    difference : array (n, 3, 3 P)
        Matrices from the coordinates to the difference of the two ends; 0 for other readings.
    """

    direct: Array
    distances: IntArray
    slopes: IntArray
    difference: Array

    @classmethod
    def of(
        cls, readings: Sequence[Reading], pivots: Sequence[str], priors: Sequence[Prior] = ()
    ) -> "Observations":
        """Observation matrices of these readings, then these priors, for these pivots."""
        count = len(readings) + len(priors)
        direct = np.zeros((count, 3 * len(pivots)))
        difference = np.zeros((count, 3, 3 * len(pivots)))
        rows: dict[bool, list[int]] = {False: [], True: []}
        for row, reading in enumerate(readings):
            columns = [3 * pivots.index(pivot) for pivot in ends_of(reading.name)]
            if reading.kind in _AXIS:
                axis, sign = _AXIS[reading.kind]
                direct[row, columns[0] + axis] = sign
                continue
            rows[reading.kind == "slope"].append(row)
            for at, sign in zip(columns, (1.0, -1.0), strict=True):
                difference[row, (0, 1, 2), (at, at + 1, at + 2)] = sign
        for row, prior in enumerate(priors, start=len(readings)):
            for coordinate, coefficient in prior.coefficients.items():
                pivot, _, letter = coordinate.rpartition(".")
                direct[row, 3 * pivots.index(pivot) + "xyz".index(letter)] = coefficient
        return cls(direct, np.array(rows[False], int), np.array(rows[True], int), difference)


def predict(observations: Observations, points: Array) -> tuple[Array, Array]:
    """Predicted readings and their derivatives.

    Parameters
    ----------
    observations : Observations
    points : array (P, 3) or (3 P,)
        The pivots' centres, mm.

    Returns
    -------
    array (n,), array (n, 3 P)
        mm or rad, and that per mm.
    """
    coordinates = points.ravel()
    predicted, jacobian = observations.direct @ coordinates, observations.direct.copy()
    for rows, measure in ((observations.distances, _distance), (observations.slopes, _slope)):
        if rows.size:
            difference = observations.difference[rows]
            predicted[rows], derivative = measure(difference @ coordinates)
            jacobian[rows] = (derivative[:, None, :] @ difference)[:, 0]
    return predicted, jacobian


def curvature(observations: Observations, points: Array, weights: Array) -> Array:
    """Second derivatives of the weighted sum of the predicted readings, array (3 P, 3 P)."""
    total = np.zeros((points.size, points.size))
    for rows, second in (
        (observations.distances, _distance_curvature),
        (observations.slopes, _slope_curvature),
    ):
        if rows.size:
            difference = observations.difference[rows]
            weighted = second(difference @ points.ravel()) * weights[rows, None, None] @ difference
            total += difference.reshape(-1, points.size).T @ weighted.reshape(-1, points.size)
    return total


def _run(difference: Array) -> Array:
    """Horizontal distances (m,) of two ends, at least SHORTEST."""
    return np.maximum(np.hypot(difference[:, 0], difference[:, 1]), SHORTEST)


def _square(difference: Array) -> Array:
    """Squares (m,) of the distances of two ends, at least that of SHORTEST."""
    return np.asarray(np.maximum((difference * difference).sum(axis=1), SHORTEST**2))


def _distance(difference: Array) -> tuple[Array, Array]:
    """Distances (m,) from differences (m, 3) of two ends, and their derivatives (m, 3)."""
    distance = np.sqrt(_square(difference))
    return distance, difference / distance[:, None]


def _slope(difference: Array) -> tuple[Array, Array]:
    """Slopes (m,) from differences (m, 3) of two ends, and their derivatives (m, 3)."""
    ahead, across, rise = difference.T
    run = _run(difference)
    derivative = np.array([-rise * ahead / run, -rise * across / run, run]).T
    return np.arctan2(rise, run), derivative / _square(difference)[:, None]


def _distance_curvature(difference: Array) -> Array:
    """Second derivatives (m, 3, 3) of distances."""
    square = _square(difference)[:, None, None]
    return np.asarray(
        (np.eye(3) - difference[:, :, None] * difference[:, None, :] / square) / np.sqrt(square)
    )


def _slope_curvature(difference: Array) -> Array:
    """Second derivatives (m, 3, 3) of arctan(rise / run), run across the floor."""
    rise, run, square = difference[:, 2], _run(difference), _square(difference)
    along = difference[:, :2] / run[:, None]
    in_line, mixed = 2 * run * rise / square**2, (rise**2 - run**2) / square**2
    sideways = -rise / (run * square)
    total = np.empty((len(difference), 3, 3))
    # The direction across the bar is square to it: across across^T = I - along along^T.
    square_of_along = along[:, :, None] * along[:, None, :]
    total[:, :2, :2] = (in_line - sideways)[:, None, None] * square_of_along
    total[:, :2, :2] += sideways[:, None, None] * np.eye(2)
    total[:, :2, 2] = total[:, 2, :2] = mixed[:, None] * along
    total[:, 2, 2] = -in_line
    return total
