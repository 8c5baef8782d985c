"""Marks as observations: their uncertainty, their residuals, and how well they are checked."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt
from typing import NamedTuple

import numpy as np

from core.adjustment.camera import FOCAL, PLACE
from core.adjustment.observation import NOTHING_REDUNDANT, IntArray
from core.kinematics.vectors import Array
from core.readings.photograph import Photograph
from core.statistics.distributions import two_sided_normal

MARKING_WITHIN = 0.002
"""Half-width of setting a mark, as part of the picture's width (common practice, no source)."""


class MarkCoordinate(NamedTuple):
    """One of the two coordinates of a mark, as a source of uncertainty; u in pixels."""

    name: str
    u: float


@dataclass(frozen=True)
class AdjustedMark:
    """A mark with its residual from the adjusted point.

    Attributes
    ----------
    name : str
        Its name among the readings, "photographs.1.track_bar.frame".
    photograph : int
        Number of its photograph, from 1.
    point : str
    u : float
        Standard uncertainty across and down, pixels.
    residual : (float, float)
        Adjusted less marked, across and down, pixels.
    redundancy_number : float
        Share of a mistake that the rest reveals, the mean of both coordinates.
    w : float or None
        Standardized residual of both coordinates together; None where nothing checks the mark.
    """

    name: str
    photograph: int
    point: str
    u: float
    residual: tuple[float, float]
    redundancy_number: float
    w: float | None

    @property
    def sources(self) -> tuple[MarkCoordinate, MarkCoordinate]:
        """Both coordinates, across and down, as sources of uncertainty."""
        return MarkCoordinate(self.name, self.u), MarkCoordinate(self.name, self.u)


@dataclass(frozen=True, eq=False)
class AdjustedCamera:
    """A camera as the adjustment places it.

    Attributes
    ----------
    photograph : Photograph
    unknowns : array (10,)
        As in `core.adjustment.camera`.
    """

    photograph: Photograph
    unknowns: Array

    @property
    def place(self) -> Array:
        """Place of the camera, array (3,), mm."""
        return self.unknowns[PLACE]

    @property
    def focal(self) -> float:
        """Focal length, pixels."""
        return float(self.unknowns[FOCAL])


@dataclass(frozen=True, eq=False)
class Network:
    """All unknowns of an adjustment with photographs.

    Attributes
    ----------
    points : tuple of str
        Names of the points, the pivots first.
    unknowns : array (n,)
        x, y, z of each point in turn, mm; then ten unknowns of each camera.
    cofactor : array (n, n)
        Their covariance.
    sensitivity : array (n, s)
        Their change with each source of the adjustment.
    """

    points: tuple[str, ...]
    unknowns: Array
    cofactor: Array
    sensitivity: Array

    def rows(self, point: str) -> slice:
        """Rows of the coordinates of a point."""
        start = 3 * self.points.index(point)
        return slice(start, start + 3)

    def place(self, point: str) -> Array:
        """Place of a point, array (3,), mm."""
        return self.unknowns[self.rows(point)]


@dataclass(frozen=True, eq=False)
class MarkTable:
    """The marks that count, as arrays of m rows.

    Attributes
    ----------
    names : tuple of str
    photographs, points : array of int
        Index of each mark's photograph and of its point.
    pixels : array (m, 2)
        Across and down from the middle of the picture.
    marking : array (m,)
        Half-width of setting the mark, pixels.
    sighting : float
        Half-width of sighting a pivot centre, mm.
    """

    names: tuple[str, ...]
    photographs: IntArray
    points: IntArray
    pixels: Array
    marking: Array
    sighting: float

    @classmethod
    def of(
        cls, photographs: Sequence[Photograph], points: Sequence[str], sighting: float
    ) -> "MarkTable":
        """The marks of photographs whose points are among some points."""
        rows = [
            (place, photograph, mark)
            for place, photograph in enumerate(photographs)
            for mark in photograph.marks
            if mark.counts and mark.point in points
        ]
        return cls(
            tuple(photograph.name_of(mark) for _, photograph, mark in rows),
            np.array([place for place, _, _ in rows], int),
            np.array([points.index(mark.point) for _, _, mark in rows], int),
            np.array(
                [
                    (mark.across - photograph.width / 2, mark.down - photograph.height / 2)
                    for _, photograph, mark in rows
                ]
            ).reshape(-1, 2),
            np.array([MARKING_WITHIN * photograph.width for _, photograph, _ in rows]),
            sighting,
        )

    def u(self, focal: Array, depth: Array) -> Array:
        """Standard uncertainties (m,), pixels: setting the mark, and sighting the pivot's centre.

        Parameters
        ----------
        focal : array (m,)
            pixels
        depth : array (m,)
            Distance of the point from the camera, mm.
        """
        sighting = focal * self.sighting / depth
        return np.asarray(np.hypot(self.marking, sighting) / sqrt(3))


def standardized(residual: Array, checked: Array) -> float | None:
    """Standardized residual of a mark.

    The quadratic form of both coordinates has the probability of a chi-square with two degrees of
    freedom. The standardized residual is the normal value with that probability, so that its limit
    is the same as for a reading.

    Parameters
    ----------
    residual : array (2,)
        In units of the mark's u.
    checked : array (2, 2)
        Covariance of the residual in those units.
    """
    values, vectors = np.linalg.eigh(checked)
    is_checked = values > NOTHING_REDUNDANT
    if not is_checked.any():
        return None
    square = float(((vectors.T @ residual)[is_checked] ** 2 / values[is_checked]).sum())
    return sqrt(square) if is_checked.sum() == 1 else two_sided_normal(square)
