"""A reading of a tape or an angle finder, with its standard uncertainty.

Standard uncertainties are Type B evaluations of rectangular half-widths w: u = w / sqrt(3)
(GUM, JCGM 100:2008, 4.3.7). A repeat means that the tape was taken off and the pivot centre
sighted again. Half of the sighting's variance returns with every repeat, because the eye takes the
same place for the centre (common practice, no source). The floor is the same floor each time.
The rest is drawn anew, and its variance is divided by the number of repeats (GUM 4.2.3).
"""

from dataclasses import dataclass, replace
from math import radians, sqrt
from typing import Literal

from core.text.quantity import INCH

CRITICAL = 3.29
"""Standard uncertainties of a difference beyond which readings disagree (0.1 %, two-sided)."""

Kind = Literal["height", "offset", "station", "length", "slope", "brace", "angle", "gain"]

KNOWN_GAIN = radians(0.2) / INCH
"""Half-width of a pitch gain that is known by other means, rad/mm (common practice, no source)."""

_SIGHTINGS: dict[Kind, int] = {"station": 4, "length": 2, "brace": 2}
"""Variance of sighting in that of one pivot centre; 1 for the other kinds."""


@dataclass(frozen=True)
class Instruments:
    """Resolution of the tape and the angle finder.

    Attributes
    ----------
    tape : float
        Graduation of the tape, mm.
    sighting : float
        Half-width of sighting a pivot centre, mm.
    floor : float
        Half-width of the floor's flatness, mm.
    angle_finder : float
        Graduation of the angle finder, rad.
    seating : float
        Half-width of seating the angle finder on a bar, rad.
    """

    tape: float
    sighting: float
    floor: float
    angle_finder: float
    seating: float


@dataclass(frozen=True)
class Reading:
    """A reading with its repeats.

    Attributes
    ----------
    name : str
        "track_bar.frame.height"
    kind : Kind
    repeats : tuple of float
        mm; rad for a slope or an angle, rad/mm for a gain.
    counts : bool
        False if the reading is set aside: it then is no observation of the pivots.
    """

    name: str
    kind: Kind
    repeats: tuple[float, ...]
    counts: bool = True

    @property
    def value(self) -> float:
        """Mean of the repeats, mm or rad."""
        return sum(self.repeats) / len(self.repeats)

    @property
    def scatter(self) -> float:
        """Sample standard deviation of the repeats, mm or rad; 0 for a single reading."""
        count = len(self.repeats)
        if count < 2:
            return 0.0
        mean = self.value
        return sqrt(sum((repeat - mean) ** 2 for repeat in self.repeats) / (count - 1))

    def repeated(self, times: int) -> "Reading":
        """The reading with some more repeats, each of them its mean."""
        return replace(self, repeats=self.repeats + (self.value,) * times)


def variance_parts(kind: Kind, instruments: Instruments) -> tuple[float, float]:
    """Variances of a reading, mm2 or rad2: common to all its repeats, and of each repeat alone.

    A station is taken with a plumb line and has twice the sighting half-width; a length or a
    brace has two ends to sight; a height also carries the floor.
    """
    if kind == "gain":
        return KNOWN_GAIN**2 / 3, 0.0
    if kind in ("slope", "angle"):
        half_of_seating = instruments.seating**2 / 6
        return half_of_seating, instruments.angle_finder**2 / 12 + half_of_seating
    half_of_sighting = _SIGHTINGS.get(kind, 1) * instruments.sighting**2 / 6
    floor = instruments.floor**2 / 3 if kind == "height" else 0.0
    return floor + half_of_sighting, instruments.tape**2 / 12 + half_of_sighting


def claimed_uncertainty(kind: Kind, instruments: Instruments) -> float:
    """Standard uncertainty of a single reading from the instruments alone, mm or rad."""
    return sqrt(sum(variance_parts(kind, instruments)))


def least_uncertainty(kind: Kind, instruments: Instruments) -> float:
    """Standard uncertainty below which no number of repeats brings a reading, mm or rad."""
    common, _ = variance_parts(kind, instruments)
    return sqrt(common)


def repeats_scatter(reading: Reading, instruments: Instruments) -> bool:
    """True if two repeats disagree: by more than CRITICAL uncertainties of their difference."""
    _, single = variance_parts(reading.kind, instruments)
    return max(reading.repeats) - min(reading.repeats) > CRITICAL * sqrt(2 * single)


def standard_uncertainty(reading: Reading, instruments: Instruments) -> float:
    """Standard uncertainty of the mean of a reading's repeats, mm or rad.

    Where the scatter is larger than the instruments claim for each repeat alone, the scatter takes
    its place.
    """
    common, single = variance_parts(reading.kind, instruments)
    return sqrt(common + max(single, reading.scatter**2) / len(reading.repeats))
