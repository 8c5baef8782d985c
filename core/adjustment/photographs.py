"""Adjustment with photographs: marks, readings and priors give cameras and pivots together.

Bundle adjustment with the priors as observations. The solution is the most probable one, and its
covariance is the inverse of the normal matrix there. Levenberg-Marquardt steps with the analytic
Jacobian go from several starts; the best solution is taken.

References
----------
B. Triggs et al., Bundle adjustment: a modern synthesis, 2000.
"""

from collections.abc import Iterator, Sequence

import numpy as np

from core.adjustment.bundle import NoCamera, Problem, Solution, problem_of
from core.adjustment.bundle_starts import starts_of
from core.adjustment.camera import UNKNOWNS
from core.adjustment.descent import MOST_STEPS, SLOW, cofactor_of, descend
from core.adjustment.least_squares import Adjustment, adjusted_readings
from core.adjustment.marks import AdjustedCamera, AdjustedMark, Network, standardized
from core.adjustment.photograph_priors import Surroundings, camera_name
from core.adjustment.prior import Prior
from core.kinematics.vectors import Array
from core.readings.photograph import HUBS, Photograph
from core.readings.reading import CRITICAL, Instruments, Reading
from core.statistics.distributions import chi_square_limit

DIFFERENT = 1e-2
"""Difference of two solutions of one start set that is not rounding, in standard uncertainties of
each unknown with the others fixed."""

_TAKE_MORE = "set the marks again, or take one length or height with the tape"


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
    problem = problem_of(readings, instruments, pivots, photographs, surroundings)
    starts = iter([near.unknowns]) if near and _is_alike(problem, near) else starts_of(problem)
    solutions = _solutions(problem, starts, SLOW if has_small_residuals else MOST_STEPS)
    if not solutions:
        raise NoCamera(f"the marks place no camera; {_TAKE_MORE}")
    best = min(solutions, key=lambda solution: solution.chi_square)
    _refuse_behind(problem, best)
    cofactor = cofactor_of(best)
    _refuse_two_answers(best, cofactor, solutions, 3 * len(pivots))
    return _conclude(problem, best, cofactor, pivots, instruments)


def _solutions(problem: Problem, starts: Iterator[Array], most_steps: int) -> list[Solution]:
    """Minima that are reached from several starts; each appears once."""
    solutions: list[Solution] = []
    for start in starts:
        solution = descend(problem, start, most_steps)
        if solution is not None and all(_differ(solution, other) for other in solutions):
            solutions.append(solution)
    return solutions


def _is_alike(problem: Problem, near: Network) -> bool:
    """True if another solution has the same unknowns."""
    size = problem.size + problem.camera_value.size
    return near.points == problem.points and len(near.unknowns) == size


def _differ(solution: Solution, other: Solution) -> bool:
    scale = np.sqrt((other.design**2).sum(axis=0))
    return bool(np.abs((solution.unknowns - other.unknowns) * scale).max() > DIFFERENT)


def _refuse_behind(problem: Problem, best: Solution) -> None:
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
    best: Solution, cofactor: Array, solutions: Sequence[Solution], coordinates: int
) -> None:
    """Raise NoCamera where another solution fits about as well and has its pivots elsewhere."""
    u = np.sqrt(np.diag(cofactor))[:coordinates]
    for other in solutions:
        is_likely = other.chi_square - best.chi_square < CRITICAL**2
        moved = np.abs(other.unknowns - best.unknowns)[:coordinates] / u
        if is_likely and moved.max() > CRITICAL:
            raise NoCamera(f"the marks fit two different places of a camera; {_TAKE_MORE}")


def _conclude(
    problem: Problem,
    best: Solution,
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


def _camera_priors(problem: Problem) -> Iterator[Prior]:
    """Priors of the cameras, in the order of the unknowns."""
    for photograph, value, u in zip(
        problem.photographs, problem.camera_value, problem.camera_u, strict=True
    ):
        name = camera_name(photograph)
        for place in range(UNKNOWNS):
            yield Prior(name, {f"{name}.{place}": 1.0}, float(value[place]), float(u[place]))


def _adjusted_marks(
    problem: Problem, best: Solution, checked: Array, first: int
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
