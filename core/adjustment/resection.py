"""First places of cameras: each from its own marks, with the points at their usual places.

The sum of squares has several minima, because a view from the left and a view from the right can
look alike. So the search starts from several directions at once.
"""

from typing import NamedTuple

import numpy as np

from core.adjustment.camera import AIM, FOCAL, NEAREST, PLACE, UNKNOWNS, project
from core.kinematics.vectors import Array

STEPS = 12
DAMPING = 1e-2
LONGEST_STEP = np.array([500.0] * 3 + [0.3] * 3)
"""Longest step of a camera's place (mm) and aim (rad)."""

DISTANCE = 2_500.0
"""Distance of the first cameras from the axle's middle, mm."""
BEARINGS = np.radians([0.0, -40.0, 40.0, 180.0])
"""Directions of the first cameras from the axle's middle, from straight ahead to the left, rad."""

ALIKE = np.array([150.0] * 3 + [0.05] * 3)
"""Two cameras that differ by less in place (mm) and aim (rad) are one camera."""

FAR_WORSE = 200.0
"""Difference of the sums of squares beyond which a guess is not worth a trial."""


class Guess(NamedTuple):
    """A guess of a camera's unknowns (10,) and its sum of squares."""

    camera: Array
    misfit: float


class Sights(NamedTuple):
    """Marks of one photograph with the usual places of their points.

    Attributes
    ----------
    pixels, u : array (m, 2), array (m,)
        Marks from the middle of the picture, and their u, pixels.
    points, u_points : array (m, 3)
        Usual places and their u, mm.
    """

    pixels: Array
    u: Array
    points: Array
    u_points: Array


def guesses(sights: Sights, value: Array, u: Array) -> tuple[Guess, ...]:
    """Guesses of the camera of a photograph, the best first; at least one.

    Parameters
    ----------
    sights : Sights
    value, u : array (10,)
        Prior of the camera's unknowns.
    """
    scale = value[FOCAL] / DISTANCE
    variance = sights.u[:, None] ** 2 + (scale * sights.u_points[:, 1:]) ** 2
    weight = 1 / np.sqrt(variance)
    cameras = _first_cameras(value)
    best, misfit = cameras.copy(), np.full(len(cameras), np.inf)
    normal = np.tile(np.diag(1 / u**2), (len(cameras), 1, 1))
    downhill = (value - cameras) / u**2
    damping = np.full(len(cameras), DAMPING)
    for _ in range(STEPS):
        trial = _normal_equations(sights, weight, cameras, value, u)
        better = trial[0] < misfit
        best[better] = cameras[better]
        misfit[better], normal[better], downhill[better] = (part[better] for part in trial)
        damping = np.where(better, damping / 5, damping * 5)
        diagonal = np.einsum("nii->ni", normal)
        damped = normal + (damping[:, None] * diagonal)[:, :, None] * np.eye(UNKNOWNS)
        step = np.linalg.solve(damped, downhill[:, :, None])[:, :, 0]
        stretch = np.abs(step[:, :6] / LONGEST_STEP).max(axis=1)
        cameras = best + step / np.maximum(stretch, 1.0)[:, None]
    return _distinct(best, misfit)


def _first_cameras(value: Array) -> Array:
    """Cameras (n, 10) around the axle's middle that look at it."""
    cameras = np.repeat(value[None], len(BEARINGS), axis=0)
    around = np.stack([np.cos(BEARINGS) - 1, np.sin(BEARINGS), 0 * BEARINGS], axis=-1)
    cameras[:, PLACE] += DISTANCE * around
    cameras[:, AIM.start] = BEARINGS
    return cameras


def _normal_equations(
    sights: Sights, weight: Array, cameras: Array, value: Array, u: Array
) -> tuple[Array, Array, Array]:
    """Sums of squares (n,), normal matrices (n, 10, 10) and downhill vectors (n, 10)."""
    count, marks = len(cameras), len(sights.points)
    seen = project(np.repeat(cameras, marks, axis=0), np.tile(sights.points, (count, 1)))
    residual = (sights.pixels - seen.pixels.reshape(count, marks, 2)) * weight
    design = seen.by_camera.reshape(count, marks, 2, UNKNOWNS) * weight[:, :, None]
    from_prior = (value - cameras) / u
    misfit = (residual**2).sum(axis=(1, 2)) + (from_prior**2).sum(axis=1)
    misfit[(seen.depth.reshape(count, marks) <= NEAREST).any(axis=1)] = np.inf
    normal = np.einsum("nmia,nmib->nab", design, design) + np.diag(1 / u**2)
    downhill = np.einsum("nmia,nmi->na", design, residual) + from_prior / u
    return misfit, normal, downhill


def _distinct(cameras: Array, misfit: Array) -> tuple[Guess, ...]:
    """Guesses that differ, the best first."""
    chosen: list[Guess] = []
    for i in np.argsort(misfit, kind="stable"):
        is_new = all((np.abs(cameras[i] - each.camera)[:6] > ALIKE).any() for each in chosen)
        if not chosen or (is_new and misfit[i] - chosen[0].misfit < FAR_WORSE):
            chosen.append(Guess(cameras[i], float(misfit[i])))
    return tuple(chosen)
