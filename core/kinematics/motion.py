"""How the axle and the steering move against each other through travel and roll.

The frame stands still; the axle heaves (positive: axle up, bump), rolls about the x axis
through its middle at hub height (positive: left wheel up) and walks sideways as its track bar
makes it. Every answer is a closed form and broadcasts: heave, roll and the leading axes of the
linkage. Where a link cannot reach, the answer is nan: that is a travel limit.

A sweep is some forty numbers, so its time is that of the calls, not of the numbers. Plain numbers
are therefore worked out before they meet an array, and as arrays of one, which numpy takes sooner.
"""

from typing import NamedTuple

import numpy as np

from core.kinematics.linkage import Array, Linkage

Part = Array | float
Point = tuple[Part, Part, Part]

nan_out_of_reach = np.errstate(invalid="ignore", divide="ignore")


class Motion(NamedTuple):
    """Where the axle and the wheels are at some heave and roll; arrays of one broadcast shape.

    Attributes
    ----------
    axle_shift : array
        Lateral movement of the axle, to the left positive, mm.
    steer : array
        Mean steer angle of both wheels (ISO 8855:2011 7.1.3), to the left positive, rad.
    far_steer, near_steer : array
        Steer of the wheel the drag link reaches, and of the other one, rad.
    toe_in_change : array
        Change of total toe-in, right wheel's steer less left wheel's (ISO 8855:2011 7.1.6), rad.
    """

    axle_shift: Array
    steer: Array
    far_steer: Array
    near_steer: Array
    toe_in_change: Array


@nan_out_of_reach
def motion_at(linkage: Linkage, heave: Array | float, roll: Array | float = 0.0) -> Motion:
    """The motion with the steering wheel held.

    Parameters
    ----------
    linkage : Linkage
        Its leading axes broadcast with heave and roll.
    heave : array
        mm, bump positive.
    roll : array
        rad, left wheel up positive.
    """
    heave = np.asarray(heave, dtype=float)
    lever = linkage.arm_side * linkage.arm
    ahead, across, up = link = _apart(linkage.drag_link_frame, linkage.drag_link_axle)
    shift, move, short = _carried(linkage, link, heave, roll, lever)
    if not _level(roll):
        # In the axle's own axes the kingpins stay upright, so that a turn about them is a plain
        # circle whatever the roll; there the frame end goes the other way.
        now_across, now_up = _rolled(across + move[0], up + move[1], -roll)
        move = now_across - across, now_up - up
    far = _turn(ahead - lever, np.asarray(across) + move[0], short)
    if linkage.near_ball is None:
        return Motion(shift, far, far, far, np.zeros(far.shape))
    near = _near_steer(linkage, link, move, far)
    # The far wheel is the left one where the far ball lies to the left of the near one.
    to_near = linkage.near_ball[..., 1] - linkage.drag_link_axle[..., 1]
    toe_in = (far - near) * np.copysign(1.0, to_near)
    return Motion(shift, (far + near) / 2, far, near, toe_in)


@nan_out_of_reach
def steering_wheel_angle(
    linkage: Linkage, heave: Array | float, roll: Array | float = 0.0
) -> Array:
    """Steering-wheel angle with the wheel let go and the road wheels straight, rad.

    The pitman ball turns about the sector shaft until the drag link fits. Positive to the left
    (ISO 8855:2011 7.1.8): the sign of the wheel movement which would command that swing.
    """
    heave = np.asarray(heave, dtype=float)
    lever = linkage.pitman_side * linkage.pitman_arm
    ahead, across, _ = link = _apart(linkage.drag_link_frame, linkage.drag_link_axle)
    _, move, short = _carried(linkage, link, heave, roll, lever)
    swing = _turn(-ahead - lever, -across - move[0], short)
    return np.asarray(linkage.ratio * linkage.arm_side * linkage.pitman_side * swing)


