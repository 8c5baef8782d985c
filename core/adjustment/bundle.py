"""The observations of a bundle adjustment: readings, priors and marks, with their derivatives."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

import numpy as np

from core.adjustment.camera import FOCAL, NEAREST, UNKNOWNS, project
from core.adjustment.least_squares import NoSolution
from core.adjustment.marks import MarkTable
from core.adjustment.observation import IntArray, Observations, predict
from core.adjustment.photograph_priors import (
    Surroundings,
    camera_prior,
    point_priors,
    points_of,
)
from core.adjustment.prior import Prior
from core.kinematics.vectors import Array
from core.readings.photograph import PHOTOGRAPHS, Photograph
from core.readings.reading import Instruments, Reading, standard_uncertainty
from core.readings.survey import ends_of


class MissingMark(ValueError):
    """A pivot is marked in no photograph and was not read with the tape."""

    def __init__(self, pivot: str) -> None:
        self.pivot = pivot
        super().__init__(pivot)


class NoCamera(NoSolution):
    """The marks do not place the cameras."""

    path = PHOTOGRAPHS


class Solution(NamedTuple):
    """Unknowns at a minimum, with the residuals and the design there.

    Attributes
    ----------
    unknowns : array (n,)
    misfit : array (s,)
        Observed less adjusted, in units of each source's u.
    design : array (s, n)
        Derivatives of the adjusted observations in those units.
    u_marks : array (m,)
    """

    unknowns: Array
    misfit: Array
    design: Array
    u_marks: Array

    @property
    def chi_square(self) -> float:
        return float(self.misfit @ self.misfit)


@dataclass(frozen=True, eq=False)
class Problem:
    """The observations of an adjustment with photographs: readings, priors, marks.

    Attributes
    ----------
    points : tuple of str
        Points whose places are unknown, the pivots first.
    photographs : tuple of Photograph
        Those with a mark that counts.
    used : tuple of Reading
    priors : tuple of Prior
        Priors of the points.
    value, u : array (r,)
        Readings, then priors; mm and rad.
    camera_value, camera_u : array (c, 10)
        Priors of the cameras.
    marks : MarkTable
    """

    points: tuple[str, ...]
    photographs: tuple[Photograph, ...]
    used: tuple[Reading, ...]
    priors: tuple[Prior, ...]
    value: Array
    u: Array
    camera_value: Array
    camera_u: Array
    marks: MarkTable

    @cached_property
    def observations(self) -> Observations:
        """Observation matrices of readings and priors for the points."""
        return Observations.of(self.used, self.points, self.priors)

    @property
    def size(self) -> int:
        """Number of coordinates of the points."""
        return 3 * len(self.points)

    @cached_property
    def columns(self) -> tuple[IntArray, IntArray]:
        """Columns of each mark's point (m, 3) and of its camera (m, 10)."""
        of_point = 3 * self.marks.points[:, None] + np.arange(3)
        of_camera = self.size + UNKNOWNS * self.marks.photographs[:, None] + np.arange(UNKNOWNS)
        return of_point, of_camera

    def at(self, unknowns: Array, u_marks: Array | None = None) -> Solution | None:
        """Residuals and design at some unknowns; None where a marked point is behind its camera.

        Where `u_marks` is not given, it is that of these unknowns.
        """
        of_point, of_camera = self.columns
        cameras = unknowns[self.size :].reshape(-1, UNKNOWNS)
        seen = project(unknowns[of_camera], unknowns[of_point])
        if (seen.depth <= NEAREST).any() or (cameras[:, FOCAL] <= 0).any():
            return None
        if u_marks is None:
            u_marks = self.marks.u(unknowns[of_camera][:, FOCAL], seen.depth)
        predicted, jacobian = predict(self.observations, unknowns[: self.size])
        first, second = len(predicted), len(predicted) + cameras.size
        misfit = np.concatenate(
            [
                (self.value - predicted) / self.u,
                ((self.camera_value - cameras) / self.camera_u).ravel(),
                ((self.marks.pixels - seen.pixels) / u_marks[:, None]).ravel(),
            ]
        )
        design = np.zeros((len(misfit), len(unknowns)))
        design[:first, : self.size] = jacobian / self.u[:, None]
        design[np.arange(first, second), np.arange(self.size, len(unknowns))] = (
            1 / self.camera_u.ravel()
        )
        rows = second + 2 * np.arange(len(u_marks))[:, None] + np.arange(2)
        design[rows[:, :, None], of_point[:, None]] = seen.by_point / u_marks[:, None, None]
        design[rows[:, :, None], of_camera[:, None]] = seen.by_camera / u_marks[:, None, None]
        return Solution(unknowns, misfit, design, u_marks)


def problem_of(
    readings: Sequence[Reading],
    instruments: Instruments,
    pivots: tuple[str, ...],
    photographs: Sequence[Photograph],
    surroundings: Surroundings,
) -> Problem:
    """Observations of an adjustment.

    Raises
    ------
    MissingMark, NoCamera
    """
    used = tuple(
        reading
        for reading in readings
        if reading.counts and set(ends_of(reading.name)) <= set(pivots)
    )
    taken = {reading.name for reading in used}
    marked = [mark.point for each in photographs for mark in each.marks if mark.counts]
    read = {reading.name for reading in readings}
    for pivot in pivots:
        if pivot not in marked and not {f"{pivot}.height", f"{pivot}.offset"} <= read:
            raise MissingMark(pivot)
    points = points_of(pivots, marked)
    seen = tuple(
        each
        for each in photographs
        if any(mark.counts and mark.point in points for mark in each.marks)
    )
    marks = MarkTable.of(seen, points, instruments.sighting)
    if not seen:
        raise NoCamera("no mark in them counts; mark the pivots in one of them")
    priors = point_priors(points, pivots, taken, surroundings)
    centre = _centre(used, surroundings)
    of_cameras = [camera_prior(each, surroundings.hub_height.value, centre) for each in seen]
    return Problem(
        points,
        seen,
        used,
        priors,
        np.array([reading.value for reading in used] + [prior.value for prior in priors]),
        np.array(
            [standard_uncertainty(reading, instruments) for reading in used]
            + [prior.u for prior in priors]
        ),
        np.array([value for value, _ in of_cameras]).reshape(-1, UNKNOWNS),
        np.array([u for _, u in of_cameras]).reshape(-1, UNKNOWNS),
        marks,
    )


def _centre(used: Sequence[Reading], surroundings: Surroundings) -> float:
    """About where the centre plane lies, y in mm: for the cameras, which may be anywhere near."""
    offsets = [offset.value for offset in surroundings.wheels.values()]
    if len(offsets) < 2:
        offsets = [reading.value for reading in used if reading.kind == "offset"]
    return -sum(offsets) / len(offsets) if offsets else 0.0
