"""The camera model: a pinhole with square pixels and one radial term.

World axes follow ISO 8855:2011: x ahead, y to the left, z up. Camera axes point to the right, down
and forward. With (X, Y, Z) in camera axes and r2 = (X^2 + Y^2) / Z^2 a point appears at
u = w/2 + cu + f (1 + k r2) X / Z, v = h/2 + cv + f (1 + k r2) Y / Z, in pixels from the top left.
The model is that of D. C. Brown, Close-range camera calibration, 1971, with its first radial term
alone.
"""

from dataclasses import dataclass

import numpy as np

from core.kinematics.vectors import Array

UNKNOWNS = 10
"""Unknowns of a camera, in this order: x, y, z in mm; yaw, pitch, roll in rad; f in pixels; k as a
plain number; cu, cv in pixels."""

PLACE, AIM, FOCAL, RADIAL, CENTRE = slice(0, 3), slice(3, 6), 6, 7, slice(8, 10)

NEAREST = 50.0
"""mm; a point that lies less far in front of the camera has no picture."""

_LOOKS_BACK = np.array([[0.0, 1.0, 0.0], [0.0, 0.0, -1.0], [-1.0, 0.0, 0.0]])
"""Camera axes right, down and forward of a level camera that looks straight back."""


@dataclass(frozen=True, eq=False)
class Projection:
    """Pictures of points.

    Attributes
    ----------
    pixels : array (n, 2)
        Across and down from the middle of the picture.
    by_camera : array (n, 2, 10)
        Derivatives by the unknowns of the camera.
    by_point : array (n, 2, 3)
        Derivatives by the point, pixels per mm.
    depth : array (n,)
        Distance in front of the camera along its axis, mm.
    """

    pixels: Array
    by_camera: Array
    by_point: Array
    depth: Array


def project(cameras: Array, points: Array) -> Projection:
    """Pictures of points, each in a camera of its own.

    Parameters
    ----------
    cameras : array (n, 10)
    points : array (n, 3)
        mm
    """
    rotation, turns = _rotations(cameras[:, AIM])
    offset = points - cameras[:, PLACE]
    seen = np.einsum("nij,nj->ni", rotation, offset)
    depth = seen[:, 2]
    safe = np.where(np.abs(depth) < NEAREST, NEAREST, depth)
    slant = seen[:, :2] / safe[:, None]
    square = (slant * slant).sum(axis=1)
    focal, radial = cameras[:, FOCAL], cameras[:, RADIAL]
    growth = 1 + radial * square
    pixels = (focal * growth)[:, None] * slant + cameras[:, CENTRE]
    # The derivative of growth * slant by slant is growth I + 2 k slant slant^T.
    by_slant = (focal * growth)[:, None, None] * np.eye(2) + (
        2 * (focal * radial)[:, None, None] * slant[:, :, None] * slant[:, None, :]
    )
    slant_by_seen = np.zeros((len(points), 2, 3))
    slant_by_seen[:, 0, 0] = slant_by_seen[:, 1, 1] = 1 / safe
    slant_by_seen[:, :, 2] = -slant / safe[:, None]
    by_seen = by_slant @ slant_by_seen
    by_point = by_seen @ rotation
    by_camera = np.zeros((len(points), 2, UNKNOWNS))
    by_camera[:, :, PLACE] = -by_point
    by_camera[:, :, AIM] = np.einsum("nij,najk,nk->nia", by_seen, turns, offset)
    by_camera[:, :, FOCAL] = growth[:, None] * slant
    by_camera[:, :, RADIAL] = (focal * square)[:, None] * slant
    by_camera[:, :, CENTRE] = np.eye(2)
    return Projection(pixels, by_camera, by_point, depth)


def ray(camera: Array, pixels: Array) -> Array:
    """Direction from a camera (10,) towards pixels (2,) from the picture's middle, array (3,).

    It takes the lens as free of distortion: it serves as a start.
    """
    rotation, _ = _rotations(camera[None, AIM])
    slant = (pixels - camera[CENTRE]) / camera[FOCAL]
    return np.asarray(rotation[0].T @ np.append(slant, 1.0))


def _rotations(aim: Array) -> tuple[Array, Array]:
    """Rotations (n, 3, 3) from world to camera axes, and derivatives (n, 3, 3, 3) by the aim.

    The camera is turned by its yaw about the upright axis (to its own left), then by its pitch
    (up), then by its roll about its own axis.
    """
    (about_z, d_yaw), (about_x, d_pitch), (about_axis, d_roll) = (
        _turns(-aim[:, 0], 0, 1),
        _turns(-aim[:, 1], 1, 2),
        _turns(aim[:, 2], 0, 1),
    )
    level = _LOOKS_BACK @ about_z
    tilted = about_x @ level
    turns = np.stack(
        [
            about_axis @ about_x @ _LOOKS_BACK @ -d_yaw,
            about_axis @ -d_pitch @ level,
            d_roll @ tilted,
        ],
        axis=1,
    )
    return about_axis @ tilted, turns


def _turns(angle: Array, first: int, second: int) -> tuple[Array, Array]:
    """Rotations (n, 3, 3) in the plane of two axes, and their derivatives by the angle."""
    cosine, sine = np.cos(angle), np.sin(angle)
    turn = np.zeros((len(angle), 3, 3))
    turn[:] = np.eye(3)
    turn[:, first, first] = turn[:, second, second] = cosine
    turn[:, first, second], turn[:, second, first] = -sine, sine
    derivative = np.zeros((len(angle), 3, 3))
    derivative[:, first, first] = derivative[:, second, second] = -sine
    derivative[:, first, second], derivative[:, second, first] = -cosine, cosine
    return turn, derivative
