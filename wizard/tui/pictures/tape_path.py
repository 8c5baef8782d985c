"""Where the tape or the angle finder goes for a reading, as seen from the front."""

from collections.abc import Mapping
from dataclasses import dataclass

from wizard.views.picture_data import Point

LINKS = {
    "track_bar": ("track_bar.frame", "track_bar.axle"),
    "drag_link": ("drag_link.frame", "drag_link.axle"),
    "braces.frame_ends": ("track_bar.frame", "drag_link.frame"),
    "braces.axle_ends": ("track_bar.axle", "drag_link.axle"),
    "braces.frame_to_axle": ("track_bar.frame", "drag_link.axle"),
}
"""What has two ends, and the pivots it runs between."""

ALONG = {
    "tie_rod.joint_from_far_ball": ("drag_link.axle", "drag_link.frame"),
}
"""Readings taken along a link from its first end, short of the second."""

RINGED = {
    "steering.arm": "drag_link.axle",
    "steering.pitman_arm": "drag_link.frame",
    "tie_rod.near_arm": "tie_rod.near",
}
"""Readings that run fore and aft from a pivot, which the front view cannot show."""


@dataclass(frozen=True)
class TapePath:
    """Where a reading is taken.

    Attributes
    ----------
    rings : tuple of Point
        Centres to aim at.
    path : tuple of Point
        From where the tape is held to where it is read; empty where it runs fore and aft.
    plumb : bool
        The path is a plumb line, dropped to the floor.
    words : str
        What is done.
    """

    rings: tuple[Point, ...]
    path: tuple[Point, ...]
    words: str
    plumb: bool = False


def tape_path(name: str, places: Mapping[str, Point], datum: float) -> TapePath | None:
    """The path of a reading; None where the front view has nothing to say about it.

    Parameters
    ----------
    name : str
        Of the reading, "track_bar.frame.height".
    places : mapping of str to Point
        Where each pivot and hub ("wheels.left") is or about is, mm.
    datum : float
        Where the datum line stands, across, mm.
    """
    spot, _, kind = name.rpartition(".")
    if name == "wheels.hub_height":
        return up_from_floor(places["wheels.left"])
    if name in ("wheels.left_offset", "wheels.right_offset"):
        return from_datum(places[name.removesuffix("_offset")], datum)
    if name in RINGED:
        return TapePath((places[RINGED[name]],), (), "fore and aft")
    if name in ALONG:
        start, end = (places[pivot] for pivot in ALONG[name])
        short = (start[0] + (end[0] - start[0]) / 4, start[1] + (end[1] - start[1]) / 4)
        return TapePath((start,), (start, short), "along the link")
    if name in LINKS or spot in LINKS:
        start, end = (places[pivot] for pivot in LINKS.get(name) or LINKS[spot])
        if kind == "slope":
            return TapePath((), (start, end), "angle finder on the bar")
        return TapePath((start, end), (start, end), "tape from ring to ring")
    if spot not in places:
        return None
    if kind == "height":
        return up_from_floor(places[spot])
    if kind == "offset":
        return from_datum(places[spot], datum)
    centre = places[spot]
    return TapePath((centre,), (centre, (centre[0], 0.0)), "plumb line", plumb=True)


def up_from_floor(centre: Point) -> TapePath:
    """A height."""
    return TapePath((centre,), ((centre[0], 0.0), centre), "up from the floor")


def from_datum(centre: Point, datum: float) -> TapePath:
    """An offset."""
    return TapePath((centre,), ((datum, centre[1]), centre), "across from the datum line")
