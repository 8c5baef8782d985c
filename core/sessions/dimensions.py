"""Dimensions beside the pivots: each with its standard uncertainty, measured or assumed.

An assumed value has the uncertainty of its half-width, u = w / sqrt(3) (GUM, JCGM 100:2008,
4.3.7). It enters every result exactly as a reading does.
"""

from dataclasses import dataclass
from math import sqrt

from core.documents.entries import EntryError, quantity_at
from core.kinematics.guide import guide_readings
from core.kinematics.pivots import GuideKind, Layout
from core.profiles.defaults import bounds_of
from core.readings.guide_survey import GUIDE, KINGPIN, castor_readings, pitch_gain_of
from core.readings.reading import Instruments, Kind, standard_uncertainty
from core.readings.survey import WHEELS, reading_at
from core.sessions.sourced import Parse, Sources
from core.text import quantity

_ARMS: dict[str, Kind] = {"steering.arm": "length", "steering.pitman_arm": "length"}
_INVERTED_Y: dict[str, Kind] = {
    "tie_rod.near_arm": "length",
    "tie_rod.joint_from_far_ball": "length",
}

TRACK = "wheels.track"
"""Distance between the middles of the treads. Only photographs need it."""

READ: dict[str, Kind] = {
    **_ARMS,
    **_INVERTED_Y,
    "wheels.hub_height": WHEELS["wheels.hub_height"],
    TRACK: "length",
    **KINGPIN,
    **GUIDE,
}
"""Kind of every dimension that is read with repeats, by name."""

PLAIN_NUMBERS = ("steering.ratio", "guide.fore_aft_gain", "guide.effective_length")
_ABOVE_ZERO = (
    *_ARMS,
    *_INVERTED_Y,
    "wheels.hub_height",
    TRACK,
    "steering.ratio",
    "guide.span",
    "guide.effective_length",
)


@dataclass(frozen=True)
class Dimension:
    """A dimension of the vehicle beside its pivots.

    Attributes
    ----------
    name : str
        Name of its reading, "steering.arm".
    value, u : float
        Value and standard uncertainty; mm, rad, rad/mm or a plain number.
    is_assumed : bool
        True if nobody measured it.
    repeats : int
        Number of readings; 0 where it was assumed.
    """

    name: str
    value: float
    u: float
    is_assumed: bool
    repeats: int = 0


def dimension_names(layout: Layout, guide: GuideKind) -> tuple[str, ...]:
    """Names of the dimensions that a vehicle has."""
    of_tie_rod = tuple(_INVERTED_Y) if layout == Layout.INVERTED_Y else ()
    return (
        *_ARMS,
        "steering.ratio",
        *of_tie_rod,
        "wheels.hub_height",
        *KINGPIN,
        "guide.span",
        *guide_readings(guide),
    )


def dimension_at(
    sources: Sources, name: str, guide: GuideKind, instruments: Instruments
) -> Dimension:
    """A dimension of a document: measured, else assumed.

    Raises
    ------
    core.documents.entries.EntryError
        The entry is no quantity of its kind, or is not above zero where it has to be.
    core.profiles.profile.ProfileError
        The profile is needed and cannot be loaded.
    """
    measured = _measured(sources, name, instruments)
    if measured is None:
        return _assumed(sources, name, guide)
    bounds = bounds_of(name, guide)
    if not bounds.holds_or_is_less(measured.value):
        raise EntryError(
            f"readings.{name}",
            f'is more than {bounds.largest}; it should be such as "{bounds.example}"',
        )
    return measured


def _measured(sources: Sources, name: str, instruments: Instruments) -> Dimension | None:
    """A measured dimension; None where it was not taken."""
    if name in READ:
        reading = reading_at(sources.document, name, READ[name])
        if reading is not None:
            _refuse_not_above_zero(f"readings.{name}", name, reading.value)
            u = standard_uncertainty(reading, instruments)
            return Dimension(name, reading.value, u, False, len(reading.repeats))
    if name == "guide.pitch_gain":
        rows = castor_readings(sources.document)
        if gain := pitch_gain_of(rows, instruments):
            return Dimension(name, gain.value, gain.u, False, len(rows))
    if name == "steering.ratio":
        path = f"readings.{name}"
        ratio = quantity_at(sources.document, path, quantity.parse_number, "16")
        if ratio is not None:
            _refuse_not_above_zero(path, name, ratio)
            return Dimension(name, ratio, 0.0, False, 1)
    return None


def _assumed(sources: Sources, name: str, guide: GuideKind) -> Dimension:
    """Dimension of the document's [assumed] tables, else of its profile."""
    parse, example = parser_of(sources, name)
    value = quantity_at(sources.document, f"assumed.{name}", parse, example)
    if value is None:
        value = sources.profile().defaults.value(name, guide)
    _refuse_not_above_zero(f"assumed.{name}", name, value)
    bounds = bounds_of(name, guide)
    if not bounds.holds(value):
        raise EntryError(f"assumed.{name}", bounds.expected)
    path = f"assumed_within.{name}"
    within = quantity_at(sources.document, path, parse, example)
    if within is None:
        within = sources.profile().defaults.within(name, guide)
    if within < 0:
        raise EntryError(path, f'is a half-width and cannot be below 0, such as "{example}"')
    if not bounds.holds(value, within):
        raise EntryError(path, f"is too wide: less and plus it, the value {bounds.expected}")
    return Dimension(name, value, within / sqrt(3), is_assumed=True)


def parser_of(sources: Sources, name: str) -> tuple[Parse, str]:
    """Parser of a dimension, and an example of it for messages."""
    if name in PLAIN_NUMBERS:
        return quantity.parse_number, "16"
    if READ[name] == "angle":
        return quantity.parse_angle, "5 deg"
    if READ[name] == "gain":
        return quantity.parse_angle_per_length, "-0.7 deg/in"
    return sources.parse_length, "6 1/2 in"


def _refuse_not_above_zero(path: str, name: str, value: float) -> None:
    if name in _ABOVE_ZERO and value <= 0:
        raise EntryError(path, "should be more than 0")
