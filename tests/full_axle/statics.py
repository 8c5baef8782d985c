"""Statics of the axle: the pose in which its bushes hold least energy.

The axle is a rigid body with six coordinates. Its middle is held at a heave, and the body's springs
hold it level across. Four coordinates are left: its movement ahead and across, its pitch and its
yaw. The track bar keeps its length. Nothing else loads the axle, because the steering is free to
turn.

Radius arms are one with the axle, and a bush on the frame holds the end of each. Sideways that bush
stands for the bushes between arm and axle too, which give way long before the axle turns.
Of two arms a side, each arm is a spring along its length: a bush at either end, free to swing.
"""

from dataclasses import dataclass

import numpy as np

from tests.full_axle.newton import least_energy
from tests.full_axle.rotations import Array, pitched_and_yawed, turned
from tests.full_axle.vehicle import ARMS, SIDES, Vehicle

LEVER = 1000.0
"""Angles times this are the unknowns, so that all of them are lengths of one size, mm."""


@dataclass(frozen=True, eq=False)
class Pose:
    """Pose of the axle of N vehicles at H heaves.

    Attributes
    ----------
    middle : array (N, 1, 3)
        Middle of the axle at rest, mm.
    shift : array (N, H, 3), mm
    rotation : array (N, H, 3, 3)
    """

    middle: Array
    shift: Array
    rotation: Array

    def carried(self, point: Array) -> Array:
        """Places (N, H, 3) of points (N, 3) of the axle."""
        return self.middle + self.shift + turned(self.rotation, point[:, None] - self.middle)

    def seen_from_axle(self, point: Array) -> Array:
        """Places (N, H, 3) that points (N, 3) of the frame have for an axle at rest."""
        back = np.swapaxes(self.rotation, -1, -2)
        return self.middle + turned(back, point[:, None] - self.middle - self.shift)


def settled(vehicle: Vehicle, heave: Array, is_centred: bool = False) -> Pose:
    """Pose at some heaves.

    Parameters
    ----------
    vehicle : Vehicle
    heave : array (H,) or (N, H)
        mm, bump positive.
    is_centred : bool
        The axle stands in the middle, as after its track bar was set to length.
    """
    heaves = np.broadcast_to(heave, (vehicle.count, np.shape(heave)[-1]))

    def pose(unknown: Array) -> Pose:
        return _pose(vehicle, heaves, unknown)

    def across(unknown: Array) -> Array:
        return unknown[..., 1:2]

    def track_bar(unknown: Array) -> Array:
        return stretch(vehicle, pose(unknown), "track_bar.frame", "track_bar.axle")[..., None]

    unknown = least_energy(
        lambda unknown: deflections(vehicle, pose(unknown)),
        across if is_centred else track_bar,
        np.zeros((*heaves.shape, 4)),
    )
    return pose(unknown)


def deflections(vehicle: Vehicle, pose: Pose) -> Array:
    """Deflections of all bushes, array (N, H, M), each times the root of its stiffness, mm."""
    if vehicle.guide == "vertical":
        yawed, pitched = pose.rotation[..., 1, 0], pose.rotation[..., 2, 0]
        return np.stack([pose.shift[..., 0], LEVER * yawed, LEVER * pitched], axis=-1)
    if vehicle.guide == "radius-arms":
        return _of_radius_arms(vehicle, pose)
    return np.stack(
        [
            np.sqrt(vehicle.stiffness[f"{arm}.{side}"])[:, None]
            * stretch(vehicle, pose, f"guide.{arm}_frame.{side}", f"guide.{arm}_axle.{side}")
            for arm in ARMS
            for side in SIDES
        ],
        axis=-1,
    )


def stretch(vehicle: Vehicle, pose: Pose, frame: str, axle: str) -> Array:
    """Growth of the distance between two points, array (N, H), mm."""
    start, end = vehicle.points[frame], vehicle.points[axle]
    length = np.linalg.norm(end - start, axis=-1)[:, None]
    now = pose.carried(end) - start[:, None]
    return np.sqrt((now * now).sum(axis=-1)) - length


def _of_radius_arms(vehicle: Vehicle, pose: Pose) -> Array:
    sideways = np.sqrt(vehicle.stiffness["sideways"])
    lengthwise = np.ones_like(sideways)
    weights = np.stack([lengthwise, sideways, lengthwise], axis=-1)[:, None]
    ends = [vehicle.points[f"guide.frame.{side}"] for side in SIDES]
    return np.concatenate([weights * (pose.carried(end) - end[:, None]) for end in ends], axis=-1)


def _pose(vehicle: Vehicle, heaves: Array, unknown: Array) -> Pose:
    ahead, across, pitch, yaw = np.moveaxis(unknown, -1, 0)
    shift = np.stack([ahead, across, heaves.astype(unknown.dtype)], axis=-1)
    rotation = pitched_and_yawed(pitch / LEVER, yaw / LEVER)
    return Pose(vehicle.middle[:, None], shift, rotation)
