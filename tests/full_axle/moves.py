"""Work on a true vehicle: a pivot raised or lowered, or the whole frame on its springs.

Afterwards the track bar is set so that the axle stands in the middle, the drag link so that the
wheels head straight ahead, and every bush is at ease again.
"""

from collections.abc import Iterable
from dataclasses import replace

import numpy as np

from tests.full_axle.rotations import Array, turned
from tests.full_axle.statics import settled
from tests.full_axle.steering import peak_steer
from tests.full_axle.vehicle import SIDES, Vehicle, is_on_frame

RIDE_HEIGHT = "ride_height"


def moved(vehicle: Vehicle, moves: Iterable[tuple[str, Array | float]]) -> Vehicle:
    """The vehicles after some moves, each a pivot and its rise (mm, up positive)."""
    for pivot, rise in moves:
        vehicle = raised(vehicle, pivot, np.broadcast_to(rise, (vehicle.count,)))
    return vehicle


def peak_after(vehicle: Vehicle, moves: Iterable[tuple[str, Array | float]]) -> Array:
    """True peak steer after some moves, array (N,), rad."""
    return peak_steer(moved(vehicle, moves))


def raised(vehicle: Vehicle, pivot: str, rise: Array) -> Vehicle:
    """The vehicles with one pivot raised, on both sides where it is one of the guide.

    Parameters
    ----------
    vehicle : Vehicle
    pivot : str
        "track_bar.frame", "drag_link.axle", "guide.frame" and so on, or "ride_height".
    rise : array (N,)
        Up positive, mm.
    """
    if pivot == RIDE_HEIGHT:
        return _with_frame_raised(vehicle, rise)
    names = [f"{pivot}.{side}" for side in SIDES] if pivot.startswith("guide.") else [pivot]
    up = np.stack([np.zeros_like(rise), np.zeros_like(rise), rise], axis=-1)
    return vehicle.with_points({name: vehicle.points[name] + up for name in names})


def _with_frame_raised(vehicle: Vehicle, rise: Array) -> Vehicle:
    """The vehicles with their axle settled that much lower, seen from the axle's middle again."""
    pose = settled(vehicle, -rise[:, None], is_centred=True)
    back = -pose.shift[:, 0]
    points = {
        name: (point if is_on_frame(name) else pose.carried(point)[:, 0]) + back
        for name, point in vehicle.points.items()
    }
    kingpins = {
        knuckle: turned(pose.rotation[:, 0], axis) for knuckle, axis in vehicle.kingpins.items()
    }
    return replace(vehicle, points=points, kingpins=kingpins)
