"""Places of the parts that move with the axle, at some heave and roll."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from core.kinematics.knuckle import Arm
from core.kinematics.linkage import Linkage, joint_part
from core.kinematics.motion import (
    Motion,
    between,
    far_arm,
    motion_at,
    near_arm,
    steering_wheel_angle,
)
from core.kinematics.pivots import GUIDE_PIVOTS, NEAR_BALL
from core.kinematics.pose import Pose, pose_at
from core.kinematics.vectors import Array, Scalars, Vector

FAR_BALL = "drag_link.axle"
JOINT = "tie_rod.joint"


def axle_points(linkage: Linkage, heave: Scalars, roll: Scalars = 0.0) -> dict[str, Array]:
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
    return places_in(linkage, motion_at(linkage, heave, roll), heave, roll)


def places_in(
    linkage: Linkage, motion: Motion, heave: Scalars, roll: Scalars = 0.0
) -> dict[str, Array]:
    """Centres of the axle's pivots in a motion, as from `axle_points`."""
    pose = pose_at(linkage, heave, roll)
    places = {FAR_BALL: _ball(pose, far_arm(linkage), motion.far_turn)}
    if linkage.track_bar_axle is not None:
        places["track_bar.axle"] = carried_point(pose, linkage.track_bar_axle)
    if linkage.near_ball is not None:
        places[NEAR_BALL] = _ball(pose, near_arm(linkage), motion.near_turn)
        far, frame = places[FAR_BALL], linkage.drag_link_frame
        joint = between(Vector.of(far), Vector.of(frame), joint_part(linkage))
        places[JOINT] = joint.as_array()
    return places


def carried_point(pose: Pose, point: Array) -> Array:
    """Place of a point of the axle, array (..., 3) at ride height, in a pose, mm."""
    return pose.carried(Vector.of(point)).as_array()


def guide_points(linkage: Linkage, heave: Scalars) -> dict[str, tuple[Array, Array]]:
    """Pivots of the guide in the side view: stations and heights, mm, by the pivot's name.

    Parameters
    ----------
    linkage : Linkage
        No leading axes.
    heave : array (...)
        mm; the frame's pivots stand still and the axle's go with its pose.
    """
    pose = pose_at(linkage, heave)
    points = {}
    for name in GUIDE_PIVOTS[linkage.guide.kind]:
        attribute = name.removeprefix("guide.")
        station = np.asarray(getattr(linkage.guide, f"{attribute}_station"), dtype=float)
        height = np.asarray(getattr(linkage.guide, f"{attribute}_height"), dtype=float)
        if attribute.endswith("axle") or attribute == "seat":
            moved = pose.carried(Vector(station, 0.0, height))
            station, height = np.asarray(moved.ahead), np.asarray(moved.up)
        points[name] = (station, height)
    return points


def _ball(pose: Pose, arm: Arm, turn: Array) -> Array:
    """Place of a ball in the frame's axes after a turn of its arm."""
    return pose.carried(arm.ball_at(turn)).as_array()


@dataclass(frozen=True)
class AxlePose:
    """The axle at one heave and roll, with its effect on the steering.

    Attributes
    ----------
    heave, roll : float
        mm and rad.
    points : dict of array (3,)
        As from `axle_points`, with the hubs where the wheels were measured.
    guide : dict of (float, float)
        Station and height of each pivot of the guide, mm.
    axle_shift, axle_ahead : float
        mm, to the left and ahead positive.
    axle_pitch, axle_yaw : float
        rad; the top of the axle ahead, the axle turned to the left positive.
    steer, toe_in_change, steering_wheel : float
        As in `core.kinematics.motion`, rad.
    """

    heave: float
    roll: float
    points: dict[str, Array]
    guide: dict[str, tuple[float, float]]
    axle_shift: float
    axle_ahead: float
    axle_pitch: float
    axle_yaw: float
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
    pose = pose_at(linkage, heave, roll)
    wheels = {name: carried_point(pose, hub) for name, hub in hubs.items()}
    guide = guide_points(linkage, heave)
    return AxlePose(
        heave,
        roll,
        places_in(linkage, motion, heave, roll) | wheels,
        {name: (float(station), float(height)) for name, (station, height) in guide.items()},
        float(motion.axle_shift),
        float(motion.axle_ahead),
        float(motion.axle_pitch),
        float(motion.axle_yaw),
        float(motion.steer),
        float(motion.toe_in_change),
        float(steering_wheel_angle(linkage, heave, roll)),
    )
