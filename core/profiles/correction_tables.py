"""The [[corrections]] and [[conversions]] of a profile or a parts shelf, as typed values.

Every function that reads a table raises `core.documents.entries.EntryError`, which says what would
be right.
"""

from collections.abc import Collection, Mapping, Sequence
from typing import Any

from core.documents.document import value_at
from core.documents.entries import EntryError, choice_at, repeats_at
from core.documents.tables import (
    length_with_unit,
    line_at,
    quantity_above_zero,
    refuse_unknown,
    tables_at,
    texts_at,
)
from core.kinematics.pivots import RIDE_HEIGHT
from core.profiles.conversions import CONVERSION_KEYS, Change, Conversion, conversion_at
from core.profiles.corrections import MOVABLE, Correction, ball_at
from core.profiles.part import PART_KEYS, part_at
from core.text import quantity
from core.text.plain_text import plain

LEAST_RIDE_HEIGHT = quantity.parse_length("1/2 in")
"""mm; smallest change of the ride height that is tried, where a profile says nothing else."""

LARGEST_RISE = 1000.0
"""mm; no pivot can be moved further."""

MOST_COMBINATIONS = 1_000_000
"""Combinations of the corrections of one file; a search among more would fill the memory."""

CORRECTION_KEYS = (
    *("name", "pivot", "rises", "caution", "not_with", "least_rise", "ball"),
    *PART_KEYS,
)
"""Keys of a [[corrections]] table."""


def changes_at(tables: Mapping[str, Any]) -> tuple[Change, ...]:
    """Every [[corrections]] and every [[conversions]] table of a file, corrections first.

    No two have the same name.
    """
    corrections, conversions = corrections_at(tables), conversions_at(tables)
    names = {correction.name for correction in corrections}
    for number, conversion in enumerate(conversions, 1):
        if conversion.name in names:
            raise EntryError(
                f"conversions {number}.name",
                f"“{plain(conversion.name)}” is a correction's name; each name is used once",
            )
    _refuse_too_many(corrections, len(conversions))
    return (*corrections, *conversions)


def conversions_at(tables: Mapping[str, Any]) -> tuple[Conversion, ...]:
    """Every [[conversions]] table of a file; no two have the same name."""
    conversions: list[Conversion] = []
    for place, table in tables_at(tables, "conversions"):
        refuse_unknown({place: table}, [f"{place}.{key}" for key in CONVERSION_KEYS])
        conversion = conversion_at({place: table}, place)
        _refuse_repeated(conversion.name, conversions, place)
        conversions.append(conversion)
    return tuple(conversions)


def corrections_at(tables: Mapping[str, Any]) -> tuple[Correction, ...]:
    """Every [[corrections]] table of a file; no two have the same name.

    The file's own `least_rise` holds for each correction that has none.
    """
    least_rise = _least_rise(tables, "least_rise")
    corrections: list[Correction] = []
    for place, table in tables_at(tables, "corrections"):
        correction = _correction(table, place, least_rise)
        _refuse_repeated(correction.name, corrections, place)
        corrections.append(correction)
    _refuse_too_many(corrections)
    return tuple(corrections)


def _refuse_too_many(corrections: Collection[Correction], conversions: int = 0) -> None:
    """Raise EntryError for more combinations than can be searched.

    They are those of up to three corrections, and those of each conversion with up to two.
    """
    ones = twos = threes = 0  # combinations of so many of the corrections so far
    for rises in (len(correction.rises_tried) for correction in corrections):
        threes, twos, ones = threes + twos * rises, twos + ones * rises, ones + rises
    count = ones + twos + threes + conversions * (1 + ones + twos)
    if count > MOST_COMBINATIONS:
        raise EntryError(
            "corrections",
            f"offer {count:,} combinations; at most {MOST_COMBINATIONS:,} can be "
            "searched, so list fewer rises",
        )


def _refuse_repeated(name: str, others: Sequence[Change], place: str) -> None:
    if any(name == other.name for other in others):
        raise EntryError(
            f"{place}.name", f"“{plain(name)}” is written twice: each name is used once"
        )


def _correction(table: Mapping[str, Any], place: str, least_rise: float | None) -> Correction:
    placed = {place: table}
    refuse_unknown(placed, [f"{place}.{key}" for key in CORRECTION_KEYS])
    pivot = choice_at(placed, f"{place}.pivot", MOVABLE)
    rises = _rises(placed, f"{place}.rises")
    return Correction(
        name=line_at(placed, f"{place}.name"),
        pivot=pivot,
        rises=rises,
        caution=line_at(placed, f"{place}.caution"),
        not_with=texts_at(placed, f"{place}.not_with", "ride height"),
        least_rise=_least_of(placed, f"{place}.least_rise", pivot, rises, least_rise),
        needs_ball=ball_at(placed, f"{place}.ball"),
        needs=texts_at(placed, f"{place}.needs", "ride height"),
        part=part_at(placed, place),
    )


def _rises(tables: Mapping[str, Any], path: str) -> tuple[float, ...]:
    rises = repeats_at(tables, path, length_with_unit, "1 1/2 in")
    if not rises or 0.0 in rises or len(set(rises)) < len(rises):
        raise EntryError(path, 'should be different rises, none of them 0: ["1 in", "2 in"]')
    if max(map(abs, rises)) > LARGEST_RISE:
        raise EntryError(path, 'should be rises of at most 1 m, such as ["1 in", "2 in"]')
    return rises


def _least_rise(tables: Mapping[str, Any], path: str) -> float | None:
    if value_at(tables, path) is None:
        return None
    return quantity_above_zero(tables, path, length_with_unit, "1/2 in")


def _least_of(
    tables: Mapping[str, Any],
    path: str,
    pivot: str,
    rises: tuple[float, ...],
    of_file: float | None,
) -> float:
    """Least rise of a correction: its own, else its file's, else the usual one."""
    own = _least_rise(tables, path)
    largest = max(map(abs, rises))
    if own is not None:
        if own > largest:
            raise EntryError(path, "is more than every rise on offer: none would be tried")
        return own
    usual = LEAST_RIDE_HEIGHT if pivot == RIDE_HEIGHT else min(map(abs, rises))
    return min(usual if of_file is None else of_file, largest)


def refuse_unknown_names(changes: Sequence[Change], known: Collection[str]) -> None:
    """Raise EntryError for a `not_with` or `needs` that names no other known change.

    A change cannot need what it excludes.
    """
    numbers: dict[str, int] = {}
    for change in changes:
        numbers[change.table] = number = numbers.get(change.table, 0) + 1
        for key, names in (("not_with", change.not_with), ("needs", change.needs)):
            for name in names:
                path = f"{change.table} {number}.{key}"
                if name not in known or name == change.name:
                    raise EntryError(
                        path, f"“{plain(name)}” should be the name of another correction"
                    )
                if key == "needs" and name in change.not_with:
                    raise EntryError(path, f"“{plain(name)}” is excluded by not_with as well")
