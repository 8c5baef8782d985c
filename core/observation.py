"""What each reading of the survey would be with the pivots in given places."""

from collections.abc import Sequence

import numpy as np

from core.linkage import Array
from core.reading import Kind, Reading
from core.survey import BRACES

_AXIS: dict[Kind, tuple[int, float]] = {
    "station": (0, 1.0),
    "offset": (1, -1.0),
    "height": (2, 1.0),
}


def ends_of(name: str) -> tuple[str, str]:
    """The two pivots between which a length, a slope or a brace is read."""
    link = name.partition(".")[0]
    return BRACES.get(name, (f"{link}.frame", f"{link}.axle"))


def predict(
    readings: Sequence[Reading], pivots: Sequence[str], points: Array
) -> tuple[Array, Array]:
    """What each reading would be, and its derivatives.

    Parameters
    ----------
    readings : sequence of Reading, n of them
    pivots : sequence of str, P of them
    points : array (P, 3)
        Their centres, mm.

    Returns
    -------
    array (n,), array (n, 3 P)
        mm or rad, and that per mm.
    """
    predicted = np.empty(len(readings))
    jacobian = np.zeros((len(readings), points.size))
    for row, reading in enumerate(readings):
        if reading.kind in _AXIS:
            axis, sign = _AXIS[reading.kind]
            pivot = pivots.index(reading.name.rpartition(".")[0])
            predicted[row] = sign * points[pivot, axis]
            jacobian[row, 3 * pivot + axis] = sign
            continue
        first, second = _ends(reading, pivots)
        apart = points[first] - points[second]
        if reading.kind == "slope":
            run = np.hypot(apart[0], apart[1])
            predicted[row] = np.arctan2(apart[2], run)
            toward = np.array([-apart[2] * apart[0] / run, -apart[2] * apart[1] / run, run])
            toward /= apart @ apart
        else:
            predicted[row] = np.sqrt(apart @ apart)
            toward = apart / predicted[row]
        jacobian[row, 3 * first : 3 * first + 3] = toward
        jacobian[row, 3 * second : 3 * second + 3] = -toward
    return predicted, jacobian


def curvature(
    readings: Sequence[Reading], pivots: Sequence[str], points: Array, weights: Array
) -> Array:
    """Second derivatives of the weighted sum of what the readings would be, array (3 P, 3 P)."""
    total = np.zeros((len(points), 3, len(points), 3))
    for reading, weight in zip(readings, weights, strict=True):
        if reading.kind in _AXIS:
            continue
        first, second = _ends(reading, pivots)
        apart = points[first] - points[second]
        block = weight * (_of_slope(apart) if reading.kind == "slope" else _of_length(apart))
        total[first, :, first] += block
        total[second, :, second] += block
        total[first, :, second] -= block
        total[second, :, first] -= block
    return total.reshape(points.size, points.size)


def _ends(reading: Reading, pivots: Sequence[str]) -> tuple[int, int]:
    first, second = ends_of(reading.name)
    return pivots.index(first), pivots.index(second)


def _of_length(apart: Array) -> Array:
    square = apart @ apart
    return np.asarray((_EYE - apart[:, None] * apart / square) / np.sqrt(square))


def _of_slope(apart: Array) -> Array:
    """Of arctan(rise / run), run across the floor: along the bar, across it and up."""
    x, y, rise = apart.tolist()
    run, square = np.hypot(x, y), apart @ apart
    axes = np.array([[x / run, y / run, 0.0], [-y / run, x / run, 0.0], [0.0, 0.0, 1.0]])
    bend, mixed = 2 * run * rise / square**2, (rise**2 - run**2) / square**2
    own = np.array([[bend, 0.0, mixed], [0.0, -rise / (run * square), 0.0], [mixed, 0.0, -bend]])
    return np.asarray(axes.T @ own @ axes)


_EYE = np.eye(3)
