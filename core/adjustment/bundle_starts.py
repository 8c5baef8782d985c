"""First values of the cameras and points of a bundle adjustment."""

from collections.abc import Iterator

import numpy as np

from core.adjustment.bundle import Problem
from core.adjustment.camera import FOCAL, PLACE, UNKNOWNS, ray
from core.adjustment.resection import Sights, guesses
from core.kinematics.vectors import Array

MOST_STARTS = 6

LOOSE = 10.0
"""u of a coordinate, mm, from which the rays through its marks give its first value."""


def starts_of(problem: Problem) -> Iterator[Array]:
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


def _start(problem: Problem, cameras: Array, points: Array, u_points: Array) -> Array:
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
