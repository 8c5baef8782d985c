"""Motion of the axle and the steering through suspension travel and roll.

The frame stands still and the axle takes its pose (`pose`). Then the knuckles turn until the drag
link has its length. Every result is a closed form. Heave, roll and the leading axes of the linkage
broadcast. Where a link cannot reach, the result is nan: the axle is beyond its travel limit.
"""

from dataclasses import dataclass

import numpy as np

from core.kinematics.knuckle import (
    Arm,
    arm_vector,
    heading,
    kingpin_axis,
    shaft_axis,
    turn_to_straight,
)
from core.kinematics.linkage import Linkage, joint_part
from core.kinematics.pivots import Layout
from core.kinematics.pose import pose_at
from core.kinematics.vectors import Array, Scalars, Vector

LEFT, RIGHT = 1, -1


@dataclass(frozen=True, eq=False)
class Motion:
    """Position of the axle and the wheels at some heaves and rolls.

    Every array has the broadcast shape of heave, roll and the linkage's leading axes. The axle
    does not depend on the arms, so their axes can be missing from its shapes.

    Attributes
    ----------
    axle_shift, axle_ahead : array (...)
        Movement of the axle's middle to the left and ahead, mm.
    axle_pitch, axle_yaw : array (...)
        Positive: top of the axle ahead, axle turned to the left; rad.
    steer : array (...)
        Mean steer angle of both wheels (ISO 8855:2011 7.1.3), to the left positive, rad.
    far_steer, near_steer : array (...)
        Steer angle of the wheel that the drag link reaches, and of the other wheel, rad.
    toe_in_change : array (...)
        Change of total toe-in, right wheel's steer less left wheel's (ISO 8855:2011 7.1.6), rad.
    far_turn, near_turn : array (...)
        Turn of the knuckle that the drag link reaches, and of the other, about its kingpin: the
        tangent of half of it.
    """

    axle_shift: Array
    axle_ahead: Array
    axle_pitch: Array
    axle_yaw: Array
    steer: Array
    far_steer: Array
    near_steer: Array
    toe_in_change: Array
    far_turn: Array
    near_turn: Array


def motion_at(
    linkage: Linkage, heave: Scalars, roll: Scalars = 0.0, windup: Scalars = 0.0
) -> Motion:
    """Motion with the steering wheel held.

    Parameters
    ----------
    linkage : Linkage
        Its leading axes broadcast with the other arguments.
    heave : array (...)
        mm, bump positive.
    roll : array (...)
        rad, left wheel up positive.
    windup : array (...)
        Pitch that the brakes add to the axle, rad.
    """
    pose = pose_at(linkage, heave, roll, windup)
    far = far_arm(linkage)
    frame_end = Vector.of(linkage.drag_link_frame)
    frame_end_now = pose.seen_from_axle(frame_end)
    far_turn = near_turn = far.turn_to_reach(frame_end_now, frame_end)
    if linkage.near_ball is not None:
        part = joint_part(linkage)
        joint = between(far.ball, frame_end, part)
        joint_now = between(far.ball_at(far_turn), frame_end_now, part)
        near_turn = near_arm(linkage).turn_to_reach(joint_now, joint)
    far_steer, near_steer = (
        heading(pose, kingpin_axis(linkage.castor, linkage.inclination, side), turn)
        for side, turn in ((linkage.far_side, far_turn), (-linkage.far_side, near_turn))
    )
    toe_in_change = (far_steer - near_steer) * linkage.far_side * -1.0
    if linkage.near_ball is None:
        toe_in_change = np.where(np.isnan(far_steer), np.nan, 0.0)
    axle = (pose.shift.across, pose.shift.ahead, pose.pitch, pose.yaw)
    shape = np.broadcast_shapes(np.shape(heave), *(np.shape(value) for value in axle))
    shift, ahead, pitch, yaw = (np.broadcast_to(value, shape) for value in axle)
    return Motion(
        axle_shift=shift,
        axle_ahead=ahead,
        axle_pitch=pitch,
        axle_yaw=yaw,
        steer=(far_steer + near_steer) / 2,
        far_steer=far_steer,
        near_steer=near_steer,
        toe_in_change=toe_in_change,
        far_turn=far_turn,
        near_turn=near_turn,
    )


def steering_wheel_angle(linkage: Linkage, heave: Scalars, roll: Scalars = 0.0) -> Array:
    """Steering-wheel angle with the steering wheel let go and the road wheels straight, rad.

    The far knuckle turns until its wheel heads straight. The pitman arm turns about the sector
    shaft until the drag link fits. Positive to the left (ISO 8855:2011 7.1.8): a driver would turn
    the steering wheel that way for the same swing of the pitman arm.
    """
    pose = pose_at(linkage, heave, roll)
    far = far_arm(linkage)
    straight = kingpin_axis(linkage.castor, linkage.inclination, linkage.far_side)
    ball_now = pose.carried(far.ball_at(turn_to_straight(pose, straight)))
    pitman = Arm.of(
        linkage.drag_link_frame,
        arm_vector(linkage.pitman_direction, linkage.pitman_arm, linkage.far_side),
        shaft_axis(linkage.pitman_direction),
    )
    swing = 2 * np.arctan(pitman.turn_to_reach(ball_now, far.ball))
    link = pitman.ball.less(far.ball)
    commands = np.sign(link.dot(pitman.swing.aside) * link.dot(far.swing.aside))
    return np.asarray(linkage.ratio * commands * swing)


def far_arm(linkage: Linkage) -> Arm:
    """Arm whose ball the drag link reaches.

    On a tie rod the inclinations of both its ends cancel, so its ball has none.
    """
    inclination = 0.0 if linkage.layout == Layout.TIE_ROD else linkage.inclination
    return Arm.of(
        linkage.drag_link_axle,
        arm_vector(linkage.arm_direction, linkage.arm, linkage.far_side),
        kingpin_axis(linkage.castor, inclination, linkage.far_side),
    )


def near_arm(linkage: Linkage) -> Arm:
    """Arm of the near knuckle, inverted-Y only."""
    assert linkage.near_ball is not None
    return Arm.of(
        linkage.near_ball,
        arm_vector(linkage.arm_direction, linkage.near_arm, -linkage.far_side),
        kingpin_axis(linkage.castor, linkage.inclination, -linkage.far_side),
    )


def between(start: Vector, end: Vector, part: Scalars) -> Vector:
    """Point between two points; `part` is 0 at the start and 1 at the end."""
    return start.plus(end.less(start).times(part))
