"""The answers known so far, for rules that compare several readings."""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from functools import cached_property, partial
from math import atan2, hypot
from typing import Any

from core.documents.document import value_at, with_value
from core.documents.entries import EntryError, quantity_at, units_of
from core.profiles.profile import Profile
from core.readings.reading import Instruments, Kind, Reading, standard_uncertainty
from core.readings.survey import SURVEY, WHEELS, reading_at
from core.text import quantity
from core.text.quantity import LengthUnit, format_length

ANGLES = {"angle_finder", "seating"}
"""Instruments that are angles; the others are lengths."""


@dataclass(frozen=True)
class Separation:
    """Separation of two pivots, first less second, with standard uncertainties.

    Attributes
    ----------
    across, up : float
        Positive where the first pivot lies further left, and higher; mm.
    along : float or None
        Positive where the first pivot lies further ahead, mm; None where a station is missing.
    u_across, u_up, u_along : float
        mm
    """

    across: float
    up: float
    along: float | None
    u_across: float
    u_up: float
    u_along: float

    @property
    def run(self) -> float:
        """Horizontal distance, in the front view where stations are missing, mm."""
        return hypot(self.across, self.along or 0.0)

    @property
    def distance(self) -> float:
        """Distance from centre to centre, in the front view where stations are missing, mm."""
        return hypot(self.run, self.up)

    @property
    def u_distance(self) -> float:
        """Standard uncertainty of the distance, mm (GUM 5.1.2)."""
        share = (self.across * self.u_across, (self.along or 0.0) * self.u_along)
        return hypot(*share, self.up * self.u_up) / self.distance if self.distance else 0.0

    @property
    def slope(self) -> float:
        """Slope that an angle finder would read, first pivot higher positive, rad."""
        return atan2(self.up, self.run)

    @property
    def u_slope(self) -> float:
        """Standard uncertainty of the slope, rad (GUM 5.1.2)."""
        if not self.run:
            return 0.0
        share = (self.across * self.u_across, (self.along or 0.0) * self.u_along)
        u_run = hypot(*share) / self.run
        return hypot(self.run * self.u_up, self.up * u_run) / self.distance**2


class KnownAnswers:
    """The answers of a document, and the profile with the usual ranges.

    A value is None where it is missing, or cannot be read in a draft that was edited by hand.
    A check that needs it is then not made.
    """

    def __init__(self, document: Mapping[str, Any], profile: Profile | None) -> None:
        self.document = document
        self.profile = profile
        self._readings: dict[str, Reading | None] = {}

    def with_answer(self, path: str, value: object) -> "KnownAnswers":
        """The same answers with one added or replaced."""
        return KnownAnswers(with_value(self.document, path, value), self.profile)

    @cached_property
    def units(self) -> LengthUnit:
        """The session's unit of length."""
        return units_of(self.document)

    @cached_property
    def _has_no_joint(self) -> bool:
        steering = value_at(self.document, "layout.steering")
        return steering is not None and steering != "inverted-y"

    @cached_property
    def instruments(self) -> Instruments | None:
        """Instruments of the session, else of the profile; None where a value is unknown."""
        usual = self.profile.instruments if self.profile else None
        found = {key.name: self._instrument(key.name, usual) for key in fields(Instruments)}
        known = {name: value for name, value in found.items() if value is not None}
        return Instruments(**known) if len(known) == len(found) else None

    def _instrument(self, name: str, usual: Instruments | None) -> float | None:
        parse = (
            quantity.parse_angle
            if name in ANGLES
            else partial(quantity.parse_length, unit=self.units)
        )
        value = self._quantity(f"instruments.{name}", parse)
        return getattr(usual, name) if value is None and usual else value

    def _quantity(self, path: str, parse: Any) -> float | None:
        try:
            return quantity_at(self.document, path, parse, "")
        except EntryError:
            return None

    def tape(self, mm: float) -> str:
        """A length in the session's unit, as a tape reads it."""
        return format_length(mm, self.units)

    def length(self, path: str) -> float | None:
        """A single length at a path, mm."""
        return self._quantity(path, partial(quantity.parse_length, unit=self.units))

    def reading(self, name: str) -> Reading | None:
        """A reading with its repeats; a tie rod reading counts only for the inverted-Y."""
        if name.startswith("tie_rod.") and self._has_no_joint:
            return None
        if name not in self._readings:
            kind: Kind = SURVEY.get(name) or WHEELS.get(name) or "length"
            try:
                self._readings[name] = reading_at(self.document, name, kind)
            except EntryError:
                self._readings[name] = None
        return self._readings[name]

    def value(self, name: str) -> float | None:
        """Mean of a reading's repeats, mm or rad."""
        reading = self.reading(name)
        return reading.value if reading else None

    def u(self, name: str) -> float:
        """Standard uncertainty of a reading, mm or rad; 0 where the instruments are not known."""
        reading = self.reading(name)
        return (
            standard_uncertainty(reading, self.instruments) if reading and self.instruments else 0
        )

    def separation(self, first: str, second: str) -> Separation | None:
        """Separation of two pivots; None where a height or an offset is missing."""
        up, u_up = self._difference(first, second, "height")
        right, u_across = self._difference(first, second, "offset")
        along, u_along = self._difference(first, second, "station")
        if up is None or right is None:
            return None
        return Separation(-right, up, along, u_across, u_up, u_along)

    def _difference(self, first: str, second: str, kind: str) -> tuple[float | None, float]:
        names = (f"{first}.{kind}", f"{second}.{kind}")
        one, other = map(self.value, names)
        if one is None or other is None:
            return None, 0.0
        return one - other, hypot(*map(self.u, names))
