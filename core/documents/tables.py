"""Tables of a TOML file and the entries in them, each refused with its table and its key.

Every function here raises `core.documents.entries.EntryError`, which says what would be right.
"""

from collections.abc import Callable, Collection, Iterator, Mapping
from typing import Any

from core.documents.document import value_at
from core.documents.entries import EntryError, quantity_at, repeats_at, text_at
from core.text import quantity
from core.text.plain_text import plain
from core.text.quantity import QuantityError

Parse = Callable[[str], float]


def length_with_unit(text: str) -> float:
    """Length in mm from a text with its unit: a file has no session with a unit."""
    return quantity.parse_length(_with_a_unit(text, "in or mm"))


def angle_with_unit(text: str) -> float:
    """Angle in rad from a text with its unit."""
    return quantity.parse_angle(_with_a_unit(text, "deg"))


def _with_a_unit(text: str, units: str) -> str:
    if not any(character.isalpha() or character in "\"'°" for character in text):
        raise QuantityError(f"“{plain(text)}” needs its unit: {units}")
    return text


def refuse_unknown(tables: Mapping[str, Any], known: Collection[str]) -> None:
    """Raise EntryError for a key that is not among the known dotted paths."""
    for path in _paths(tables):
        if path in known:
            continue
        if any(name.startswith(f"{path}.") for name in known):
            raise EntryError(path, "should be a table")
        table = path.rpartition(".")[0]
        siblings = sorted(name for name in known if name.rpartition(".")[0] == table)
        allowed = ", ".join(name.rpartition(".")[2] for name in siblings) or "nothing"
        raise EntryError(plain(path, 200), f"is not known; here it can be {allowed}")


def _paths(tables: Mapping[str, Any], above: str = "") -> Iterator[str]:
    for key, value in tables.items():
        path = above + (f'"{key}"' if "." in key else key)
        if isinstance(value, dict):
            yield from _paths(value, f"{path}.")
        else:
            yield path


def line_at(tables: Mapping[str, Any], path: str) -> str:
    """A line of text at a path: not empty, without control characters."""
    text = text_at(tables, path).strip()
    if not text or not text.isprintable():
        raise EntryError(path, "should be a line of text, without control characters")
    return text


def required_quantity(tables: Mapping[str, Any], path: str, parse: Parse, example: str) -> float:
    """A required quantity that is not negative."""
    value = quantity_at(tables, path, parse, example)
    if value is None:
        raise EntryError(path, f'is missing; it should be a quantity such as "{example}"')
    if value < 0:
        raise EntryError(path, f'cannot be negative; it should be such as "{example}"')
    return value


def quantity_above_zero(tables: Mapping[str, Any], path: str, parse: Parse, example: str) -> float:
    """A required quantity above zero."""
    value = required_quantity(tables, path, parse, example)
    if value == 0:
        raise EntryError(path, f'cannot be 0; it should be such as "{example}"')
    return value


def range_at(
    tables: Mapping[str, Any], path: str, parse: Parse, example: tuple[str, str]
) -> tuple[float, float]:
    """Usual range, smallest and largest, written as a list of two quantities."""
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
    """Array of tables at a path, each with its place for messages, ("events 1", {...})."""
    entries = value_at(tables, key, [])
    if not isinstance(entries, list) or not all(isinstance(table, dict) for table in entries):
        raise EntryError(key, f"should be tables of their own, each under [[{key}]]")
    return tuple((f"{key} {number}", table) for number, table in enumerate(entries, 1))


def texts_at(tables: Mapping[str, Any], path: str, example: str) -> tuple[str, ...]:
    """List of texts at a path; () where there is none."""
    texts = value_at(tables, path, [])
    if not isinstance(texts, list) or not all(isinstance(text, str) for text in texts):
        raise EntryError(path, f'should be a list such as ["{example}"]')
    return tuple(texts)
