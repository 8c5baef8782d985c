"""The tables of a profile, as typed values.

A parts shelf has the same [[corrections]], and a record the same [[events]]. Every function that
reads a table raises `core.documents.entries.EntryError`, which says what would be right.
"""

from collections.abc import Callable, Collection, Mapping
from typing import Any

from core.documents.entries import EntryError, choice_at, flag_at, quantity_at, repeats_at
from core.documents.tables import (
    angle_with_unit,
    length_with_unit,
    line_at,
    quantity_above_zero,
    range_at,
    refuse_unknown,
    required_quantity,
    tables_at,
    texts_at,
)
from core.kinematics.road_events import Event
from core.profiles.corrections import MOVABLE, Correction
from core.profiles.defaults import EXAMPLES, Defaults
from core.profiles.limits import Limits, refuse_impossible_length_ratio
from core.readings.reading import Instruments
from core.readings.survey import SURVEY, WHEELS
from core.text import quantity
from core.text.plain_text import plain

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
)
"""Every reading that has a usual range in a profile, by name."""


def ranges_at(tables: Mapping[str, Any]) -> dict[str, tuple[float, float]]:
    """Usual smallest and largest value of each of RANGES, mm or rad; the ratio a plain number."""
    return {name: range_at(tables, f"ranges.{name}", *_range_parser(name)) for name in RANGES}


def _range_parser(reading: str) -> tuple[Callable[[str], float], tuple[str, str]]:
    """Parser for the range of a reading, and an example of such a range."""
    if reading == "steering.ratio":
        return quantity.parse_number, ("12", "22")
    if reading.endswith(".slope"):
        return angle_with_unit, ("-5 deg", "25 deg")
    return length_with_unit, ("18 in", "30 in")


def defaults_at(tables: Mapping[str, Any]) -> Defaults:
    """The defaults of a profile, each above zero."""
    return Defaults(
        **{
            key: quantity_above_zero(
                tables,
                f"defaults.{key}",
                quantity.parse_number if key == "ratio" else length_with_unit,
                example,
            )
            for key, example in EXAMPLES.items()
        }
    )


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
    """The limits of a profile, each above zero."""
    length_ratio = quantity_above_zero(tables, "limits.length_ratio", quantity.parse_number, "0.85")
    refuse_impossible_length_ratio(length_ratio)
    return Limits(
        parallel=quantity_above_zero(tables, "limits.parallel", angle_with_unit, "1.5 deg"),
        flat=quantity_above_zero(tables, "limits.flat", angle_with_unit, "10 deg"),
        length_ratio=length_ratio,
        steer=quantity_above_zero(tables, "limits.steer", angle_with_unit, "0.5 deg"),
        toe_change=quantity_above_zero(tables, "limits.toe_change", angle_with_unit, "0.25 deg"),
        working_bump=quantity_above_zero(
            tables, "limits.working_travel.bump", length_with_unit, "2 in"
        ),
        working_droop=quantity_above_zero(
            tables, "limits.working_travel.droop", length_with_unit, "2 in"
        ),
    )


def corrections_at(tables: Mapping[str, Any]) -> tuple[Correction, ...]:
    """Every [[corrections]] table of a file; no two have the same name."""
    corrections: list[Correction] = []
    for place, table in tables_at(tables, "corrections"):
        correction = _correction(table, place)
        if any(correction.name == other.name for other in corrections):
            raise EntryError(
                f"{place}.name", f"“{correction.name}” is written twice: each name is used once"
            )
        corrections.append(correction)
    return tuple(corrections)


def _correction(table: Mapping[str, Any], place: str) -> Correction:
    placed = {place: table}
    refuse_unknown(placed, [f"{place}.{key}" for key in Correction.__dataclass_fields__])
    return Correction(
        name=line_at(placed, f"{place}.name"),
        pivot=choice_at(placed, f"{place}.pivot", MOVABLE),
        rises=_rises(placed, f"{place}.rises"),
        caution=line_at(placed, f"{place}.caution"),
        not_with=texts_at(placed, f"{place}.not_with", "ride height"),
    )


def _rises(tables: Mapping[str, Any], path: str) -> tuple[float, ...]:
    rises = repeats_at(tables, path, length_with_unit, "1 1/2 in")
    if not rises or 0.0 in rises or len(set(rises)) < len(rises):
        raise EntryError(path, 'should be different rises, none of them 0: ["1 in", "2 in"]')
    return rises


def refuse_unknown_exclusions(corrections: Collection[Correction], known: Collection[str]) -> None:
    """Raise EntryError for a `not_with` that names no other known correction."""
    for number, correction in enumerate(corrections, 1):
        for name in correction.not_with:
            if name not in known or name == correction.name:
                raise EntryError(
                    f"corrections {number}.not_with",
                    f"“{plain(name)}” should be the name of another correction",
                )


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
    return Event(
        name=line_at(placed, f"{place}.name"),
        rise=quantity_above_zero(placed, f"{place}.rise", quantity.parse_duration, "0.25 s"),
        hold=required_quantity(placed, f"{place}.hold", quantity.parse_duration, "0.1 s"),
        returns=returns,
        travel=travel,
        speed=quantity_above_zero(placed, f"{place}.speed", quantity.parse_speed, "60 km/h"),
        deceleration=required_quantity(
            placed, f"{place}.deceleration", quantity.parse_acceleration, "7 m/s2"
        ),
    )
