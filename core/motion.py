"""How the axle and the steering move against each other through travel and roll.

The frame stands still; the axle heaves (positive: axle up, bump), rolls about the x axis
through its middle at hub height (positive: left wheel up) and walks sideways as its track bar
makes it. Every answer is a closed form and broadcasts: heave, roll and the leading axes of the
linkage. Where a link cannot reach, the answer is nan: that is a travel limit.
"""

from dataclasses import dataclass

import numpy as np

from core.linkage import Array, Linkage, length


@dataclass(frozen=True)
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
    pose = _Pose.of(linkage, heave, roll)
    far_ball, frame_end = pose.far_ball, pose.frame_end
    drag_link = _squared(linkage.drag_link_frame - linkage.drag_link_axle)
    lever = linkage.arm_side * np.asarray(linkage.arm, dtype=float)
    # The kingpin stands one arm away from the ball; seen from the drag link's frame end:
    kingpin = [far_ball[0] - lever - frame_end[0]] + [far_ball[i] - frame_end[i] for i in (1, 2)]
    far = _turn(kingpin, lever, drag_link)
    if linkage.near_ball is None:
        return Motion(pose.shift, far, far, far, np.zeros_like(far))
    near = _near_steer(linkage, pose, far, lever)
    # The far wheel is the left one where the far ball lies to the left of the near one.
    far_is_left = linkage.drag_link_axle[..., 1] > linkage.near_ball[..., 1]
    toe_in = np.where(far_is_left, near - far, far - near)
    return Motion(pose.shift, (far + near) / 2, far, near, toe_in)


def steering_wheel(linkage: Linkage, heave: Array | float, roll: Array | float = 0.0) -> Array:
    """Steering-wheel angle with the wheel let go and the road wheels straight, rad.

    The pitman ball turns about the sector shaft until the drag link fits. Positive to the left
    (ISO 8855:2011 7.1.8): the sign of the wheel movement which would command that swing.
    """
    pose = _Pose.of(linkage, heave, roll)
    lever = linkage.pitman_side * np.asarray(linkage.pitman_arm, dtype=float)
    frame, ball = linkage.drag_link_frame, pose.in_frame(pose.far_ball)
    shaft = [frame[..., 0] - lever - ball[0], frame[..., 1] - ball[1], frame[..., 2] - ball[2]]
    swing = _turn(shaft, lever, _squared(frame - linkage.drag_link_axle))
    return linkage.ratio * linkage.arm_side * linkage.pitman_side * swing


@dataclass(frozen=True)
class _Pose:
    """The axle's pose and, in the axle's own axes, the points the steering needs.

    Working in the axle's axes keeps the kingpins upright, so that a turn about them stays a
    plain circle whatever the roll. Points are (x, y, z) tuples of arrays: separate components
    broadcast without building (..., 3) arrays for every heave.
    """

    shift: Array
    heave: Array
    sine: Array
    cosine: Array
    hub: Array
    far_ball: tuple[Array, Array, Array]
    frame_end: tuple[Array, Array, Array]

    @classmethod
    def of(cls, linkage: Linkage, heave: Array | float, roll: Array | float) -> "_Pose":
        heave, roll = np.asarray(heave, dtype=float), np.asarray(roll, dtype=float)
        hub = np.asarray(linkage.hub_height, dtype=float)
        sine, cosine = np.sin(roll), np.cos(roll)
        frame, axle = linkage.track_bar_frame, linkage.track_bar_axle
        y = axle[..., 1] * cosine - (axle[..., 2] - hub) * sine
        z = axle[..., 1] * sine + (axle[..., 2] - hub) * cosine + hub + heave
        # Heave and roll leave x alone, so the track bar's reach is that of its front view.
        lateral, rise = axle[..., 1] - frame[..., 1], axle[..., 2] - frame[..., 2]
        with np.errstate(invalid="ignore"):
            run = np.sqrt(lateral * lateral + rise * rise - (z - frame[..., 2]) ** 2)
        shift = frame[..., 1] - y + np.where(lateral < 0, -run, run)
        pitman = linkage.drag_link_frame
        across, up = pitman[..., 1] - shift, pitman[..., 2] - heave - hub
        return cls(
            shift,
            heave,
            sine,
            cosine,
            hub,
            _components(linkage.drag_link_axle),
            (pitman[..., 0], across * cosine + up * sine, up * cosine - across * sine + hub),
        )

    def in_frame(self, point: tuple[Array, Array, Array]) -> tuple[Array, Array, Array]:
        """A point of the axle, given in the axle's axes, where it now is in the frame."""
        x, y, z = point
        y, z = (
            y * self.cosine - (z - self.hub) * self.sine,
            y * self.sine + (z - self.hub) * self.cosine,
        )
        return x, y + self.shift, z + self.hub + self.heave


def _near_steer(linkage: Linkage, pose: _Pose, far: Array, lever: Array) -> Array:
    """Steer of the near wheel: its tie rod keeps the distance from the joint on the drag link."""
    assert linkage.near_ball is not None
    x, y, z = pose.far_ball
    ball = (x + lever * (np.cos(far) - 1), y + lever * np.sin(far), z)
    link = length(linkage.drag_link_frame, linkage.drag_link_axle)
    part = np.asarray(linkage.joint_from_far_ball, dtype=float) / link
    joint = [b + (f - b) * part for b, f in zip(ball, pose.frame_end, strict=True)]
    near_lever = linkage.arm_side * np.asarray(linkage.near_arm, dtype=float)
    near = _components(linkage.near_ball)
    kingpin = [near[0] - near_lever - joint[0], near[1] - joint[1], near[2] - joint[2]]
    run = linkage.drag_link_frame - linkage.drag_link_axle
    tie_rod = linkage.near_ball - linkage.drag_link_axle - run * part[..., None]
    return _turn(kingpin, near_lever, _squared(tie_rod))


def _turn(pivot: list[Array], lever: Array, squared_length: Array) -> Array:
    """Turn d, nearest zero, that brings a lever's ball to a given distance from the origin, rad.

    The ball is at pivot + lever (cos d, sin d, 0). With A cos d + B sin d = C and t = tan(d/2),
    (A + C) t^2 - 2 B t + (C - A) = 0; the smaller root is written so that it does not cancel.
    """
    a = 2 * lever * pivot[0]
    b = 2 * lever * pivot[1]
    c = squared_length - pivot[0] ** 2 - pivot[1] ** 2 - pivot[2] ** 2 - lever * lever
    with np.errstate(invalid="ignore", divide="ignore"):
        root = np.sqrt(a * a + b * b - c * c)
        return np.asarray(2 * np.arctan((c - a) / (b + np.copysign(root, b))))


def _squared(vector: Array) -> Array:
    return np.asarray(np.einsum("...i,...i->...", vector, vector))


def _components(point: Array) -> tuple[Array, Array, Array]:
    return point[..., 0], point[..., 1], point[..., 2]
