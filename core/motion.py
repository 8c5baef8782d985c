"""How the axle and the steering move against each other through travel and roll.

The frame stands still; the axle heaves (positive: axle up, bump), rolls about the x axis
through its middle at hub height (positive: left wheel up) and walks sideways as its track bar
makes it. Every answer is a closed form and broadcasts: heave, roll and the leading axes of the
linkage. Where a link cannot reach, the answer is nan: that is a travel limit.
"""

from dataclasses import dataclass

import numpy as np

from core.linkage import Array, Linkage

Part = Array | float
Point = tuple[Part, Part, Part]


@dataclass(frozen=True, eq=False, repr=False)
class Motion:
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


def moved(linkage: Linkage, heave: Array | float, roll: Array | float = 0.0) -> Motion:
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
    x, y, z = _components(linkage.drag_link_axle)
    frame_x, frame_y, frame_z = _components(linkage.drag_link_frame)
    lever, hub = linkage.arm_side * linkage.arm, linkage.hub_height
    with np.errstate(invalid="ignore", divide="ignore"):
        shift = _axle_shift(linkage, heave, roll)
        # In the axle's own axes the kingpins stay upright, so that a turn about them is a plain
        # circle whatever the roll; there the frame end goes the other way.
        across, up = _rolled(frame_y - shift, frame_z - hub - heave, -roll)
        link = _squared(frame_x - x, frame_y - y, frame_z - z)
        far = _turn(x - lever - frame_x, y - across, z - hub - up, lever, link)
        if linkage.near_ball is None:
            return Motion(shift, far, far, far, np.zeros(far.shape))
        ball = (x + lever * (np.cos(far) - 1), y + lever * np.sin(far), z)
        near = _near_steer(linkage, ball, (frame_x, across, up + hub), np.sqrt(link))
    # The far wheel is the left one where the far ball lies to the left of the near one.
    far_is_left = linkage.drag_link_axle[..., 1] > linkage.near_ball[..., 1]
    toe_in = np.where(far_is_left, near - far, far - near)
    return Motion(shift, (far + near) / 2, far, near, toe_in)


def steering_wheel(linkage: Linkage, heave: Array | float, roll: Array | float = 0.0) -> Array:
    """Steering-wheel angle with the wheel let go and the road wheels straight, rad.

    The pitman ball turns about the sector shaft until the drag link fits. Positive to the left
    (ISO 8855:2011 7.1.8): the sign of the wheel movement which would command that swing.
    """
    heave = np.asarray(heave, dtype=float)
    x, y, z = _components(linkage.drag_link_axle)
    frame_x, frame_y, frame_z = _components(linkage.drag_link_frame)
    lever, hub = linkage.pitman_side * linkage.pitman_arm, linkage.hub_height
    with np.errstate(invalid="ignore", divide="ignore"):
        link = _squared(frame_x - x, frame_y - y, frame_z - z)
        across, up = _rolled(y, z - hub, roll)
        across, up = across + _axle_shift(linkage, heave, roll), up + hub + heave
        swing = _turn(frame_x - lever - x, frame_y - across, frame_z - up, lever, link)
    return np.asarray(linkage.ratio * linkage.arm_side * linkage.pitman_side * swing)


def _axle_shift(linkage: Linkage, heave: Array, roll: Array | float) -> Array:
    """Lateral movement of the axle that keeps the track bar's length, mm.

    Heave and roll leave x alone, so the track bar's reach is that of its front view.
    """
    _, y, z = _components(linkage.track_bar_axle)
    _, frame_y, frame_z = _components(linkage.track_bar_frame)
    side, reach = y - frame_y, (y - frame_y) ** 2 + (z - frame_z) ** 2
    y, z = _rolled(y, z - linkage.hub_height, roll)
    rise = z + (linkage.hub_height - frame_z) + heave
    return np.copysign(np.sqrt(reach - rise * rise), side) + (frame_y - y)


def _near_steer(linkage: Linkage, ball: Point, frame: Point, link: Part) -> Array:
    """Steer of the near wheel: its tie rod keeps the distance from the joint on the drag link.

    `ball` and `frame` are the ends of the drag link now, in the axle's own axes, `link` its
    length.
    """
    assert linkage.near_ball is not None
    part = linkage.joint_from_far_ball / link
    joint = [b + (f - b) * part for b, f in zip(ball, frame, strict=True)]
    x, y, z = _components(linkage.near_ball)
    lever = linkage.arm_side * linkage.near_arm
    ends = zip(
        _components(linkage.drag_link_axle), _components(linkage.drag_link_frame), strict=True
    )
    joint_x, joint_y, joint_z = (b + (f - b) * part for b, f in ends)
    tie_rod = _squared(x - joint_x, y - joint_y, z - joint_z)
    return _turn(x - lever - joint[0], y - joint[1], z - joint[2], lever, tie_rod)


def _turn(x: Part, y: Part, z: Part, lever: Part, squared_length: Part) -> Array:
    """Turn d, nearest zero, that brings a lever's ball to a given distance from the origin, rad.

    The ball is at (x, y, z) + lever (cos d, sin d, 0). With A cos d + B sin d = C and
    t = tan(d/2), (A + C) t^2 - 2 B t + (C - A) = 0; the smaller root is written so that it does
    not cancel.
    """
    a = 2 * lever * x
    b = 2 * lever * y
    c = squared_length - lever * lever - _squared(x, y, z)
    root = np.sqrt(a * a + b * b - c * c)
    return np.asarray(2 * np.arctan((c - a) / (b + np.copysign(root, b))))


def _rolled(y: Part, z: Part, roll: Array | float) -> tuple[Part, Part]:
    """(y, z) turned about the x axis; as they are where there is no roll, as there seldom is."""
    if isinstance(roll, float) and roll == 0:
        return y, z
    sine, cosine = np.sin(roll), np.cos(roll)
    return y * cosine - z * sine, y * sine + z * cosine


def _squared(x: Part, y: Part, z: Part) -> Part:
    return x * x + y * y + z * z


def _components(point: Array) -> Point:
    """x, y and z apart, which broadcast without (..., 3) arrays for every heave.

    Those of a single point are plain floats, which are quicker than arrays of one.
    """
    if point.ndim == 1:
        x, y, z = point.tolist()
        return x, y, z
    return point[..., 0], point[..., 1], point[..., 2]
