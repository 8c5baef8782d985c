"""Motion of the axle and the steering through suspension travel and roll.

The frame stands still. The axle heaves (bump is positive), rolls about the x axis through its
middle at hub height (left wheel up is positive), and shifts sideways under its track bar. Every
result is a closed form. Heave, roll and the leading axes of the linkage broadcast. Where a link
cannot reach, the result is nan: the axle is beyond its travel limit.
"""

from dataclasses import dataclass

import numpy as np

from core.kinematics.linkage import Array, Linkage, difference, front_view_difference, joint_part

Scalars = Array | float
Vector = tuple[Scalars, Scalars, Scalars]
"""Components ahead, across (to the left) and up, mm."""

nan_out_of_reach = np.errstate(invalid="ignore", divide="ignore")


@dataclass(frozen=True, eq=False)
class Motion:
    """Position of the axle and the wheels at some heaves and rolls.

    Every array has the broadcast shape of heave, roll and the linkage's leading axes. The axle
    shift does not depend on the arms, so their axes can be missing from its shape.

    Attributes
    ----------
    axle_shift : array (...)
        Lateral movement of the axle, to the left positive, mm.
    steer : array (...)
        Mean steer angle of both wheels (ISO 8855:2011 7.1.3), to the left positive, rad.
    far_steer, near_steer : array (...)
        Steer angle of the wheel that the drag link reaches, and of the other wheel, rad.
    toe_in_change : array (...)
        Change of total toe-in, right wheel's steer less left wheel's (ISO 8855:2011 7.1.6), rad.
    """

    axle_shift: Array
    steer: Array
    far_steer: Array
    near_steer: Array
    toe_in_change: Array


@nan_out_of_reach
def motion_at(linkage: Linkage, heave: Array | float, roll: Array | float = 0.0) -> Motion:
    """Motion with the steering wheel held.

    Parameters
    ----------
    linkage : Linkage
        Its leading axes broadcast with heave and roll.
    heave : array (...)
        mm, bump positive.
    roll : array (...)
        rad, left wheel up positive.
    """
    link = ahead, across, up = difference(linkage.drag_link_frame, linkage.drag_link_axle)
    sine, cosine = np.sin(roll), np.cos(roll)
    shift, run, rise, growth = _carried(linkage, link, heave, sine, cosine)
    # In the axle's own axes the kingpins stay upright at any roll.
    across_now = run * cosine + rise * sine
    lever = linkage.arm_side * linkage.arm
    far = _turn(ahead + lever, across_now, growth / (2 * lever))
    if linkage.near_ball is None:
        return Motion(shift, far, far, far, np.zeros(far.shape))
    change = across_now - across, rise * cosine - run * sine - up
    near = _near_steer(linkage, link, change, far)
    # The far wheel is the left one where the far ball lies to the left of the near ball.
    to_near = linkage.near_ball[..., 1] - linkage.drag_link_axle[..., 1]
    toe_in = (far - near) * np.copysign(1.0, to_near)
    return Motion(shift, (far + near) / 2, far, near, toe_in)


@nan_out_of_reach
def steering_wheel_angle(
    linkage: Linkage, heave: Array | float, roll: Array | float = 0.0
) -> Array:
    """Steering-wheel angle with the steering wheel let go and the road wheels straight, rad.

    The pitman arm turns about the sector shaft until the drag link fits. Positive to the left
    (ISO 8855:2011 7.1.8): a driver would turn the steering wheel that way for the same swing of
    the pitman arm.
    """
    link = difference(linkage.drag_link_frame, linkage.drag_link_axle)
    _, run, _, growth = _carried(linkage, link, heave, np.sin(roll), np.cos(roll))
    lever = linkage.pitman_side * linkage.pitman_arm
    swing = _turn(lever - link[0], -run, growth / (2 * lever))
    return np.asarray(linkage.ratio * linkage.arm_side * linkage.pitman_side * swing)


