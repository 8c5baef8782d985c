"""The path of the steering-arm ball while the knuckle stays straight.

At ride height the path has a centre of curvature, and an axis through it that is square to the
path's plane. A drag link whose frame end lies on that axis does not bump-steer to second order,
whatever guides the axle: it keeps its length while the ball follows its path. To first order it is
enough that the link is square to the path. The three rules, and the rule that a leaf spring's drag
link starts at the spring's own centre of motion, say the same (common practice, no source).
"""

from dataclasses import dataclass
from typing import NamedTuple

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


class OutOfSquare(NamedTuple):
    """Distance of a drag link from square to its ball's path at ride height; arrays (...).

    Attributes
    ----------
    angle : array (...)
        The effective angle, rad. The link is taken towards the left, and towards the front where
        it runs fore and aft. Without pitch and without slant in plan it is the angle between drag
        link and track bar.
    rise : array (...)
        Rise of the frame end, where it stands, that sets the link square; mm, up positive. The
        steer gradient is then zero.
    """

    angle: Array
    rise: Array


def out_of_square(linkage: Linkage) -> OutOfSquare:
    """Angle and rise by which the drag link of a linkage is out of square to its ball's path."""
    velocity, _ = _derivatives(linkage)
    link = linkage.drag_link_frame - linkage.drag_link_axle
    towards = link[..., 0] if linkage.layout == Layout.FORE_AFT else link[..., 1]
    along = (velocity * link).sum(axis=-1)
    sine = along / (_length(link) * _length(velocity))
    return OutOfSquare(
        np.asarray(np.arcsin(sine * np.sign(towards))), np.asarray(-along / velocity[..., 2])
    )


def effective_angle(linkage: Linkage) -> Array:
    """Angle by which the drag link is out of square to its ball's path, array (...), rad."""
    return out_of_square(linkage).angle


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
