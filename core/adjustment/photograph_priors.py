"""Priors of an adjustment with photographs: what is known without a reading and without a mark.

A half-width w counts as a normal prior with u = w / sqrt(3) (GUM, JCGM 100:2008, 4.3.7). All
half-widths are common practice, no source.
"""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import hypot, radians, sqrt
from typing import NamedTuple

import numpy as np

from core.adjustment.camera import AIM, CENTRE, FOCAL, PLACE, RADIAL, UNKNOWNS
from core.adjustment.prior import Prior
from core.kinematics.vectors import Array
from core.readings.photograph import CONTACTS, HUBS, OWN_POINTS, PLUMB, Photograph
from core.text.quantity import INCH

OFFSET_WITHIN = 30 * INCH
"""Half-width of a pivot's offset from the centre plane, mm."""

HUB_STATION_WITHIN = INCH / 4
HUBS_LEVEL_WITHIN = INCH / 2
CONTACT_STATION_WITHIN = CONTACT_ACROSS_WITHIN = 1 * INCH
CONTACT_HEIGHT_WITHIN = INCH / 4
PLUMB_WITHIN = INCH / 8
CENTRE_WITHIN = 0.01
"""mm; the centre plane lies midway between the hubs by definition where no offset was read."""
PLUMB_NEAR = 1_000.0
"""Half-width of a plumb line about the axle's middle, mm. A single photograph cannot tell how far
away the line is; it tells what is upright, and that does not depend on the distance."""
OWN_NEAR = 5_000.0
"""Half-width of an own point about the axle's middle, mm; so wide that it tells nothing."""

CAMERA_AHEAD, CAMERA_WITHIN = 2_500.0, 3_000.0
AIM_WITHIN = (radians(20.0), radians(15.0), radians(5.0))
"""Half-widths of yaw, pitch and roll, rad."""
RADIAL_WITHIN = 0.03
CENTRE_SHIFT_WITHIN = 0.01
"""Half-width of the principal point from the picture's middle, as part of the width."""

FILM_DIAGONAL = 43.27
"""Diagonal of a picture on 35 mm film, mm."""
F35_WITHIN = 0.05
USUAL_FOCAL, FOCAL_WITHIN = 0.75, 0.25
"""Focal length as part of the longer side where it is not known, and its relative half-width."""

WHEELS = "photographs.wheels"
"""Name of the assumption that hubs and tyres stand where those of a straight axle stand."""


class Usual(NamedTuple):
    """A value with its standard uncertainty, mm."""

    value: float
    u: float


@dataclass(frozen=True)
class Surroundings:
    """Values about a vehicle that are known without its photographs, mm.

    Attributes
    ----------
    heights, stations : mapping of Usual
        By pivot. A pivot whose height or station was read is left out.
    hub_height : Usual
        Read or assumed.
    track : Usual or None
        Tread centre to tread centre, read or assumed; None where both wheel offsets were read.
    wheels : mapping of Usual
        Wheel offsets that were read, "wheels.left_offset".
    """

    heights: Mapping[str, Usual]
    stations: Mapping[str, Usual]
    hub_height: Usual
    track: Usual | None
    wheels: Mapping[str, Usual]


def points_of(pivots: tuple[str, ...], marked: Sequence[str]) -> tuple[str, ...]:
    """Points of an adjustment: the pivots, both hubs, and every other point that marks place.

    Parameters
    ----------
    pivots : tuple of str
        Pivots that the vehicle has.
    marked : sequence of str
        The point of every mark that counts. An own point tells something from two marks on, and a
        plumb line from both its ends on.
    """
    has_plumb = set(PLUMB) <= set(marked)
    return (
        *pivots,
        *HUBS,
        *(contact for contact in CONTACTS if contact in marked),
        *(PLUMB if has_plumb else ()),
        *(point for point in OWN_POINTS if marked.count(point) > 1),
    )


def point_priors(
    points: tuple[str, ...],
    pivots: tuple[str, ...],
    taken: Collection[str],
    surroundings: Surroundings,
) -> tuple[Prior, ...]:
    """Priors of the points.

    Parameters
    ----------
    points : tuple of str
        As from `points_of`.
    pivots : tuple of str
        Pivots that the vehicle has.
    taken : collection of str
        Names of the readings that were taken and count.
    surroundings : Surroundings
    """
    has_datum = any(name.endswith(".offset") for name in taken) or bool(surroundings.wheels)
    priors = [
        *_of_pivots(pivots, taken, surroundings, has_datum),
        *_of_hubs(pivots, surroundings, has_datum),
    ]
    for contact, hub in zip(CONTACTS, HUBS, strict=True):
        if contact in points:
            priors += _of_contact(contact, hub)
    if PLUMB[0] in points:
        top, bottom = PLUMB
        priors += (
            _prior("photographs.plumb", {f"{top}.{axis}": 1.0, f"{bottom}.{axis}": -1.0}, 0.0, w)
            for axis, w in (("x", PLUMB_WITHIN), ("y", PLUMB_WITHIN))
        )
    for point in points:
        if point in PLUMB:
            priors += _anywhere(point, surroundings, PLUMB_NEAR)
        if point in OWN_POINTS:
            priors += _anywhere(point, surroundings, OWN_NEAR)
    return tuple(priors)