def _carried(
    linkage: Linkage, link: Vector, heave: Scalars, sine: Scalars, cosine: Scalars
) -> tuple[Array, Array, Scalars, Array]:
    """Effect of the axle's motion on the drag link while no arm turns.

    The axle rolls about the track bar's axle end, then moves across and up as a whole. This is
    the same motion as a roll about the middle of the axle with its heave and shift.

    Returns
    -------
    shift : array (...)
        Lateral movement of the axle that keeps the track bar's length, mm.
    run, rise : array (...)
        Drag link's vector across and up, in the frame's axes, mm.
    growth : array (...)
        Growth of the drag link's squared length, mm2.
    """
    less = cosine - 1
    end = linkage.track_bar_axle
    y, z = end[..., 1], end[..., 2] - linkage.hub_height
    aside, raised = y * less - z * sine, heave + (y * sine + z * less)
    # Heave and roll leave x unchanged, so the bar keeps its length in the front view too.
    across, up = front_view_difference(linkage.track_bar_frame, end)
    height = up - raised
    moved = across - np.copysign(np.sqrt(across * across + up * up - height * height), across)

    _, run, rise = link
    y, z = front_view_difference(linkage.drag_link_axle, end)
    run_rolled, rise_rolled = run - (y * less - z * sine), rise - (y * sine + z * less)
    # The movement as a whole is the same for both links, and the track bar does not grow. The
    # drag link therefore grows by the roll and by its difference from the track bar: without
    # roll, a link equal and parallel to the track bar does not grow at all.
    by_roll = (y + run) * (run_rolled - run) + (z + rise) * (rise_rolled - rise)
    growth = 2 * by_roll + 2 * (across - run_rolled) * moved + 2 * (up - rise_rolled) * raised
    return moved - aside, run_rolled - moved, rise_rolled - raised, growth


def _near_steer(
    linkage: Linkage, link: Vector, change: tuple[Scalars, Scalars], far: Array
) -> Array:
    """Steer of the near wheel: the tie rod keeps its distance from the joint on the drag link.

    Parameters
    ----------
    link : three arrays (...)
        Vector of the drag link at ride height, mm.
    change : two arrays (...)
        Change of that vector across and up in the axle's own axes, without the turn `far`, mm.
    far : array (...)
        Steer of the far wheel, rad.
    """
    assert linkage.near_ball is not None
    ahead, across, up = link
    part = joint_part(linkage)
    x, y, z = difference(linkage.drag_link_axle, linkage.near_ball)
    x, y, z = tie_rod = x + part * ahead, y + part * across, z + part * up
    # The joint lies between the far ball and the frame end, and takes its part of both movements.
    swing = linkage.arm_side * linkage.arm * (1 - part)
    joint_ahead = swing * (np.cos(far) - 1)
    joint_aside = swing * np.sin(far) + part * change[0]
    growth = _growth(tie_rod, (joint_ahead, joint_aside, part * change[1]))
    lever = linkage.arm_side * linkage.near_arm
    return _turn(x + lever + joint_ahead, y + joint_aside, growth / (2 * lever))


def _growth(link: Vector, change: Vector) -> Scalars:
    """Growth of a link's squared length where its vector changes, mm2."""
    (x, y, z), (dx, dy, dz) = link, change
    return (2 * x + dx) * dx + (2 * y + dy) * dy + (2 * z + dz) * dz


def _turn(x: Scalars, y: Scalars, excess: Scalars) -> Array:
    """Smallest turn d of an arm that gives its link the right length again, rad.

    (x, y) leads in plan from the arm's upright to the link's other end. `excess` is half the
    growth of the link's squared length without the turn, divided by the arm's length, mm. Then
    x cos d + y sin d = x + excess, and with t = tan(d/2): (2 x + excess) t^2 - 2 y t + excess = 0.
    The smaller root is written so that it does not cancel.
    """
    root = np.sqrt(y * y - excess * (excess + 2 * x))
    return np.asarray(2 * np.arctan(excess / (y + np.copysign(root, y))))
