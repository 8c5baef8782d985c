"""The answers known so far, for checks that compare several of them."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields
from functools import cached_property
from math import atan2, hypot
from typing import Any

from core.documents.document import value_at, with_value
from core.documents.entries import EntryError, quantity_at, units_of
from core.kinematics.pivots import Layout
from core.profiles.profile import Profile
from core.readings.guide_survey import GUIDE, KINGPIN
from core.readings.reading import Instruments, Kind, Reading, standard_uncertainty
from core.readings.survey import SURVEY, WHEELS, reading_at
from core.text import quantity
from core.text.quantity import LengthUnit

_KINDS: dict[str, Kind] = {**SURVEY, **WHEELS, **GUIDE, **KINGPIN}

ANGLES = {"angle_finder", "seating"}
"""Instruments whose resolution is an angle; the resolution of the others is a length."""


@dataclass(frozen=True)
class Separation:
    """Position of a first pivot less position of a second pivot, with standard uncertainties.

    The axes are those of ISO 8855:2011.

    Attributes
    ----------
    ahead : float or None
        The first pivot ahead of the second positive, mm; None where a station is missing.
    left, up : float
        The first pivot to the left of the second, or above it, positive, mm.
    u_ahead, u_left, u_up : float
        Standard uncertainties, mm.
    """

    ahead: float | None
    left: float
    up: float
    u_ahead: float
    u_left: float
    u_up: float

    @property
    def run(self) -> float:
        """Horizontal distance, mm; in the front view where a station is missing."""
        return hypot(self.left, self.ahead or 0.0)

    @property
    def distance(self) -> float:
        """Distance from centre to centre, mm; in the front view where a station is missing."""
        return hypot(self.run, self.up)

    @property
    def u_distance(self) -> float:
        """Standard uncertainty of the distance, mm (GUM 5.1.2)."""
        return hypot(*self._run_shares, self.up * self.u_up) / self.distance if self.distance else 0

    @property
    def slope(self) -> float:
        """Slope as an angle finder reads it, the first pivot higher positive, rad."""
        return atan2(self.up, self.run)

    @property
    def u_slope(self) -> float:
        """Standard uncertainty of the slope, rad (GUM 5.1.2)."""
        if not self.run:
            return 0.0
        u_run = hypot(*self._run_shares) / self.run
        return hypot(self.run * self.u_up, self.up * u_run) / self.distance**2

    @property
    def _run_shares(self) -> tuple[float, float]:
        """Coordinates of the run, each times its standard uncertainty, mm2."""
        return self.left * self.u_left, (self.ahead or 0.0) * self.u_ahead


@dataclass(frozen=True)
class KnownAnswers:
    """The answers in a document, typed, and the profile that says what is usual.

    An answer that is missing, or that cannot be read in a draft edited by hand, is None. A check
    that needs it is not made.

    Attributes
    ----------
    document : mapping
    profile : Profile or None
    """

    document: Mapping[str, Any]
    profile: Profile | None

    def with_answer(self, path: str, value: object) -> "KnownAnswers":
        """The same answers with the value at a path added or replaced."""
        return KnownAnswers(with_value(self.document, path, value), self.profile)

    @cached_property
    def units(self) -> LengthUnit:
        """The session's unit of length."""
        return units_of(self.document)

    @cached_property
    def instruments(self) -> Instruments | None:
        """Instruments of the session, completed with those of the profile."""
        resolutions = {key.name: self._resolution(key.name) for key in fields(Instruments)}
        known = {name: value for name, value in resolutions.items() if value is not None}
        return Instruments(**known) if len(known) == len(resolutions) else None

    def _resolution(self, instrument: str) -> float | None:
        """Resolution of an instrument, mm or rad."""
        parse = quantity.parse_angle if instrument in ANGLES else self._parse_length
        value = self._quantity(f"instruments.{instrument}", parse)
        if value is None and self.profile is not None:
            return float(getattr(self.profile.instruments, instrument))
        return value

    def length(self, path: str) -> float | None:
        """Single length at a path of the document, mm."""
        return self._quantity(path, self._parse_length)

    def _parse_length(self, text: str) -> float:
        return quantity.parse_length(text, self.units)

    def _quantity(self, path: str, parse: Callable[[str], float]) -> float | None:
        try:
            return quantity_at(self.document, path, parse, "")
        except EntryError:
            return None

    def reading(self, name: str) -> Reading | None:
        """Reading with its repeats; readings of the tie rod count for the inverted-Y alone."""
        if name.startswith("tie_rod.") and self._has_no_joint:
            return None
        kind: Kind = _KINDS.get(name, "length")
        try:
            return reading_at(self.document, name, kind)
        except EntryError:
            return None

    def runs_fore_aft(self, link: str) -> bool:
        """True if a link is known to run along the vehicle instead of across it."""
        steering = value_at(self.document, "layout.steering")
        return link == "drag_link" and bool(steering == Layout.FORE_AFT)

    @property
    def _has_no_joint(self) -> bool:
        """True if the layout is known to have no joint of a tie rod on the drag link."""
        layout = value_at(self.document, "layout.steering")
        return layout is not None and layout != Layout.INVERTED_Y

    def value(self, name: str) -> float | None:
        """Mean of a reading's repeats, mm or rad."""
        reading = self.reading(name)
        return reading.value if reading else None

    def u(self, name: str) -> float:
        """Standard uncertainty of a reading, mm or rad; 0 where the instruments are not known."""
        reading = self.reading(name)
        if reading is None or self.instruments is None:
            return 0.0
        return standard_uncertainty(reading, self.instruments)

    def separation(self, first: str, second: str) -> Separation | None:
        """Position of the first pivot less that of the second.

        Parameters
        ----------
        first, second : str
            Names of the pivots, "track_bar.frame".

        Returns
        -------
        Separation or None
            None where a height or an offset is missing.
        """
        up, u_up = self._difference(first, second, "height")
        right, u_right = self._difference(first, second, "offset")
        ahead, u_ahead = self._difference(first, second, "station")
        if up is None or right is None:
            return None
        return Separation(ahead, -right, up, u_ahead, u_right, u_up)

    def _difference(self, first: str, second: str, kind: str) -> tuple[float | None, float]:
        """First pivot's reading of a kind less the second's, mm, with standard uncertainty, mm."""
        names = (f"{first}.{kind}", f"{second}.{kind}")
        values = [value for name in names if (value := self.value(name)) is not None]
        if len(values) < 2:
            return None, 0.0
        return values[0] - values[1], hypot(*map(self.u, names))
