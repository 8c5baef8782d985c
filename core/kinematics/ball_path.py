"""The path of the steering-arm ball while the knuckle stays straight.

At ride height the path has a centre of curvature, and an axis through it that is square to the
path's plane. A drag link whose frame end lies on that axis does not bump-steer to second order,
whatever guides the axle: it keeps its length while the ball follows its path. To first order it is
enough that the link is square to the path. The three rules, and the rule that a leaf spring's drag
link starts at the spring's own centre of motion, say the same (common practice, no source).
"""

from dataclasses import dataclass

import numpy as np

from core.kinematics.linkage import Linkage
from core.kinematics.pivots import Layout
from core.kinematics.pose import pose_at
from core.kinematics.series import HEAVE_STEP, PLACES, by_heave
from core.kinematics.vectors import Array, Vector

STRAIGHT = 1e-9
"""Curvature, 1/mm, below which a path has no centre."""


@dataclass(frozen=True, eq=False)
class BallPath:
    """Path of the ball at ride height; arrays of the linkage's leading shape.

    Attributes
    ----------
    tangent : array (..., 3)
        Direction of the path, of length 1, upward.
    centre : array (..., 3)
        Centre of curvature, mm; nan where the path is straight.
    axis : array (..., 3)
        Direction of the axis through the centre, of length 1; nan where the path is straight.
    radius : array (...)
        mm; infinite where the path is straight.
    """

    tangent: Array
    centre: Array
    axis: Array
    radius: Array


def ball_path(linkage: Linkage) -> BallPath:
    """Path of the steering-arm ball of a linkage with any leading axes."""
    velocity, acceleration = _derivatives(linkage)
    speed = _length(velocity)
    tangent = velocity / speed[..., None]
    turning = np.cross(velocity, acceleration)
    curvature = _length(turning) / speed**3
    is_straight = curvature < STRAIGHT
    with np.errstate(divide="ignore", invalid="ignore"):
        axis = turning / _length(turning)[..., None]
        radius = np.where(is_straight, np.inf, 1 / curvature)
        centre = linkage.drag_link_axle + np.cross(axis, tangent) * radius[..., None]
    nowhere = is_straight[..., None]
    return BallPath(
        tangent, np.where(nowhere, np.nan, centre), np.where(nowhere, np.nan, axis), radius
    )


def rise_to_square(linkage: Linkage) -> Array:
    """Rise that sets the drag link square to the ball's path, array (...), mm; up is positive.

    The frame end rises where it stands. The steer gradient is then zero.
    """
    tangent = ball_path_tangent(linkage)
    link = linkage.drag_link_frame - linkage.drag_link_axle
    return np.asarray(-(tangent * link).sum(axis=-1) / tangent[..., 2])


def effective_angle(linkage: Linkage) -> Array:
    """Angle by which the drag link is out of square to its ball's path, array (...), rad.

    The link is taken towards the left, and towards the front where it runs fore and aft. Without
    pitch and without slant in plan it is the angle between drag link and track bar.
    """
    tangent = ball_path_tangent(linkage)
    link = linkage.drag_link_frame - linkage.drag_link_axle
    towards = link[..., 0] if linkage.layout == Layout.FORE_AFT else link[..., 1]
    along = (tangent * link).sum(axis=-1) / _length(link)
    return np.asarray(np.arcsin(along * np.sign(towards)))


def ball_path_tangent(linkage: Linkage) -> Array:
    """Direction of the path at ride height, array (..., 3), of length 1, upward."""
    velocity, _ = _derivatives(linkage)
    return np.asarray(velocity / _length(velocity)[..., None])


def _derivatives(linkage: Linkage) -> tuple[Array, Array]:
    """First and second derivative of the ball's place by heave, arrays (..., 3)."""
    spread = linkage.with_heave_axis()
    pose = pose_at(spread, HEAVE_STEP * PLACES)
    moved = pose.carried(Vector.of(spread.drag_link_axle)).less(Vector.of(spread.drag_link_axle))
    by_component = [by_heave(np.asarray(component)) for component in moved]
    first, second = zip(*by_component, strict=True)
    return (
        np.stack(np.broadcast_arrays(*first), axis=-1),
        np.stack(np.broadcast_arrays(*second), axis=-1),
    )


def _length(vectors: Array) -> Array:
    """Lengths (...) of vectors (..., 3)."""
    return np.asarray(np.sqrt((vectors * vectors).sum(axis=-1)))
