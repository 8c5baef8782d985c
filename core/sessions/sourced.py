"""A value of a session together with its source: read from the document, or assumed.

An assumed value comes from the record's own [assumed] table where the record has one, else from
the defaults of the profile.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Generic, TypeVar

from core.documents.entries import EntryError, quantity_at
from core.profiles.profile import Profile
from core.readings.reading import Reading
from core.readings.survey import WHEELS, reading_at

Document = Mapping[str, Any]
ProfileLoader = Callable[[], Profile]
"""Loads the profile of the session; called only where the document leaves something out."""

Parse = Callable[[str], float]

Value = TypeVar("Value")


@dataclass(frozen=True)
class Sourced(Generic[Value]):
    """A value and its source.

    Attributes
    ----------
    name : str
        Name of its reading, "steering.arm".
    value : float or Reading
    is_assumed : bool
        Nobody measured it.
    """

    name: str
    value: Value
    is_assumed: bool


def sourced_quantity(
    document: Document, profile: ProfileLoader, path: str, parse: Parse, example: str
) -> Sourced[float]:
    """A quantity above zero, as read at a path or else as assumed.

    Raises
    ------
    core.documents.entries.EntryError
        It is no quantity, or is not above zero.
    core.profiles.profile.ProfileError
        The profile is needed and cannot be loaded.
    """
    name = path.removeprefix("readings.")
    value = quantity_at(document, path, parse, example)
    if value is None:
        return Sourced(name, _assumed(document, profile, name, parse, example), is_assumed=True)
    _refuse_not_above_zero(path, value, f'"{example}"')
    return Sourced(name, value, is_assumed=False)


def sourced_length(
    document: Document, profile: ProfileLoader, name: str, parse: Parse
) -> Sourced[Reading]:
    """A reading of a length above zero, as taken or else as assumed.

    An assumed one has a single repeat. Raises like `sourced_quantity`.
    """
    kind = WHEELS.get(name, "length")
    reading = reading_at(document, name, kind)
    is_assumed = reading is None
    if reading is None:
        value = _assumed(document, profile, name, parse, "6 1/2 in")
        reading = Reading(name, kind, (value,))
    _refuse_not_above_zero(f"readings.{name}", reading.value, '["6 1/2 in"]')
    return Sourced(name, reading, is_assumed)


def _assumed(
    document: Document, profile: ProfileLoader, name: str, parse: Parse, example: str
) -> float:
    path = f"assumed.{name}"
    filed = quantity_at(document, path, parse, example)
    if filed is None:
        return profile().defaults[name]
    _refuse_not_above_zero(path, filed, f'"{example}"')
    return filed


def _refuse_not_above_zero(path: str, value: float, example: str) -> None:
    if value <= 0:
        raise EntryError(path, f"should be more than 0, such as {example}")
