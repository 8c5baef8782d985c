"""The tables of a profile, as typed values.

A record has the same [[events]]. Every function that reads a table raises
`core.documents.entries.EntryError`, which says what would be right.
"""

from collections.abc import Callable, Mapping
from typing import Any

from core.documents.document import value_at, with_value
from core.documents.entries import EntryError, flag_at, quantity_at
from core.documents.tables import (
    angle_with_unit,
    length_with_unit,
    line_at,
    quantity_above_zero,
    range_at,
    refuse_unknown,
    required_quantity,
    tables_at,
)
from core.kinematics.pivots import GUIDE_PIVOTS
from core.kinematics.road_events import Event
from core.profiles.defaults import CONDITIONS, MEASURED, USUAL, Bounds, Defaults
from core.profiles.limits import LARGEST_WORKING_TRAVEL, Limits, refuse_impossible_limits
from core.readings.reading import Instruments
from core.readings.survey import SURVEY, WHEELS
from core.text import quantity

RANGES: tuple[str, ...] = (
    *SURVEY,
    *WHEELS,
    "tie_rod.joint_from_far_ball",
    "tie_rod.near_arm",
    "steering.arm",
    "steering.pitman_arm",
    "steering.ratio",
    "travel.bump",
    "travel.droop",
    "wheelbase",
    "ride_height",
    "kingpin.castor",
    "kingpin.inclination",
    "guide.span",
    "guide.pitch_gain",
    *(
        f"{pivot}.{coordinate}"
        for pivots in GUIDE_PIVOTS.values()
        for pivot in pivots
        for coordinate in ("height", "station")
    ),
)
"""Every reading that has a usual range in a profile, by name."""

USUAL_CLEARANCE = quantity.parse_length("1 1/2 in")
"""mm; distance between the centre lines of the two bars below which a plan says so."""

WIDEST_CLEARANCE = quantity.parse_length("12 in")
"""mm; no profile asks for more."""

LARGEST_OF_EVENT = {
    "rise": (60.0, "60 s"),
    "hold": (600.0, "600 s"),
    "speed": (quantity.parse_speed("300 km/h"), "300 km/h"),
    "deceleration": (quantity.parse_acceleration("30 m/s2"), "30 m/s2"),
}
"""Largest value of each part of an event, and its words; no road asks for more."""

LARGEST_WINDUP = quantity.parse_angle("10 deg")
"""rad; no brakes turn an axle further."""


def ranges_at(tables: Mapping[str, Any]) -> dict[str, tuple[float, float]]:
    """Usual smallest and largest value of each of RANGES, mm, rad, rad/mm or a plain number."""
    return {name: range_at(tables, f"ranges.{name}", *_range_parser(name)) for name in RANGES}


def _range_parser(reading: str) -> tuple[Callable[[str], float], tuple[str, str]]:
    """Parser for the range of a reading, and an example of such a range."""
    if reading == "steering.ratio":
        return quantity.parse_number, ("12", "22")
    if reading == "guide.pitch_gain":
        return quantity.parse_angle_per_length, ("-2 deg/in", "0.5 deg/in")
    if reading.endswith(".slope") or reading.startswith("kingpin."):
        return angle_with_unit, ("-5 deg", "25 deg")
    return length_with_unit, ("18 in", "30 in")


def defaults_at(tables: Mapping[str, Any]) -> Defaults:
    """The defaults of a profile with their half-widths, each within its bounds."""
    bounds = CONDITIONS | MEASURED
    tables = _with_usual(tables)
    values = {path: _default(tables, path, bounds[path]) for path in bounds}
    half_widths = {
        path: _half_width(tables, path, MEASURED[path], values[path]) for path in MEASURED
    }
    return Defaults(values, half_widths)


def _with_usual(tables: Mapping[str, Any]) -> Mapping[str, Any]:
    """The tables of a profile, with the defaults that it can leave out."""
    for path, texts in USUAL.items():
        for table, text in zip(("defaults", "defaults_within"), texts, strict=True):
            if value_at(tables, f"{table}.{path}") is None:
                tables = with_value(tables, f"{table}.{path}", text)
    return tables


def _default(tables: Mapping[str, Any], path: str, bounds: Bounds) -> float:
    place = f"defaults.{path}"
    value = quantity_at(tables, place, bounds.parse, bounds.example)
    if value is None:
        raise EntryError(place, f'is missing; it should be a quantity such as "{bounds.example}"')
    if not bounds.holds(value):
        raise EntryError(place, bounds.expected)
    return value


