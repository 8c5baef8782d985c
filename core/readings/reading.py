"""A reading of a tape or an angle finder, with its standard uncertainty.

Standard uncertainties are Type B evaluations of rectangular half-widths w: u = w / sqrt(3)
(GUM, JCGM 100:2008, 4.3.7). A repeat means that the tape was taken off and the pivot centre
sighted again, so the mean of n repeats has u / sqrt(n) (GUM 4.2.3).
"""

from dataclasses import dataclass
from math import radians, sqrt
from typing import Literal

from core.text.quantity import INCH

KNOWN_GAIN = radians(0.2) / INCH
"""Half-width of a pitch gain that is known by other means, rad/mm (common practice, no source)."""

Kind = Literal["height", "offset", "station", "length", "slope", "brace", "angle", "gain"]


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
    """

    name: str
    kind: Kind
    repeats: tuple[float, ...]

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
        return Reading(self.name, self.kind, self.repeats + (self.value,) * times)


def claimed_uncertainty(kind: Kind, instruments: Instruments) -> float:
    """Standard uncertainty of a single reading from the instruments alone, mm or rad.

    A station is taken with a plumb line and has twice the sighting half-width; a length or a
    brace has two ends to sight; a height also carries the floor.
    """
    graduation = (instruments.tape / 2) ** 2 / 3
    sighting = instruments.sighting**2 / 3
    if kind == "gain":
        return KNOWN_GAIN / sqrt(3)
    if kind in ("slope", "angle"):
        return sqrt((instruments.angle_finder / 2) ** 2 / 3 + instruments.seating**2 / 3)
    if kind == "height":
        return sqrt(graduation + sighting + instruments.floor**2 / 3)
    if kind == "station":
        return sqrt(graduation + 4 * sighting)
    if kind in ("length", "brace"):
        return sqrt(graduation + 2 * sighting)
    return sqrt(graduation + sighting)


def repeats_scatter(reading: Reading, instruments: Instruments) -> bool:
    """True if the repeats disagree by more than the instruments claim."""
    return reading.scatter > claimed_uncertainty(reading.kind, instruments)


def standard_uncertainty(reading: Reading, instruments: Instruments) -> float:
    """Standard uncertainty of the mean of a reading's repeats, mm or rad.

    Where the scatter is larger than the instruments claim, the scatter takes its place.
    """
    single = max(claimed_uncertainty(reading.kind, instruments), reading.scatter)
    return single / sqrt(len(reading.repeats))
