"""The set-up of a direct check from above, as data; the front is at the bottom.

The sizes are invented, only to show where the tape goes.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from core.readings.direct import Method, Side
from wizard.views.above import seen_from_above
from wizard.views.picture_data import Point

HUB, RADIUS, HALF_TYRE = 800.0, 400.0, 115.0
"""mm: a hub from the middle of the axle, a wheel, half a tyre."""

BOARD, CHALK, WALL, PLATE = 460.0, 330.0, 1_150.0, 260.0
"""mm: half a board, a line from its wheel, a wall ahead of the axle, radius of a turn plate."""


@dataclass(frozen=True)
class DirectPicture:
    """The left wheel as it is read, the axle, and what it is read against.

    Attributes
    ----------
    hubs : pair of Point
        Across towards the vehicle's left, and towards the rear, mm; the left one first.
    parts : mapping of str to sequence of Point
        The board, the plate, the beam of a laser, by their names.
    line : sequence of Point
        The chalk line, or the line on the wall; empty without one.
    wall : sequence of Point
        The wall of a laser; empty without one.
    tapes : mapping of str to pair of Point
        Way of each tape, by the reading.
    """

    hubs: tuple[Point, Point] = ((HUB, 0.0), (-HUB, 0.0))
    parts: Mapping[str, tuple[Point, ...]] = field(default_factory=dict)
    line: tuple[Point, ...] = ()
    wall: tuple[Point, ...] = ()
    tapes: Mapping[str, tuple[Point, Point]] = field(default_factory=dict)


def direct_picture(method: Method, line: Side = "left") -> DirectPicture:
    """The set-up of a method.

    Parameters
    ----------
    method : "board", "laser" or "turn-plate"
    line : "left" or "right"
        Side of the wheel on which the line lies.
    """
    outward = 1.0 if line == "left" else -1.0
    if method == "board":
        beside = HUB + outward * HALF_TYRE
        chalk = beside + outward * CHALK

        def across_at(station: float) -> tuple[Point, Point]:
            return seen_from_above(station, beside), seen_from_above(station, chalk)

        (front, front_line), (rear, rear_line) = map(across_at, (BOARD, -BOARD))
        ends = (-1.3 * BOARD, 1.3 * BOARD)
        return DirectPicture(
            parts={"board": (rear, front)},
            line=tuple(seen_from_above(station, chalk) for station in ends),
            tapes={"front": (front, front_line), "rear": (rear, rear_line)},
        )
    if method == "laser":
        mark, half = HUB + outward * CHALK, CHALK + HUB / 2
        return DirectPicture(
            parts={"laser": (seen_from_above(0.0, HUB), seen_from_above(WALL, HUB))},
            line=tuple(seen_from_above(station, mark) for station in (WALL - 60, WALL + 60)),
            wall=tuple(seen_from_above(WALL, across) for across in (HUB - half, HUB + half)),
            tapes={"mark": (seen_from_above(WALL + 50, HUB), seen_from_above(WALL + 50, mark))},
        )
    corners = ((-1, -1), (1, -1), (1, 1), (-1, 1), (-1, -1))
    plate = tuple((HUB + PLATE * across, PLATE * down) for across, down in corners)
    return DirectPicture(parts={"turn plate": plate})
