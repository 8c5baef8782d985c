"""The way of the tape or of the angle finder for a reading, as seen from the front."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from core.kinematics.pivots import NEAR_BALL, PIVOTS
from core.readings.survey import BRACES
from wizard.views.picture_data import DATUM, LEFT_HUB, LINK_ENDS, RIGHT_HUB, Point


class TapeKind(StrEnum):
    """Kind of a tape path."""

    HEIGHT = "height"
    OFFSET = "offset"
    PLUMB_LINE = "plumb line"
    LINK_TAPE = "link tape"
    SLOPE = "slope"
    FORE_AND_AFT = "fore and aft"
    ALONG_LINK = "along the link"


PITMAN_END, FAR_BALL = LINK_ENDS["drag_link"]

COORDINATES = {
    "height": TapeKind.HEIGHT,
    "offset": TapeKind.OFFSET,
    "station": TapeKind.PLUMB_LINE,
}

TARGETS: Mapping[str, tuple[TapeKind, tuple[str, ...]]] = {
    **{
        f"{pivot}.{coordinate}": (kind, (pivot,))
        for pivot in (*PIVOTS, NEAR_BALL)
        for coordinate, kind in COORDINATES.items()
    },
    **{f"{link}.length": (TapeKind.LINK_TAPE, ends) for link, ends in LINK_ENDS.items()},
    **{f"{link}.slope": (TapeKind.SLOPE, ends) for link, ends in LINK_ENDS.items()},
    **{brace: (TapeKind.LINK_TAPE, ends) for brace, ends in BRACES.items()},
    "wheels.hub_height": (TapeKind.HEIGHT, (LEFT_HUB,)),
    "wheels.left_offset": (TapeKind.OFFSET, (LEFT_HUB,)),
    "wheels.right_offset": (TapeKind.OFFSET, (RIGHT_HUB,)),
    "tie_rod.joint_from_far_ball": (TapeKind.ALONG_LINK, (FAR_BALL, PITMAN_END)),
    "tie_rod.near_arm": (TapeKind.FORE_AND_AFT, (NEAR_BALL,)),
    "steering.arm": (TapeKind.FORE_AND_AFT, (FAR_BALL,)),
    "steering.pitman_arm": (TapeKind.FORE_AND_AFT, (PITMAN_END,)),
}
"""Kind of each reading that the front view shows, and the pivots or hubs it is taken at."""

ALONG_LINK_SHARE = 0.25
"""Part of the link that a tape along it covers in the picture."""


@dataclass(frozen=True)
class TapePath:
    """The way of the tape for one reading.

    Attributes
    ----------
    kind : TapeKind
    targets : tuple of str
        Pivots or hubs that have a ring.
    rings : tuple of Point
        Centres of the rings, mm.
    path : tuple of Point
        From the start of the tape to the point where it is read, mm; empty for a reading that runs
        fore and aft, which the front view cannot show.
    """

    kind: TapeKind
    targets: tuple[str, ...]
    rings: tuple[Point, ...]
    path: tuple[Point, ...]


def tape_path(name: str, places: Mapping[str, Point]) -> TapePath | None:
    """The path of a reading; None for a reading that the front view does not show.

    Parameters
    ----------
    name : str
        Name of the reading, "track_bar.frame.height".
    places : mapping of str to Point
        Place of each pivot and hub ("wheels.left"), mm; a usual place where it is not measured.
    """
    if name not in TARGETS:
        return None
    kind, targets = TARGETS[name]
    path = _path(kind, tuple(places[target] for target in targets))
    if kind is TapeKind.SLOPE:
        targets = ()
    elif kind is TapeKind.ALONG_LINK:
        targets = targets[:1]
    return TapePath(kind, targets, tuple(places[target] for target in targets), path)


def _path(kind: TapeKind, points: tuple[Point, ...]) -> tuple[Point, ...]:
    """The path of a kind from the points of its pivots or hubs, mm."""
    start = points[0]
    match kind:
        case TapeKind.HEIGHT:
            return ((start[0], 0.0), start)
        case TapeKind.OFFSET:
            return ((DATUM, start[1]), start)
        case TapeKind.PLUMB_LINE:
            return (start, (start[0], 0.0))
        case TapeKind.ALONG_LINK:
            return (start, part_way(start, points[1], ALONG_LINK_SHARE))
        case TapeKind.FORE_AND_AFT:
            return ()
        case TapeKind.LINK_TAPE | TapeKind.SLOPE:
            return points


def part_way(start: Point, end: Point, share: float) -> Point:
    """The point at a share of the line from start to end, mm."""
    return start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share
