"""Series of the motion at ride height: the three rules are its first and second order.

Derivatives of the exact model with respect to heave z, by differentiation of the distance
equations, stations included. With both ends of each link at the same station they are

- d(axle shift)/dz = -tan(slope_T): a flat track bar does not walk sideways;
- d(steer)/dz = (tan(slope_T) - tan(slope_D)) / (e a): parallel links do not steer;
- d2(axle shift)/dz2 = 1 / (D_T cos^2 slope_T), D the lateral run y_f - y_a: the arc;
- d2(steer)/dz2 = (1/(D_D cos^2 slope_D) - 1/(D_T cos^2 slope_T)) / (e a): equal runs and slopes
  cancel it, frame ends on opposite sides add up.
"""

from dataclasses import dataclass

import numpy as np

from core.kinematics.linkage import Array, Linkage, joint_part


@dataclass(frozen=True, eq=False)
class Derivatives:
    """Arrays (...) of the linkage's leading shape.

    Attributes
    ----------
    axle_walk : mm/mm
    axle_arc : mm/mm2
    gradient : mean steer, rad/mm
    curvature : mean steer, rad/mm2
    """

    axle_walk: Array
    axle_arc: Array
    gradient: Array
    curvature: Array


def derivatives(linkage: Linkage) -> Derivatives:
    """First and second derivative of axle shift and mean steer at ride height."""
    bar = linkage.track_bar_frame - linkage.track_bar_axle
    walk = -bar[..., 2] / bar[..., 1]
    arc = (1 + walk**2) / bar[..., 1]

    link = linkage.drag_link_frame - linkage.drag_link_axle
    lever = linkage.arm_side * np.asarray(linkage.arm, dtype=float)
    far, far_second, ball, ball_second = _turning(link, lever, walk, arc, 0.0, 0.0)
    if linkage.near_ball is None:
        return Derivatives(walk, arc, far, far_second)

    # The joint is on the drag link, whose frame end stands still. So the joint takes the part of
    # the far ball's movement that is left at its place along the link.
    part = joint_part(linkage)
    joint = linkage.drag_link_axle + link * part[..., None]
    near, near_second, _, _ = _turning(
        joint - linkage.near_ball,
        linkage.arm_side * np.asarray(linkage.near_arm, dtype=float),
        walk,
        arc,
        ball * (1 - part)[..., None],
        ball_second * (1 - part)[..., None],
    )
    return Derivatives(walk, arc, (far + near) / 2, (far_second + near_second) / 2)


def _turning(
    link: Array,
    lever: Array,
    walk: Array,
    arc: Array,
    velocity: Array | float,
    acceleration: Array | float,
) -> tuple[Array, Array, Array, Array]:
    """Turn of an arm whose ball keeps its distance from another point as the axle heaves.

    `link` leads from the ball to the other point, whose velocity and acceleration are given. With
    the arm's turn d the ball has at ride height the velocity (0, lever d' + walk, 1) and the
    acceleration (-lever d'^2, lever d'' + arc, 0). The length of the link is constant, so
    link . v = 0 and v . v = link . a, where v and a are the ball's, relative to the other point.

    Returns
    -------
    first, second : array (...)
        d' and d'', rad/mm and rad/mm2.
    velocity, acceleration : array (..., 3)
        Those of the ball, mm/mm and mm/mm2.
    """
    y = link[..., 1]
    shape = np.broadcast_shapes(y.shape, np.shape(lever))
    known = _vector(np.zeros(shape), walk, np.ones(shape)) - velocity
    first = -np.einsum("...i,...i->...", link, known) / (y * lever)
    ball = _vector(np.zeros(shape), lever * first + walk, np.ones(shape))
    relative = ball - velocity
    known = _vector(-lever * first**2, arc, np.zeros(shape)) - acceleration
    square = np.einsum("...i,...i->...", relative, relative)
    second = (square - np.einsum("...i,...i->...", link, known)) / (y * lever)
    ball_second = _vector(-lever * first**2, lever * second + arc, np.zeros(shape))
    return first, second, ball, ball_second


def _vector(x: Array, y: Array, z: Array) -> Array:
    return np.stack(np.broadcast_arrays(x, y, z), axis=-1)
