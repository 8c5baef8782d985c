"""Conditions of a session with their source: read from the document, or assumed.

An assumed value comes from the document's own [assumed] table where it has one, else from the
defaults of the profile.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from typing import Any

from core.documents.entries import EntryError, quantity_at, units_of
from core.kinematics.pivots import GuideKind
from core.profiles.defaults import bounds_of
from core.profiles.profile import Profile
from core.text import quantity

Parse = Callable[[str], float]


@dataclass(frozen=True)
class Sources:
    """The sources of a session's values.

    Attributes
    ----------
    document : mapping
    profile : callable
        Loads the profile of the session; called only where the document leaves a value out.
    """

    document: Mapping[str, Any]
    profile: Callable[[], Profile]

    @property
    def parse_length(self) -> Parse:
        """Parser of a length, mm; a bare number is in the unit of the document."""
        return partial(quantity.parse_length, unit=units_of(self.document))


@dataclass(frozen=True)
class Sourced:
    """A value and its source.

    Attributes
    ----------
    name : str
        Name of its reading, "travel.bump".
    value : float
    is_assumed : bool
        True if nobody measured the value.
    """

    name: str
    value: float
    is_assumed: bool


def sourced_quantity(sources: Sources, path: str, parse: Parse, example: str) -> Sourced:
    """Quantity above zero: read at a path of the document, else assumed.

    Parameters
    ----------
    sources : Sources
    path : str
        Dotted path in the document, "readings.travel.bump".
    parse : callable
        Parser of the quantity.
    example : str
        Example of the quantity, for messages.

    Raises
    ------
    core.documents.entries.EntryError
        The text is no quantity, or the quantity is not above zero.
    core.profiles.profile.ProfileError
        The profile is needed and cannot be loaded.
    """
    name = path.removeprefix("readings.")
    value = quantity_at(sources.document, path, parse, example)
    if value is None:
        return Sourced(name, _assumed(sources, name, parse, example), is_assumed=True)
    _refuse_not_above_zero(path, value, f'"{example}"')
    bounds = bounds_of(name)
    if not bounds.holds_or_is_less(value):
        raise EntryError(path, f'is more than {bounds.largest}; it should be such as "{example}"')
    return Sourced(name, value, is_assumed=False)


def _assumed(sources: Sources, name: str, parse: Parse, example: str) -> float:
    """Value assumed for a reading that was not taken."""
    path = f"assumed.{name}"
    filed = quantity_at(sources.document, path, parse, example)
    if filed is None:
        return sources.profile().defaults.value(name, GuideKind.UNMEASURED)
    _refuse_not_above_zero(path, filed, f'"{example}"')
    if not bounds_of(name).holds(filed):
        raise EntryError(path, bounds_of(name).expected)
    return filed


def _refuse_not_above_zero(path: str, value: float, example: str) -> None:
    if value <= 0:
        raise EntryError(path, f"should be more than 0, such as {example}")
