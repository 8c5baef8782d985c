"""Typed entries of a document; a faulty one is refused with table, key and what would be right."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from core.documents.document import value_at
from core.text.plain_text import plain
from core.text.quantity import LengthUnit, QuantityError


class EntryError(ValueError):
    """An entry of a document that is missing or faulty."""

    def __init__(self, path: str, message: str) -> None:
        table, _, key = path.rpartition(".")
        self.path = path
        self.reason = message
        super().__init__(f"[{table}] {key}: {message}" if table else f"{key}: {message}")


def units_of(document: Mapping[str, Any]) -> LengthUnit:
    """Unit of length of a session: the unit of a bare number, and of every length displayed."""
    return "mm" if value_at(document, "session.units") == "mm" else "in"


def text_at(document: Mapping[str, Any], path: str, default: str | None = None) -> str:
    """Text at a dotted path; required where there is no default."""
    value = value_at(document, path)
    if value is None and default is not None:
        return default
    if not isinstance(value, str):
        raise EntryError(path, _wrong(value, "a text in quotes"))
    return value


def choice_at(
    document: Mapping[str, Any], path: str, choices: Sequence[str], default: str | None = None
) -> str:
    """One of some words at a dotted path."""
    value = text_at(document, path, default)
    if value not in choices:
        raise EntryError(path, f"“{plain(value)}” is not known; it is one of {', '.join(choices)}")
    return value


def flag_at(document: Mapping[str, Any], path: str) -> bool | None:
    """True or False at a dotted path; None where there is no entry."""
    value = value_at(document, path)
    if value is not None and not isinstance(value, bool):
        raise EntryError(path, _wrong(value, "true or false"))
    return value


def quantity_at(
    document: Mapping[str, Any], path: str, parse: Callable[[str], float], example: str
) -> float | None:
    """A single quantity at a dotted path; None where there is no entry."""
    value = value_at(document, path)
    return None if value is None else _parsed(path, value, parse, example)


def repeats_at(
    document: Mapping[str, Any], path: str, parse: Callable[[str], float], example: str
) -> tuple[float, ...]:
    """The repeats of a reading at a dotted path; () where it was not taken."""
    value = value_at(document, path)
    if value is None:
        return ()
    if not isinstance(value, list):
        raise EntryError(path, _wrong(value, f'a list of readings such as ["{example}"]'))
    return tuple(_parsed(path, item, parse, example) for item in value)


def _parsed(path: str, value: Any, parse: Callable[[str], float], example: str) -> float:
    if isinstance(value, int | float) and not isinstance(value, bool):
        value = str(value)
    if not isinstance(value, str):
        raise EntryError(path, _wrong(value, f'a quantity such as "{example}"'))
    try:
        return parse(value)
    except QuantityError as error:
        raise EntryError(path, str(error)) from None


def _wrong(value: Any, wanted: str) -> str:
    if value is None:
        return f"is missing; it should be {wanted}"
    kind = {bool: "true or false", dict: "a table", list: "a list", str: "a text"}
    return f"is {kind.get(type(value), 'a ' + type(value).__name__)}; it should be {wanted}"
