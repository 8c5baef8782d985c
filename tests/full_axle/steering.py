"""Steering: both knuckles turn until drag link and tie rod have their lengths.

The steering wheel is held, so the drag link's frame end stands still. Two lengths give two turns.
"""

import numpy as np

from tests.full_axle.newton import root
from tests.full_axle.rotations import Array, about, turned
from tests.full_axle.statics import Pose, settled
from tests.full_axle.vehicle import KNUCKLES, Vehicle

ACROSS = np.array([0.0, 1.0, 0.0])
"""Spin axis of both wheels at rest: they head straight ahead."""

INCH = 25.4
WORKING_TRAVEL = 2 * INCH
"""Bump and droop over which the peak is taken, mm."""

HEAVES = np.linspace(-WORKING_TRAVEL, WORKING_TRAVEL, 41)


def steer(vehicle: Vehicle, heave: Array) -> tuple[Array, Array]:
    """Steer of the far and of the near wheel, arrays (N, H), to the left positive, rad."""
    pose = settled(vehicle, heave)
    turns = _turns(vehicle, pose)
    far, near = (
        _heading(pose, vehicle.kingpins[knuckle], turns[..., i])
        for i, knuckle in enumerate(KNUCKLES)
    )
    return far, near


def peak_steer(vehicle: Vehicle) -> Array:
    """Largest magnitude of the mean steer over the working travel, array (N,), rad."""
    far, near = steer(vehicle, HEAVES)
    return np.abs((far + near) / 2).max(axis=-1)


def _turns(vehicle: Vehicle, pose: Pose) -> Array:
    """Turns of the far and the near knuckle about their kingpins, array (N, H, 2), rad."""
    far, near, ball = (
        vehicle.points[name] for name in ("tie_rod.far", "tie_rod.near", "drag_link.axle")
    )
    anchor = vehicle.points["drag_link.frame"]
    anchor_now = pose.seen_from_axle(anchor)
    # A ball beside the tie rod's line keeps its place beside it: the rod does not roll.
    part = ((ball - far)[:, 1] / (near - far)[:, 1])[:, None]
    beside = ball - far - part * (near - far)

    def on_knuckle(knuckle: str, point: Array, turn: Array) -> Array:
        foot = vehicle.points[f"kingpin.{knuckle}"]
        rotation = about(vehicle.kingpins[knuckle][:, None], turn)
        return foot[:, None] + turned(rotation, (point - foot)[:, None])

    def growths(turns: Array) -> Array:
        far_now = on_knuckle("far", far, turns[..., 0])
        near_now = on_knuckle("near", near, turns[..., 1])
        if vehicle.layout == "knuckle":
            ball_now = on_knuckle("far", ball, turns[..., 0])
        else:
            ball_now = far_now + part[:, None] * (near_now - far_now) + beside[:, None]
        return np.stack(
            [growth(far_now - near_now, far - near), growth(ball_now - anchor_now, ball - anchor)],
            axis=-1,
        )

    return root(growths, np.zeros((*pose.shift.shape[:-1], 2)))


def growth(now: Array, at_rest: Array) -> Array:
    """Growth of a link's length, array (N, H), mm; vectors (N, H, 3) and (N, 3) along it."""
    return np.sqrt((now * now).sum(axis=-1)) - np.linalg.norm(at_rest, axis=-1)[:, None]


def _heading(pose: Pose, kingpin: Array, turn: Array) -> Array:
    """Heading on the ground of a wheel whose knuckle has turned, array (N, H), rad."""
    spin = turned(pose.rotation @ about(kingpin[:, None], turn), ACROSS)
    return np.arctan2(-spin[..., 0], spin[..., 1])
