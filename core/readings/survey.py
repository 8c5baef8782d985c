"""The survey: all readings that tape and angle finder can take of the pivots.

A reading has a name, "track_bar.frame.height". Its path in a record is "readings." + name, and its
value there is a list of repeats.
"""

from collections.abc import Mapping
from functools import partial
from typing import Any

from core.documents.entries import flag_at, repeats_at, units_of
from core.kinematics.pivots import NEAR_BALL, PIVOTS, Layout, pivots_of
from core.readings.reading import Kind, Reading
from core.text import quantity

LINKS = ("track_bar", "drag_link")

BRACES = {
    "braces.frame_ends": ("track_bar.frame", "drag_link.frame"),
    "braces.axle_ends": ("track_bar.axle", "drag_link.axle"),
    "braces.frame_to_axle": ("track_bar.frame", "drag_link.axle"),
}
"""Braces, and the two pivots that each runs between."""

COORDINATES: tuple[Kind, ...] = ("height", "offset", "station")

SURVEY: dict[str, Kind] = {
    **{f"{pivot}.{kind}": kind for pivot in (*PIVOTS, NEAR_BALL) for kind in COORDINATES},
    **{f"{link}.length": "length" for link in LINKS},
    **{f"{link}.slope": "slope" for link in LINKS},
    **dict.fromkeys(BRACES, "brace"),
}
"""Kind of every reading of the survey, by name."""

WHEELS: dict[str, Kind] = {
    "wheels.hub_height": "height",
    "wheels.left_offset": "offset",
    "wheels.right_offset": "offset",
}
"""Kind of every reading of the wheels, by name; they place the vehicle's centre plane."""


def ends_of(name: str) -> tuple[str, ...]:
    """The pivots of a survey reading: both ends of a length, slope or brace, or its one pivot."""
    link, _, rest = name.partition(".")
    if rest in ("length", "slope"):
        return (f"{link}.frame", f"{link}.axle")
    return BRACES.get(name, (name.rpartition(".")[0],))


def reading_at(document: Mapping[str, Any], name: str, kind: Kind) -> Reading | None:
    """The reading of this name in a document, or None where it was not taken.

    Raises
    ------
    core.documents.entries.EntryError
        The entry is not a list of quantities of its kind.
    """
    path = f"readings.{name}"
    if kind in ("slope", "angle"):
        repeats = repeats_at(document, path, quantity.parse_angle, "8.5 deg")
    elif kind == "gain":
        repeats = repeats_at(document, path, quantity.parse_angle_per_length, "-0.7 deg/in")
    else:
        parse = partial(quantity.parse_length, unit=units_of(document))
        repeats = repeats_at(document, path, parse, "17 5/8 in")
    return Reading(name, kind, repeats) if repeats else None


def readings_in(
    document: Mapping[str, Any],
    layout: Layout = Layout.INVERTED_Y,
    has_track_bar: bool = True,
) -> tuple[Reading, ...]:
    """Survey readings of a document that count for a vehicle, in the order of SURVEY.

    The near ball counts only for the inverted-Y, and a track bar only where there is one. A slope
    does not count on a bent bar.
    """
    pivots = pivots_of(layout, has_track_bar)
    bent = {link for link in LINKS if flag_at(document, f"readings.{link}.bent")}
    taken = (
        reading_at(document, name, kind)
        for name, kind in SURVEY.items()
        if all(end in pivots for end in ends_of(name))
        and not (kind == "slope" and name.split(".")[0] in bent)
    )
    return tuple(reading for reading in taken if reading is not None)


def pivots_so_far(document: Mapping[str, Any]) -> dict[str, tuple[float, float, float]]:
    """Centre (x, y, z), mm, of every pivot with a height and an offset; the datum line at y = 0.

    Hub heights and wheel offsets are not pivots: see `wheels_so_far`.
    """
    value = {reading.name: reading.value for reading in readings_in(document)}
    return {
        pivot: (
            value.get(f"{pivot}.station", 0.0),
            -value[f"{pivot}.offset"],
            value[f"{pivot}.height"],
        )
        for pivot in (*PIVOTS, NEAR_BALL)
        if f"{pivot}.offset" in value and f"{pivot}.height" in value
    }


def wheels_so_far(document: Mapping[str, Any]) -> dict[str, float]:
    """Hub height (z) and wheel offsets (as y, to the left of the datum line), mm, where taken."""
    taken = {name: reading_at(document, name, kind) for name, kind in WHEELS.items()}
    return {
        name.removeprefix("wheels."): -reading.value if reading.kind == "offset" else reading.value
        for name, reading in taken.items()
        if reading is not None
    }
