"""Rows of a direct check on true vehicles, with drawn errors of the tape."""

from typing import Any

import numpy as np

from tests.full_axle.rotations import Array
from tests.full_axle.steering import INCH, steer
from tests.full_axle.vehicle import Vehicle

BOARD = 36 * INCH
RIDE_HEIGHT = 30 * INCH
LINE = 12 * INCH
AT = np.array([0.0, -3.0, -2.0, -1.0, 1.0, 2.0, 3.0, 0.0]) * INCH
"""Heaves at which the rows are read, ride height first and last, mm."""


def true_steer(vehicle: Vehicle, heave: Array = AT) -> dict[str, Array]:
    """Steer of the left and of the right wheel, arrays (N, H), rad."""
    far, near = steer(vehicle, heave)
    is_left = vehicle.points["drag_link.axle"][:, 1] > vehicle.points["drag_link.frame"][:, 1]
    left = np.where(is_left[:, None], far, near)
    return {"left": left, "right": far + near - left}


def direct_tables(
    steers: dict[str, Array], index: int, rng: np.random.Generator, heave: Array = AT
) -> dict[str, Any]:
    """The [direct] table of one vehicle, read with a board to the sixteenth of an inch."""
    rows = [
        _row(side, float(height), float(turn[index][i]), rng)
        for i, height in enumerate(RIDE_HEIGHT - heave)
        for side, turn in steers.items()
    ]
    return {"method": "board", "board": f"{BOARD / INCH} in", "line": "left", "rows": rows}


def _row(side: str, height: float, turn: float, rng: np.random.Generator) -> dict[str, Any]:
    # The rows start from a random place on the tape; the line need not be parallel to the wheel.
    rise = BOARD * np.tan(turn) / 2
    return {
        "side": side,
        "height": [_taped(height, rng)],
        "front": [_taped(LINE - rise, rng)],
        "rear": [_taped(LINE + rise, rng)],
    }


def _taped(value: float, rng: np.random.Generator) -> str:
    """A length to the nearest sixteenth, at a drawn place between two graduations."""
    error = rng.uniform(-INCH / 32, INCH / 32)
    return f"{(value + error) / INCH:.4f} in"
