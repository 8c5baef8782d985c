"""Adjustment with photographs: marks, readings and priors give cameras and pivots together.

Bundle adjustment with the priors as observations. The solution is the most probable one, and its
covariance is the inverse of the normal matrix there. Levenberg-Marquardt steps with the analytic
Jacobian go from several starts; the best solution is taken.

References
----------
B. Triggs et al., Bundle adjustment: a modern synthesis, 2000.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

import numpy as np

from core.adjustment.camera import FOCAL, NEAREST, PLACE, UNKNOWNS, project, ray
from core.adjustment.least_squares import Adjustment, NoSolution, adjusted_readings
from core.adjustment.marks import (
    AdjustedCamera,
    AdjustedMark,
    MarkTable,
    Network,
    standardized,
)
from core.adjustment.observation import IntArray, Observations, predict
from core.adjustment.photograph_priors import (
    Surroundings,
    camera_name,
    camera_prior,
    point_priors,
    points_of,
)
from core.adjustment.prior import Prior
from core.adjustment.resection import Sights, guesses
from core.kinematics.vectors import Array
from core.readings.photograph import HUBS, PHOTOGRAPHS, Photograph
from core.readings.reading import CRITICAL, Instruments, Reading, standard_uncertainty
from core.readings.survey import ends_of
from core.statistics.distributions import chi_square_limit

MOST_STEPS = 130
CONVERGED = 1e-7
"""Largest last step, in standard uncertainties of each unknown with the others fixed."""

SLOW = 60
"""Steps after which the second derivatives are taken."""
DIFFERENCE = 1e-4
"""Step of their differences, in standard uncertainties of each unknown with the others fixed."""
MOST_ROUNDS = 20
SETTLED = 1e-9
"""Largest relative change of a mark's uncertainty from one round to the next."""

FIRST_DAMPING = 1e-3
LEAST_DAMPING, MOST_DAMPING = 1e-9, 1e9
BETTER_FACTOR, WORSE_FACTOR = 5.0, 3.0
"""Damping falls with each better step, and grows with each worse one."""
MOST_STARTS = 6

DIFFERENT = 1e-2
"""Difference of two solutions of one start set, in those units, that is not rounding."""

_TAKE_MORE = "set the marks again, or take one length or height with the tape"


class MissingMark(ValueError):
    """A pivot is marked in no photograph and was not read with the tape."""

    def __init__(self, pivot: str) -> None:
        self.pivot = pivot
        super().__init__(pivot)


class NoCamera(NoSolution):
    """The marks do not place the cameras."""

    path = PHOTOGRAPHS


class _Solution(NamedTuple):
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
class _Problem:
    """The observations of an adjustment with photographs: readings, priors, marks."""

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

    def at(self, unknowns: Array, u_marks: Array | None = None) -> _Solution | None:
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
        return _Solution(unknowns, misfit, design, u_marks)


def adjust_with_photographs(
    readings: Sequence[Reading],
    instruments: Instruments,
    pivots: tuple[str, ...],
    photographs: Sequence[Photograph],
    surroundings: Surroundings,
    near: Network | None = None,
    has_small_residuals: bool = False,
) -> Adjustment:
    """Adjust the pivots of a vehicle to its photographs, its readings and what is usual.

    y = 0 lies on the datum line where an offset was read, else midway between the hubs.

    Parameters
    ----------
    readings : sequence of Reading
        As for `core.adjustment.least_squares.adjust`; none is needed.
    instruments : Instruments
    pivots : tuple of str
        Pivots that the vehicle has.
    photographs : sequence of Photograph
    surroundings : Surroundings
    near : Network or None
        A solution of nearly the same observations. The only start is there.
    has_small_residuals : bool
        True where only a solution with small residuals is looked for: the search then ends early.

    Raises
    ------
    MissingMark
        A pivot is not marked, and its height or its offset was not read.
    NoCamera
        No mark counts, the steps do not converge, a camera comes out behind the axle, or two
        solutions that differ by more than their uncertainty fit about equally well.
    """
    problem = _problem(readings, instruments, pivots, photographs, surroundings)
    starts = iter([near.unknowns]) if near and _is_alike(problem, near) else _starts(problem)
    solutions = _solutions(problem, starts, SLOW if has_small_residuals else MOST_STEPS)
    if not solutions:
        raise NoCamera(f"the marks place no camera; {_TAKE_MORE}")
    best = min(solutions, key=lambda solution: solution.chi_square)
    _refuse_behind(problem, best)
    cofactor = _cofactor(best)
    _refuse_two_answers(best, cofactor, solutions, 3 * len(pivots))
    return _conclude(problem, best, cofactor, pivots, instruments)