def _carried(
    linkage: Linkage, link: Point, heave: Array, roll: Array | float, lever: Part
) -> tuple[Array, tuple[Part, Part], Part]:
    """What the axle's motion does to the drag link while no lever turns.

    Returns
    -------
    shift : array
        Lateral movement of the axle, which keeps the track bar's length, mm.
    move : pair of arrays
        How the link's axle end is carried across and up, mm.
    short : array
        Half the growth that this asks of the link's squared length, by the lever that has to
        make it good, mm.
    """
    _, bar_across, bar_up = _apart(linkage.track_bar_frame, linkage.track_bar_axle)
    _, across, up = link
    if _level(roll):
        shift = _walk(bar_across, bar_up, heave)
        # Both bars are carried alike and the track bar keeps its length, so that only what sets
        # them apart tells: a drag link equal and parallel to it is never short.
        more_across, more_up = (bar_across - across) / lever, (bar_up - up) / lever
        short = shift * np.asarray(more_across) + heave * np.asarray(more_up)
        return shift, (shift, heave), short
    bar_aside, bar_raised = _rolled_from(linkage.track_bar_axle, linkage.hub_height, roll)
    shift = _walk(bar_across, bar_up, heave + bar_raised) - bar_aside
    aside, raised = _rolled_from(linkage.drag_link_axle, linkage.hub_height, roll)
    aside, raised = aside + shift, raised + heave
    growth = (across + aside / 2) * aside + (up + raised / 2) * raised
    return shift, (aside, raised), growth / -lever


def _walk(across: Part, up: Part, raised: Array) -> Array:
    """How far aside a raised end of a bar goes if the bar keeps its length, mm.

    Heave and roll leave x alone, so the bar's front view does.
    """
    height = np.asarray(up) + raised
    run, reach = np.asarray(across), np.asarray(across * across + up * up)
    shift: Array = np.copysign(np.sqrt(reach - height * height), run) - run
    return shift


def _near_steer(linkage: Linkage, link: Point, move: tuple[Part, Part], far: Array) -> Array:
    """Steer of the near wheel: its tie rod keeps the distance from the joint on the drag link.

    `move` is how the far ball but for its turn `far` is carried, in the axle's own axes; the
    joint shares in both as it lies between the ends.
    """
    assert linkage.near_ball is not None
    part = linkage.joint_from_far_ball / sum(one * one for one in link) ** 0.5
    far_to_near = _apart(linkage.drag_link_axle, linkage.near_ball)
    x, y, z = (n + part * a for n, a in zip(far_to_near, link, strict=True))
    lever, swing = linkage.arm_side * linkage.near_arm, linkage.arm_side * linkage.arm * (1 - part)
    ahead, aside = swing - swing * np.cos(far), part * move[0] - swing * np.sin(far)
    raised = part * move[1]
    growth = (x + ahead / 2) * ahead + (y + aside / 2) * aside + (z + raised / 2) * raised
    return _turn(x - lever + ahead, y + aside, growth / -lever)


def _turn(x: Part, y: Part, short: Part) -> Array:
    """Turn d, nearest zero, of a lever that makes good what its link is short, rad.

    x cos d + y sin d = x + short, where (x, y) leads from the link's other end to the lever's
    upright in plan. With t = tan(d/2) that is (2 x + short) t^2 - 2 y t + short = 0; the smaller
    root is written so that it does not cancel.
    """
    root = np.sqrt(y * y - short * (short + np.asarray(2 * x)))
    half: Array = np.arctan(short / (y + np.copysign(root, y)))
    return half + half


def _level(roll: Array | float) -> bool:
    return isinstance(roll, float) and roll == 0


def _rolled_from(point: Array, hub: Part, roll: Array | float) -> tuple[Part, Part]:
    """How roll alone carries a point of the axle across and up, mm."""
    y, z = point[..., 1], point[..., 2] - hub
    now_y, now_z = _rolled(y, z, roll)
    return now_y - y, now_z - z


def _rolled(y: Part, z: Part, roll: Array | float) -> tuple[Part, Part]:
    """(y, z) turned about the x axis."""
    sine, cosine = np.sin(roll), np.cos(roll)
    return y * cosine - z * sine, y * sine + z * cosine


def _apart(frame: Array, axle: Array) -> Point:
    """From one end of a link to the other: ahead, across and up.

    Apart from each other they broadcast without (..., 3) arrays for every heave; those of a
    single link are plain floats.
    """
    if frame.ndim == axle.ndim == 1:
        frame_x, frame_y, frame_z = frame.tolist()
        x, y, z = axle.tolist()
        return x - frame_x, y - frame_y, z - frame_z
    apart = axle - frame
    return apart[..., 0], apart[..., 1], apart[..., 2]