def _of_pivots(
    pivots: tuple[str, ...],
    taken: Collection[str],
    surroundings: Surroundings,
    has_datum: bool,
) -> Iterator[Prior]:
    for pivot in pivots:
        if f"{pivot}.height" not in taken:
            height = surroundings.heights[pivot]
            yield Prior(f"{pivot}.height", {f"{pivot}.z": 1.0}, *height)
        if f"{pivot}.offset" not in taken:
            about_centre = {f"{pivot}.y": 1.0}
            if has_datum:
                about_centre |= {f"{hub}.y": -0.5 for hub in HUBS}
            yield _prior(f"{pivot}.offset", about_centre, 0.0, OFFSET_WITHIN)
        if f"{pivot}.station" not in taken:
            station = surroundings.stations[pivot]
            yield Prior(f"{pivot}.station", {f"{pivot}.x": 1.0}, *station)


def _of_hubs(
    pivots: tuple[str, ...], surroundings: Surroundings, has_datum: bool
) -> Iterator[Prior]:
    left, right = HUBS
    for hub in HUBS:
        yield _prior(WHEELS, {f"{hub}.x": 1.0}, 0.0, HUB_STATION_WITHIN)
    mean_height = {f"{left}.z": 0.5, f"{right}.z": 0.5}
    yield Prior("wheels.hub_height", mean_height, *surroundings.hub_height)
    yield _prior(WHEELS, {f"{left}.z": 1.0, f"{right}.z": -1.0}, 0.0, HUBS_LEVEL_WITHIN)
    if surroundings.track is not None:
        across = {f"{left}.y": 1.0, f"{right}.y": -1.0}
        yield Prior("wheels.track", across, *surroundings.track)
    for name, hub in (("wheels.left_offset", left), ("wheels.right_offset", right)):
        if name in surroundings.wheels:
            yield Prior(name, {f"{hub}.y": -1.0}, *surroundings.wheels[name])
    middle = {f"{left}.y": 0.5, f"{right}.y": 0.5}
    if not has_datum:
        yield _prior(WHEELS, middle, 0.0, CENTRE_WITHIN)
    elif len(surroundings.wheels) < len(HUBS):  # the pivots lie about the centre plane
        about_pivots = {f"{pivot}.y": -1 / len(pivots) for pivot in pivots}
        yield _prior(WHEELS, middle | about_pivots, 0.0, OFFSET_WITHIN)


def _of_contact(contact: str, hub: str) -> Iterator[Prior]:
    yield _prior(WHEELS, {f"{contact}.x": 1.0}, 0.0, CONTACT_STATION_WITHIN)
    yield _prior(WHEELS, {f"{contact}.z": 1.0}, 0.0, CONTACT_HEIGHT_WITHIN)
    across = {f"{contact}.y": 1.0, f"{hub}.y": -1.0}
    yield _prior(WHEELS, across, 0.0, CONTACT_ACROSS_WITHIN)


def _anywhere(point: str, surroundings: Surroundings, within: float) -> Iterator[Prior]:
    """Priors of a point about the axle's middle, because nothing else places it."""
    middle = {"x": 0.0, "y": 0.0, "z": surroundings.hub_height.value}
    for axis, value in middle.items():
        yield _prior("photographs.anywhere", {f"{point}.{axis}": 1.0}, value, within)


def _prior(name: str, coefficients: Mapping[str, float], value: float, within: float) -> Prior:
    return Prior(name, coefficients, value, within / sqrt(3))


def camera_name(photograph: Photograph) -> str:
    """Name of the camera of a photograph among the sources of uncertainty."""
    return f"photographs.{photograph.number}.camera"


def camera_prior(photograph: Photograph, hub_height: float, centre: float) -> tuple[Array, Array]:
    """Values (10,) of a camera's unknowns before its marks are looked at, and their u (10,).

    Parameters
    ----------
    photograph : Photograph
    hub_height, centre : float
        Height and y of the axle's middle, mm.
    """
    value, within = np.zeros(UNKNOWNS), np.zeros(UNKNOWNS)
    value[PLACE], within[PLACE] = (CAMERA_AHEAD, centre, hub_height), CAMERA_WITHIN
    within[AIM] = AIM_WITHIN
    width, height = photograph.width, photograph.height
    if photograph.f35 is None:
        value[FOCAL] = USUAL_FOCAL * max(width, height)
        within[FOCAL] = FOCAL_WITHIN * value[FOCAL]
    else:
        value[FOCAL] = photograph.f35 * hypot(width, height) / FILM_DIAGONAL
        within[FOCAL] = F35_WITHIN * value[FOCAL]
    within[RADIAL] = RADIAL_WITHIN
    within[CENTRE] = CENTRE_SHIFT_WITHIN * width
    return value, within / sqrt(3)