def _problem(
    readings: Sequence[Reading],
    instruments: Instruments,
    pivots: tuple[str, ...],
    photographs: Sequence[Photograph],
    surroundings: Surroundings,
) -> _Problem:
    """The observations; raises MissingMark and NoCamera."""
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
    return _Problem(
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


def _solutions(problem: _Problem, starts: Iterator[Array], most_steps: int) -> list[_Solution]:
    """Minima that are reached from several starts; each appears once."""
    solutions: list[_Solution] = []
    for start in starts:
        solution = _descend(problem, start, most_steps)
        if solution is not None and all(_differ(solution, other) for other in solutions):
            solutions.append(solution)
    return solutions


def _is_alike(problem: _Problem, near: Network) -> bool:
    """True if another solution has the same unknowns."""
    size = problem.size + problem.camera_value.size
    return near.points == problem.points and len(near.unknowns) == size


def _differ(solution: _Solution, other: _Solution) -> bool:
    scale = np.sqrt((other.design**2).sum(axis=0))
    return bool(np.abs((solution.unknowns - other.unknowns) * scale).max() > DIFFERENT)


def _starts(problem: _Problem) -> Iterator[Array]:
    """First unknowns: the best guess of every camera, then each second guess in turn."""
    direct = problem.observations.direct / problem.u[:, None]
    is_direct = direct.any(axis=1)
    normal = direct.T @ direct
    covariance = np.linalg.inv(normal)
    misfit = (problem.value / problem.u) * is_direct
    points = (covariance @ (direct.T @ misfit)).reshape(-1, 3)
    u_points = np.sqrt(np.diag(covariance)).reshape(-1, 3)
    by_photograph = []
    for i, (value, u) in enumerate(zip(problem.camera_value, problem.camera_u, strict=True)):
        rows = problem.marks.photographs == i
        seen = problem.marks.points[rows]
        u_mark = problem.marks.u(value[FOCAL], value[0])[rows]
        sights = Sights(problem.marks.pixels[rows], u_mark, points[seen], u_points[seen])
        by_photograph.append(guesses(sights, value, u))
    best = np.array([first.camera for first, *_ in by_photograph]).reshape(-1, UNKNOWNS)
    others = sorted(
        (guess.misfit - first.misfit, i, place)
        for i, (first, *rest) in enumerate(by_photograph)
        for place, guess in enumerate(rest, start=1)
    )
    yield _start(problem, best, points, u_points)
    for _, i, place in others[: MOST_STARTS - 1]:
        cameras = best.copy()
        cameras[i] = by_photograph[i][place].camera
        yield _start(problem, cameras, points, u_points)


def _start(problem: _Problem, cameras: Array, points: Array, u_points: Array) -> Array:
    """First unknowns: each point on the rays through its marks, as far ahead as is usual."""
    placed = points.copy()
    sums, counts = np.zeros_like(points), np.zeros(len(points))
    for pixels, photograph, point in zip(
        problem.marks.pixels, problem.marks.photographs, problem.marks.points, strict=True
    ):
        camera = cameras[photograph]
        direction = ray(camera, pixels)
        along = (points[point, 0] - camera[0]) / direction[0]
        if along > 0:
            sums[point] += camera[PLACE] + along * direction
            counts[point] += 1
    is_seen = counts > 0
    on_rays = sums[is_seen] / counts[is_seen, None]
    # A coordinate that was read, or that is well known, stays where it is.
    is_loose = u_points[is_seen] > LOOSE
    placed[is_seen] = np.where(is_loose, on_rays, points[is_seen])
    return np.concatenate([placed.ravel(), cameras.ravel()])


LOOSE = 10.0
"""u of a coordinate, mm, from which the rays through its marks give its first value."""


def _descend(problem: _Problem, start: Array, most_steps: int) -> _Solution | None:
    """The minimum below a start; None where there is none.

    The uncertainty of a mark depends on its distance from the camera. It is held while the steps go
    down, and computed again at their end, until it stays.
    """
    here = problem.at(start)
    for _ in range(MOST_ROUNDS):
        if here is None:
            return None
        there = _descend_with_fixed_weights(problem, here, most_steps)
        if there is None:
            return None
        here = problem.at(there.unknowns)
        if here is not None and np.abs(here.u_marks / there.u_marks - 1).max() < SETTLED:
            return here
    return None


def _descend_with_fixed_weights(
    problem: _Problem, here: _Solution, most_steps: int
) -> _Solution | None:
    """The minimum by Levenberg-Marquardt steps; None where they do not converge.

    A mark or a reading that is far off leaves a large residual, and then the normal matrix alone
    converges slowly. After some steps the true second derivatives take its place.
    """
    damping, bends = FIRST_DAMPING, _normal(here)
    for count in range(most_steps):
        scale = np.sqrt(np.diag(_normal(here)))
        downhill = here.design.T @ here.misfit / scale
        step = _step(bends / np.outer(scale, scale), downhill, damping)
        if np.abs(step).max() < CONVERGED and damping <= FIRST_DAMPING:
            return here
        there = problem.at(here.unknowns + step / scale, here.u_marks)
        if there is None or there.chi_square > here.chi_square * (1 + 1e-12):
            damping *= WORSE_FACTOR
            if damping > MOST_DAMPING:
                return None
            continue
        here = there
        damping = max(damping / BETTER_FACTOR, LEAST_DAMPING)
        bends = _normal(here) if count < SLOW else _second_derivatives(problem, here)
    return None


def _normal(here: _Solution) -> Array:
    return np.asarray(here.design.T @ here.design)


def _step(scaled: Array, downhill: Array, damping: float) -> Array:
    """Damped step; where the matrix is not positive definite, one that leads downhill.

    That step takes the matrix with the magnitudes of its eigenvalues.
    """
    damped = scaled + damping * np.eye(len(scaled))
    try:
        np.linalg.cholesky(damped)
        return np.asarray(np.linalg.solve(damped, downhill))
    except np.linalg.LinAlgError:
        values, vectors = np.linalg.eigh(scaled)
        return np.asarray(vectors @ (vectors.T @ downhill / (np.abs(values) + damping)))


def _second_derivatives(problem: _Problem, here: _Solution) -> Array:
    """Second derivatives (n, n) of half the sum of squares, by differences of the first ones."""
    uphill = -here.design.T @ here.misfit
    rows = []
    for i, step in enumerate(DIFFERENCE / np.sqrt(np.diag(_normal(here)))):
        unknowns = here.unknowns.copy()
        unknowns[i] += step
        beside = problem.at(unknowns, here.u_marks)
        if beside is None:
            return _normal(here)
        rows.append((-beside.design.T @ beside.misfit - uphill) / step)
    both = np.array(rows)
    return np.asarray((both + both.T) / 2)


def _cofactor(solution: _Solution) -> Array:
    normal = solution.design.T @ solution.design
    scale = np.sqrt(np.diag(normal))
    return np.asarray(np.linalg.inv(normal / np.outer(scale, scale)) / np.outer(scale, scale))


def _refuse_behind(problem: _Problem, best: _Solution) -> None:
    """Raise NoCamera where a camera is behind the axle, so that left and right are exchanged."""
    cameras = best.unknowns[problem.size :].reshape(-1, UNKNOWNS)
    hubs = [problem.points.index(hub) for hub in HUBS]
    axle = best.unknowns[: problem.size].reshape(-1, 3)[hubs, 0].mean()
    for photograph, camera in zip(problem.photographs, cameras, strict=True):
        if camera[0] <= axle:
            raise NoCamera(
                f"photograph {photograph.number}: the marks place the camera behind the axle; "
                "take it from the front, and look whether left and right are exchanged"
            )


def _refuse_two_answers(
    best: _Solution, cofactor: Array, solutions: Sequence[_Solution], coordinates: int
) -> None:
    """Raise NoCamera where another solution fits about as well and has its pivots elsewhere."""
    u = np.sqrt(np.diag(cofactor))[:coordinates]
    for other in solutions:
        is_likely = other.chi_square - best.chi_square < CRITICAL**2
        moved = np.abs(other.unknowns - best.unknowns)[:coordinates] / u
        if is_likely and moved.max() > CRITICAL:
            raise NoCamera(f"the marks fit two different places of a camera; {_TAKE_MORE}")


def _conclude(
    problem: _Problem,
    best: _Solution,
    cofactor: Array,
    pivots: tuple[str, ...],
    instruments: Instruments,
) -> Adjustment:
    cameras = best.unknowns[problem.size :].reshape(-1, UNKNOWNS)
    u = np.concatenate([problem.u, problem.camera_u.ravel(), np.repeat(best.u_marks, 2)])
    residual = -best.misfit * u
    checked = np.eye(len(u)) - best.design @ cofactor @ best.design.T
    readings = len(problem.used)
    first_mark = len(u) - 2 * len(best.u_marks)
    # Sources are in the order of the design: readings, priors, marks.
    sensitivity = cofactor @ best.design.T / u
    seen = np.r_[0:readings, first_mark : len(u)]
    redundancy = len(u) - len(best.unknowns)
    coordinates = 3 * len(pivots)
    return Adjustment(
        pivots,
        best.unknowns[:coordinates].reshape(-1, 3),
        cofactor[:coordinates, :coordinates],
        adjusted_readings(
            problem.used, instruments, u, residual, np.clip(np.diag(checked), 0.0, 1.0)
        ),
        (*problem.priors, *_camera_priors(problem)),
        sensitivity[:coordinates],
        (checked * np.outer(u, u))[np.ix_(seen, seen)],
        redundancy,
        best.chi_square,
        chi_square_limit(redundancy),
        marks=tuple(_adjusted_marks(problem, best, checked, first_mark)),
        cameras=tuple(
            AdjustedCamera(photograph, camera)
            for photograph, camera in zip(problem.photographs, cameras, strict=True)
        ),
        network=Network(problem.points, best.unknowns, cofactor, sensitivity),
    )


def _camera_priors(problem: _Problem) -> Iterator[Prior]:
    """Priors of the cameras, in the order of the unknowns."""
    for photograph, value, u in zip(
        problem.photographs, problem.camera_value, problem.camera_u, strict=True
    ):
        name = camera_name(photograph)
        for place in range(UNKNOWNS):
            yield Prior(name, {f"{name}.{place}": 1.0}, float(value[place]), float(u[place]))


def _adjusted_marks(
    problem: _Problem, best: _Solution, checked: Array, first: int
) -> Iterator[AdjustedMark]:
    for i, name in enumerate(problem.marks.names):
        rows = slice(first + 2 * i, first + 2 * i + 2)
        of_mark = checked[rows, rows]
        across, down = (-best.misfit[rows] * best.u_marks[i]).tolist()
        yield AdjustedMark(
            name,
            problem.photographs[problem.marks.photographs[i]].number,
            problem.points[problem.marks.points[i]],
            float(best.u_marks[i]),
            (across, down),
            float(np.clip(np.trace(of_mark) / 2, 0.0, 1.0)),
            standardized(best.misfit[rows], of_mark),
        )
