"""What each reading of the survey would be with the pivots in given places."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from core.kinematics.linkage import Array
from core.readings.reading import Kind, Reading
from core.readings.survey import BRACES

IntArray = np.ndarray[tuple[Any, ...], np.dtype[np.int_]]

_AXIS: dict[Kind, tuple[int, float]] = {
    "station": (0, 1.0),
    "offset": (1, -1.0),
    "height": (2, 1.0),
}


@dataclass(frozen=True, eq=False, repr=False)
class Observations:
    """Which of the 3 P coordinates of P pivots each of n readings sees.

    Attributes
    ----------
    direct : array (n, 3 P)
        What heights, offsets and stations read of the coordinates; 0 for the others.
    distances, slopes : array of int
        Rows of the lengths and braces, and of the slopes.
    apart : array (n, 3, 3 P)
        From the coordinates to how far the two ends of those are apart; 0 for the others.
    """

    direct: Array
    distances: IntArray
    slopes: IntArray
    apart: Array

    @classmethod
    def of(cls, readings: Sequence[Reading], pivots: Sequence[str]) -> "Observations":
        """What these readings see of these pivots."""
        direct = np.zeros((len(readings), 3 * len(pivots)))
        apart = np.zeros((len(readings), 3, 3 * len(pivots)))
        rows: dict[bool, list[int]] = {False: [], True: []}
        for row, reading in enumerate(readings):
            if reading.kind in _AXIS:
                axis, sign = _AXIS[reading.kind]
                direct[row, 3 * pivots.index(reading.name.rpartition(".")[0]) + axis] = sign
                continue
            rows[reading.kind == "slope"].append(row)
            for name, sign in zip(ends_of(reading.name), (1.0, -1.0), strict=True):
                at = 3 * pivots.index(name)
                apart[row, (0, 1, 2), (at, at + 1, at + 2)] = sign
        return cls(direct, np.array(rows[False], int), np.array(rows[True], int), apart)


def ends_of(name: str) -> tuple[str, str]:
    """The two pivots between which a length, a slope or a brace is read."""
    link = name.partition(".")[0]
    return BRACES.get(name, (f"{link}.frame", f"{link}.axle"))


def predict(observations: Observations, points: Array) -> tuple[Array, Array]:
    """What each reading would be, and its derivatives.

    Parameters
    ----------
    observations : Observations
    points : array (P, 3)
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
            apart = observations.apart[rows]
            predicted[rows], toward = measure(apart @ coordinates)
            jacobian[rows] = (toward[:, None, :] @ apart)[:, 0]
    return predicted, jacobian


def curvature(observations: Observations, points: Array, weights: Array) -> Array:
    """Second derivatives of the weighted sum of what the readings would be, array (3 P, 3 P)."""
    total = np.zeros((points.size, points.size))
    for rows, bend in (
        (observations.distances, _distance_bend),
        (observations.slopes, _slope_bend),
    ):
        if rows.size:
            apart = observations.apart[rows]
            bent = (bend(apart @ points.ravel()) * weights[rows, None, None]) @ apart
            total += apart.reshape(-1, points.size).T @ bent.reshape(-1, points.size)
    return total


def _distance(apart: Array) -> tuple[Array, Array]:
    """Distances (m,) of ends that are `apart` (m, 3), and their derivatives (m, 3)."""
    distance = np.sqrt((apart * apart).sum(axis=1))
    return distance, apart / distance[:, None]


def _slope(apart: Array) -> tuple[Array, Array]:
    """Slopes (m,) of bars whose ends are `apart` (m, 3), and their derivatives (m, 3)."""
    ahead, across, rise = apart.T
    run = np.hypot(ahead, across)
    toward = np.array([-rise * ahead / run, -rise * across / run, run]).T
    return np.arctan2(rise, run), toward / (apart * apart).sum(axis=1, keepdims=True)


def _distance_bend(apart: Array) -> Array:
    square = (apart * apart).sum(axis=1)[:, None, None]
    return np.asarray(
        (np.eye(3) - apart[:, :, None] * apart[:, None, :] / square) / np.sqrt(square)
    )


def _slope_bend(apart: Array) -> Array:
    """Of arctan(rise / run), run across the floor: along the bar, across it and up."""
    ahead, across, rise = apart.T
    run, square = np.hypot(ahead, across), (apart * apart).sum(axis=1)
    along = apart[:, :2] / run[:, None]
    bend, mixed = 2 * run * rise / square**2, (rise**2 - run**2) / square**2
    turning = -rise / (run * square)
    total = np.empty((len(apart), 3, 3))
    # Across the bar is what is not along it: aside aside^T = I - along along^T.
    both = along[:, :, None] * along[:, None, :]
    total[:, :2, :2] = (bend - turning)[:, None, None] * both + turning[:, None, None] * np.eye(2)
    total[:, :2, 2] = total[:, 2, :2] = mixed[:, None] * along
    total[:, 2, 2] = -bend
    return total
