"""The [[corrections]] and [[events]] tables of a profile or of a parts shelf.

Every function here raises `core.documents.entries.EntryError`, which says what would be right.
"""

from collections.abc import Collection, Mapping
from typing import Any

from core.documents.entries import EntryError, flag_at, quantity_at, repeats_at
from core.documents.tables import (
    length_with_unit,
    line_at,
    quantity_above_zero,
    refuse_unknown,
    required_quantity,
    tables_at,
    texts_at,
)
from core.kinematics.road_events import Event
from core.profiles.corrections import MOVABLE, Correction
from core.text import quantity
from core.text.plain_text import plain


def corrections_at(tables: Mapping[str, Any]) -> tuple[Correction, ...]:
    """Every [[corrections]] of a file; no two have the same name."""
    found: list[Correction] = []
    for place, table in tables_at(tables, "corrections"):
        correction = _correction(table, place)
        if any(correction.name == other.name for other in found):
            raise EntryError(f"{place}.name", f"“{correction.name}” is there twice")
        found.append(correction)
    return tuple(found)


def _correction(table: Mapping[str, Any], place: str) -> Correction:
    placed = {place: table}
    refuse_unknown(placed, [f"{place}.{key}" for key in Correction.__dataclass_fields__])
    pivot = line_at(placed, f"{place}.pivot")
    if pivot not in MOVABLE:
        raise EntryError(
            f"{place}.pivot", f"“{plain(pivot)}” is not known; it is one of {', '.join(MOVABLE)}"
        )
    return Correction(
        name=line_at(placed, f"{place}.name"),
        pivot=pivot,
        rises=_rises(placed, f"{place}.rises"),
        caution=line_at(placed, f"{place}.caution"),
        not_with=texts_at(placed, f"{place}.not_with", "ride height"),
    )


def _rises(tables: Mapping[str, Any], path: str) -> tuple[float, ...]:
    rises = repeats_at(tables, path, length_with_unit, "1 1/2 in")
    if not rises or 0.0 in rises or len(set(rises)) < len(rises):
        raise EntryError(path, 'should be different rises, none of them 0: ["1 in", "2 in"]')
    return rises


def exclusions_known(corrections: Collection[Correction], known: Collection[str]) -> None:
    """Refuses a `not_with` that names no known correction."""
    for number, correction in enumerate(corrections, 1):
        for name in correction.not_with:
            if name not in known or name == correction.name:
                raise EntryError(
                    f"corrections {number}.not_with", f"“{plain(name)}” is no other correction"
                )


def event_from(table: Mapping[str, Any], place: str) -> Event:
    """One [[events]] table; `place` names it in messages, such as "events 1"."""
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
