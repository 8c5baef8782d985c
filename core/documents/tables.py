"""What stands in the tables of a profile or of a parts shelf, beyond single entries.

Everything here raises `core.documents.entries.EntryError`, which names table and key and says
what would be right.
"""

from collections.abc import Callable, Collection, Iterator, Mapping
from typing import Any

from core.documents.document import value_at
from core.documents.entries import EntryError, flag_at, quantity_at, repeats_at, text_at
from core.kinematics.linkage import PIVOTS
from core.kinematics.road_events import Event
from core.profiles.corrections import RIDE_HEIGHT, Correction
from core.text import quantity
from core.text.plain_text import plain
from core.text.quantity import QuantityError

Parse = Callable[[str], float]

MOVABLE = (*PIVOTS, RIDE_HEIGHT)
"""What a correction can move."""


def length(text: str) -> float:
    """Length with its unit, mm: a file has no session to take a missing one from."""
    return quantity.length(_with_a_unit(text, "in or mm"))


def angle(text: str) -> float:
    """Angle with its unit, rad."""
    return quantity.angle(_with_a_unit(text, "deg"))


def _with_a_unit(text: str, units: str) -> str:
    if not any(character.isalpha() or character in "\"'°" for character in text):
        raise QuantityError(f"“{plain(text)}” needs its unit: {units}")
    return text


def only_known(tables: Mapping[str, Any], known: Collection[str]) -> None:
    """Refuses every key that is not among the known dotted paths."""
    for path in _paths(tables):
        if path in known:
            continue
        if any(name.startswith(f"{path}.") for name in known):
            raise EntryError(path, "should be a table")
        table = path.rpartition(".")[0]
        there = sorted(name for name in known if name.rpartition(".")[0] == table)
        allowed = ", ".join(name.rpartition(".")[2] for name in there) or "nothing"
        raise EntryError(plain(path, 200), f"is not known; here it can be {allowed}")


def _paths(tables: Mapping[str, Any], above: str = "") -> Iterator[str]:
    for key, value in tables.items():
        path = above + (f'"{key}"' if "." in key else key)
        if isinstance(value, dict):
            yield from _paths(value, f"{path}.")
        else:
            yield path


def line_at(tables: Mapping[str, Any], path: str) -> str:
    """A line of text that is not empty and has no control characters."""
    text = text_at(tables, path).strip()
    if not text or not text.isprintable():
        raise EntryError(path, "should be a line of text, without control characters")
    return text


def quantity_required(tables: Mapping[str, Any], path: str, parse: Parse, example: str) -> float:
    """A quantity that has to be there and is not negative."""
    value = quantity_at(tables, path, parse, example)
    if value is None:
        raise EntryError(path, f'is missing; it should be a quantity such as "{example}"')
    if value < 0:
        raise EntryError(path, f'cannot be negative; it should be such as "{example}"')
    return value


def above_zero(tables: Mapping[str, Any], path: str, parse: Parse, example: str) -> float:
    """A quantity that has to be there and is more than 0."""
    value = quantity_required(tables, path, parse, example)
    if value == 0:
        raise EntryError(path, f'cannot be 0; it should be such as "{example}"')
    return value


def range_at(
    tables: Mapping[str, Any], path: str, parse: Parse, example: tuple[str, str]
) -> tuple[float, float]:
    """Smallest and largest of what is usual, written as a list of two quantities."""
    ends = value_at(tables, path)
    if not isinstance(ends, list) or len(ends) != 2:
        wanted = f'a list of two quantities such as ["{example[0]}", "{example[1]}"]'
        fault = "is missing" if ends is None else "is something else"
        raise EntryError(path, f"{fault}; it should be {wanted}")
    smallest, largest = repeats_at(tables, path, parse, example[0])
    if smallest >= largest:
        raise EntryError(path, "is upside down: the smallest comes first, and the two differ")
    return smallest, largest


def tables_at(tables: Mapping[str, Any], key: str) -> tuple[tuple[str, Mapping[str, Any]], ...]:
    """An array of tables, each with its place for messages, ("events 1", {...})."""
    found = tables.get(key, [])
    if not isinstance(found, list) or not all(isinstance(table, dict) for table in found):
        raise EntryError(key, f"should be tables of their own, each under [[{key}]]")
    return tuple((f"{key} {number}", table) for number, table in enumerate(found, 1))


def texts_at(tables: Mapping[str, Any], path: str, example: str) -> tuple[str, ...]:
    """A list of texts; () where there is none."""
    found = value_at(tables, path, [])
    if not isinstance(found, list) or not all(isinstance(text, str) for text in found):
        raise EntryError(path, f'should be a list such as ["{example}"]')
    return tuple(found)


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
    only_known(placed, [f"{place}.{key}" for key in Correction.__dataclass_fields__])
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
    rises = repeats_at(tables, path, length, "1 1/2 in")
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
    only_known(placed, [f"{place}.{key}" for key in Event.__dataclass_fields__])
    returns = flag_at(placed, f"{place}.returns")
    if returns is None:
        raise EntryError(f"{place}.returns", "is missing; it should be true or false")
    travel = quantity_at(placed, f"{place}.travel", length, "2 in")
    if not travel:
        raise EntryError(f"{place}.travel", 'should be a travel other than 0, such as "2 in"')
    return Event(
        name=line_at(placed, f"{place}.name"),
        rise=above_zero(placed, f"{place}.rise", quantity.duration, "0.25 s"),
        hold=quantity_required(placed, f"{place}.hold", quantity.duration, "0.1 s"),
        returns=returns,
        travel=travel,
        speed=above_zero(placed, f"{place}.speed", quantity.speed, "60 km/h"),
        deceleration=quantity_required(
            placed, f"{place}.deceleration", quantity.acceleration, "7 m/s2"
        ),
    )
