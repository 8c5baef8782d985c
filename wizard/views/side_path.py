"""The way of the tape or of the angle finder for a reading, as seen from the side."""

from dataclasses import dataclass
from math import cos, sin

from wizard.views.picture_data import Point
from wizard.views.side import SidePicture

KINGPIN = 0.8
"""Half of the length of the kingpin line as a share of the hub height. Invented, for drawing."""

ABOVE_FLOOR = 0.12
"""Height of a tape along the floor as a share of the hub height, so that both are seen."""

FACE = 0.35
"""Half of the length of an angle finder on the axle, as a share of the hub height."""

WORDS = {
    "height": ("up from the floor", "up"),
    "station": ("along the floor, from the axle", "from the axle"),
    "guide.castor": ("angle finder on the axle", "angle finder"),
    "kingpin.castor": ("angle finder along the kingpin", "angle finder"),
    "guide.span": ("across, from left to right", "across"),
    "kingpin.inclination": ("seen from the front", "from the front"),
}
"""Words on the way of the tape, at length and in short."""


@dataclass(frozen=True)
class SidePath:
    """The way of the tape for one reading in the side view.

    Attributes
    ----------
    pivot : str
        Pivot that the tape goes to, or "" for an angle.
    path : tuple of Point
        The way of the tape, mm; a single point for a reading across the vehicle.
    plumb : tuple of Point
        The plumb line dropped for it, mm; () where none is needed.
    words : tuple of str
        Words on the way, at length and in short.
    """

    pivot: str
    path: tuple[Point, ...]
    plumb: tuple[Point, ...]
    words: tuple[str, ...]


def side_path(picture: SidePicture) -> SidePath | None:
    """The path of the reading that is asked for; None where the side view does not show it."""
    name = picture.asked_reading
    pivot, _, kind = name.rpartition(".")
    across, up = picture.hub
    if pivot in picture.pivots and kind == "height":
        place = picture.pivots[pivot]
        return SidePath(pivot, ((place[0], 0.0), place), (), WORDS[kind])
    if pivot in picture.pivots and kind == "station":
        place = picture.pivots[pivot]
        plumb = (place, (place[0], 0.0))
        level = ABOVE_FLOOR * up
        return SidePath(pivot, ((across, level), (place[0], level)), plumb, WORDS[kind])
    if name == "kingpin.castor":
        return SidePath("", kingpin_line(picture.hub, up, picture.castor), (), WORDS[name])
    if name == "guide.castor":
        half = FACE * up
        return SidePath("", ((across - half, up), (across + half, up)), (), WORDS[name])
    if name in WORDS:
        return SidePath("", (picture.hub,), (), WORDS[name])
    return None


def kingpin_line(hub: Point, hub_height: float, lean: float) -> tuple[Point, Point]:
    """Both ends of the kingpin's line, mm; its top leans back by an angle, rad."""
    half = KINGPIN * hub_height
    back, up = half * sin(lean), half * cos(lean)
    return (hub[0] - back, hub[1] - up), (hub[0] + back, hub[1] + up)
