"""Places of the parts that move with the axle, at some heave and roll."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from core.kinematics.linkage import Array, Linkage, joint_part
from core.kinematics.motion import Motion, motion_at, steering_wheel_angle
from core.kinematics.pivots import NEAR_BALL

FAR_BALL = "drag_link.axle"
JOINT = "tie_rod.joint"


def axle_points(
    linkage: Linkage, heave: Array | float, roll: Array | float = 0.0
) -> dict[str, Array]:
    """Centres of the axle's pivots with the steering wheel held.

    Parameters
    ----------
    linkage : Linkage
        No leading axes.
    heave, roll : array
        mm and rad; they broadcast.

    Returns
    -------
    dict of array (..., 3)
        By pivot, and for the inverted-Y "tie_rod.joint" too; mm in the frame's axes, nan where a
        link cannot reach.
    """
    return _places(linkage, motion_at(linkage, heave, roll), heave, roll)


def _places(
    linkage: Linkage, motion: Motion, heave: Array | float, roll: Array | float
) -> dict[str, Array]:
    """Centres of the axle's pivots in a motion, as from `axle_points`."""
    turned = {
        "track_bar.axle": linkage.track_bar_axle,
        FAR_BALL: _turned(linkage.drag_link_axle, linkage.arm, linkage.arm_side, motion.far_steer),
    }
    if linkage.near_ball is not None:
        turned[NEAR_BALL] = _turned(
            linkage.near_ball, linkage.near_arm, linkage.arm_side, motion.near_steer
        )
    places = {
        pivot: carried_point(linkage, point, motion.axle_shift, heave, roll)
        for pivot, point in turned.items()
    }
    if linkage.near_ball is not None:
        far, frame = places[FAR_BALL], linkage.drag_link_frame
        places[JOINT] = far + (frame - far) * joint_part(linkage)[..., None]
    return places


def carried_point(
    linkage: Linkage, point: Array, shift: Array, heave: Array | float, roll: Array | float
) -> Array:
    """Place of a point of the axle, array (..., 3) at ride height, after an axle shift, mm."""
    sine, cosine = np.sin(roll), np.cos(roll)
    x, y, z = point[..., 0], point[..., 1], point[..., 2] - linkage.hub_height
    return np.stack(
        np.broadcast_arrays(
            x, y * cosine - z * sine + shift, y * sine + z * cosine + linkage.hub_height + heave
        ),
        axis=-1,
    )


def _turned(ball: Array, arm: Array | float, side: int, steer: Array) -> Array:
    """Place of a ball after a turn about its upright kingpin, one arm's length away, mm."""
    lever = side * np.asarray(arm, dtype=float)
    x = ball[..., 0] + lever * (np.cos(steer) - 1)
    y = ball[..., 1] + lever * np.sin(steer)
    return np.stack(np.broadcast_arrays(x, y, ball[..., 2]), axis=-1)


@dataclass(frozen=True)
class AxlePose:
    """The axle at one heave and roll, with its effect on the steering.

    Attributes
    ----------
    heave, roll : float
        mm and rad.
    points : dict of array (3,)
        As from `axle_points`, with the hubs where the wheels were measured.
    axle_shift : float
        mm, to the left positive.
    steer, toe_in_change, steering_wheel : float
        As in `core.kinematics.motion`, rad.
    """

    heave: float
    roll: float
    points: dict[str, Array]
    axle_shift: float
    steer: float
    toe_in_change: float
    steering_wheel: float

    @property
    def is_reached(self) -> bool:
        """True if every link reaches; otherwise points and angles are nan."""
        return bool(np.isfinite([self.axle_shift, self.steer, self.toe_in_change]).all())


def axle_pose(
    linkage: Linkage, hubs: Mapping[str, Array], heave: float, roll: float = 0.0
) -> AxlePose:
    """The axle of a linkage at one heave and roll.

    Parameters
    ----------
    linkage : Linkage
        No leading axes.
    hubs : mapping of array (3,)
        Hub centres at ride height by name, mm; {} where the wheels were not measured.
    heave, roll : float
        mm and rad.
    """
    motion = motion_at(linkage, heave, roll)
    wheels = {
        name: carried_point(linkage, hub, motion.axle_shift, heave, roll)
        for name, hub in hubs.items()
    }
    return AxlePose(
        heave,
        roll,
        _places(linkage, motion, heave, roll) | wheels,
        float(motion.axle_shift),
        float(motion.steer),
        float(motion.toe_in_change),
        float(steering_wheel_angle(linkage, heave, roll)),
    )