def _half_width(tables: Mapping[str, Any], path: str, bounds: Bounds, value: float) -> float:
    place = f"defaults_within.{path}"
    half_width = quantity_above_zero(tables, place, bounds.parse, bounds.example.lstrip("-"))
    if not bounds.holds(value, half_width):
        raise EntryError(
            place,
            f"is too wide: the default less and plus its half-width should lie between "
            f"{bounds.smallest} and {bounds.largest}",
        )
    return half_width


def instruments_at(tables: Mapping[str, Any]) -> Instruments:
    """The instruments of a profile; a graduation is above zero, a half-width can be zero."""
    return Instruments(
        tape=quantity_above_zero(tables, "instruments.tape", length_with_unit, "1/16 in"),
        sighting=required_quantity(tables, "instruments.sighting", length_with_unit, "1/8 in"),
        floor=required_quantity(tables, "instruments.floor", length_with_unit, "1/16 in"),
        angle_finder=quantity_above_zero(
            tables, "instruments.angle_finder", angle_with_unit, "0.5 deg"
        ),
        seating=required_quantity(tables, "instruments.seating", angle_with_unit, "0.5 deg"),
    )


def limits_at(tables: Mapping[str, Any]) -> Limits:
    """The limits of a profile, each above zero and not too large to be a limit."""

    def angle(path: str, example: str) -> float:
        return quantity_above_zero(tables, f"limits.{path}", angle_with_unit, example)

    def travel(direction: str) -> float:
        path = f"limits.working_travel.{direction}"
        return quantity_above_zero(tables, path, length_with_unit, "2 in")

    limits = Limits(
        parallel=angle("parallel", "1.5 deg"),
        flat=angle("flat", "10 deg"),
        length_ratio=quantity_above_zero(
            tables, "limits.length_ratio", quantity.parse_number, "0.85"
        ),
        steer=angle("steer", "0.5 deg"),
        toe_change=angle("toe_change", "0.25 deg"),
        working_bump=travel("bump"),
        working_droop=travel("droop"),
    )
    refuse_impossible_limits(limits)
    return limits


def clearance_at(tables: Mapping[str, Any]) -> float:
    """Clearance of the two bars that a profile asks for, mm; USUAL_CLEARANCE where it does not."""
    if value_at(tables, "clearance") is None:
        return USUAL_CLEARANCE
    clearance = quantity_above_zero(tables, "clearance", length_with_unit, "1 1/2 in")
    if clearance > WIDEST_CLEARANCE:
        raise EntryError("clearance", 'should be at most 12 in, such as "1 1/2 in"')
    return clearance


def events_at(tables: Mapping[str, Any]) -> tuple[Event, ...]:
    """Every [[events]] table of a profile."""
    return tuple(event_from(table, place) for place, table in tables_at(tables, "events"))


def event_from(table: Mapping[str, Any], place: str) -> Event:
    """Event in one [[events]] table; `place` names the table in messages, such as "events 1"."""
    placed = {place: table}
    refuse_unknown(placed, [f"{place}.{key}" for key in Event.__dataclass_fields__])
    returns = flag_at(placed, f"{place}.returns")
    if returns is None:
        raise EntryError(f"{place}.returns", "is missing; it should be true or false")
    travel = quantity_at(placed, f"{place}.travel", length_with_unit, "2 in")
    if not travel:
        raise EntryError(f"{place}.travel", 'should be a travel other than 0, such as "2 in"')
    if abs(travel) > LARGEST_WORKING_TRAVEL:
        raise EntryError(f"{place}.travel", 'should be at most 24 in, such as "2 in"')
    event = Event(
        name=line_at(placed, f"{place}.name"),
        rise=quantity_above_zero(placed, f"{place}.rise", quantity.parse_duration, "0.25 s"),
        hold=required_quantity(placed, f"{place}.hold", quantity.parse_duration, "0.1 s"),
        returns=returns,
        travel=travel,
        speed=quantity_above_zero(placed, f"{place}.speed", quantity.parse_speed, "60 km/h"),
        deceleration=required_quantity(
            placed, f"{place}.deceleration", quantity.parse_acceleration, "7 m/s2"
        ),
        windup=_windup(placed, f"{place}.windup"),
        windup_within=_windup(placed, f"{place}.windup_within"),
    )
    for key, (largest, words) in LARGEST_OF_EVENT.items():
        if getattr(event, key) > largest:
            raise EntryError(f"{place}.{key}", f"should be at most {words}")
    return event


def _windup(tables: Mapping[str, Any], path: str) -> float:
    """Wind-up of an event or its half-width, rad; 0 where the event has none."""
    if value_at(tables, path) is None:
        return 0.0
    windup = required_quantity(tables, path, angle_with_unit, "0.5 deg")
    if windup > LARGEST_WINDUP:
        raise EntryError(path, 'should be at most 10 deg, such as "0.5 deg"')
    return windup
