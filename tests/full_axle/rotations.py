"""Rotations as matrices. Angles can be complex, so that derivatives can be taken by complex steps.

Axes follow ISO 8855:2011: x ahead, y to the left, z up.
"""

import numpy as np

Array = np.ndarray


def pitched_and_yawed(pitch: Array, yaw: Array) -> Array:
    """Matrices (..., 3, 3) that pitch first (top ahead is positive), then yaw to the left."""
    zero, unity = np.zeros_like(pitch), np.ones_like(pitch)
    c, s = np.cos(pitch), np.sin(pitch)
    pitching = _matrix([[c, zero, s], [zero, unity, zero], [-s, zero, c]])
    c, s = np.cos(yaw), np.sin(yaw)
    yawing = _matrix([[c, -s, zero], [s, c, zero], [zero, zero, unity]])
    return yawing @ pitching


def about(axis: Array, angle: Array) -> Array:
    """Matrices (..., 3, 3) of a turn about unit vectors (..., 3): the formula of Rodrigues."""
    x, y, z = np.moveaxis(axis, -1, 0)
    zero = np.zeros_like(x)
    cross = _matrix([[zero, -z, y], [z, zero, -x], [-y, x, zero]])
    sine, versine = np.sin(angle)[..., None, None], (1 - np.cos(angle))[..., None, None]
    return np.eye(3) + sine * cross + versine * (cross @ cross)


def turned(rotation: Array, vector: Array) -> Array:
    """Vectors (..., 3) turned by matrices (..., 3, 3)."""
    return (rotation @ vector[..., None])[..., 0]


def unit(vector: Array) -> Array:
    """Vectors (..., 3) scaled to the length 1."""
    return vector / np.linalg.norm(vector, axis=-1, keepdims=True)


def _matrix(rows: list[list[Array]]) -> Array:
    return np.stack([np.stack(np.broadcast_arrays(*row), axis=-1) for row in rows], axis=-2)
