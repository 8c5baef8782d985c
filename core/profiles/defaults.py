"""Values that a profile assumes where nothing was measured, each with its half-width.

Every default has a place in [defaults], and its half-width has the same place in
[defaults_within]. A guide has defaults of its own in [defaults.guide.leaf] and its like. The bounds
here are those of any road vehicle (common practice, no source).
"""

from collections.abc import Mapping
from dataclasses import dataclass

from core.documents.tables import Parse, angle_with_unit, length_with_unit
from core.kinematics.pivots import GUIDE_PIVOTS, GuideKind
from core.text.quantity import parse_angle_per_length, parse_number


@dataclass(frozen=True)
class Bounds:
    """Bounds of a default.

    Attributes
    ----------
    parse : callable
        Parser of the quantity.
    example, smallest, largest : str
        An example, the smallest and the largest value, as a profile writes them.
    """

    parse: Parse
    example: str
    smallest: str
    largest: str

    @property
    def largest_value(self) -> float:
        """The largest value, in mm, rad, rad/mm or as a plain number."""
        return self.parse(self.largest)

    @property
    def expected(self) -> str:
        """Range for messages: what would be right."""
        return f'should lie between {self.smallest} and {self.largest}, such as "{self.example}"'

    def holds_or_is_less(self, value: float) -> bool:
        """True if the magnitude of a value is not above the bounds."""
        return abs(value) <= self.largest_value * (1 + 1e-9)

    def holds(self, value: float, within: float = 0.0) -> bool:
        """True if a value lies within the bounds with its whole half-width."""
        lowest, highest = self.parse(self.smallest), self.parse(self.largest)
        # Beyond rounding: the bounds themselves are allowed.
        slack = 1e-9 * (highest - lowest)
        return lowest - slack <= value - within and value + within <= highest + slack


_ARM = Bounds(length_with_unit, "6 1/2 in", "1 in", "24 in")
_TRAVEL = Bounds(length_with_unit, "4 in", "1/4 in", "40 in")
_HEIGHT = Bounds(length_with_unit, "18 in", "1 in", "80 in")
_STATION = Bounds(length_with_unit, "-36 in", "-150 in", "150 in")
_PITCH_GAIN = Bounds(parse_angle_per_length, "-0.7 deg/in", "-10 deg/in", "10 deg/in")

CONDITIONS: dict[str, Bounds] = {
    "bump": _TRAVEL,
    "droop": _TRAVEL,
    "wheelbase": Bounds(length_with_unit, "110 in", "30 in", "400 in"),
}
"""Bounds of the defaults that are conditions and have no half-width, by their key."""

MEASURED: dict[str, Bounds] = {
    "arm": _ARM,
    "pitman_arm": _ARM,
    "near_arm": _ARM,
    "ratio": Bounds(parse_number, "16", "1", "60"),
    "hub_height": Bounds(length_with_unit, "16 in", "4 in", "60 in"),
    "joint_from_far_ball": Bounds(length_with_unit, "8 in", "1/2 in", "60 in"),
    "track": Bounds(length_with_unit, "62 in", "20 in", "120 in"),
    "castor": Bounds(angle_with_unit, "5 deg", "-20 deg", "20 deg"),
    "inclination": Bounds(angle_with_unit, "9 deg", "-5 deg", "30 deg"),
    "span": Bounds(length_with_unit, "34 in", "4 in", "100 in"),
    "pitch_gain": _PITCH_GAIN,
    "fore_aft_gain": Bounds(parse_number, "0.05", "-1", "1"),
    **{
        f"guide.{kind}.{pivot.removeprefix('guide.')}.{coordinate}": bounds
        for kind in GuideKind
        for pivot in GUIDE_PIVOTS[kind]
        for coordinate, bounds in (("height", _HEIGHT), ("station", _STATION))
    },
    "guide.leaf.pitch_gain": _PITCH_GAIN,
    "guide.leaf.effective_length": Bounds(parse_number, "0.75", "0.3", "1.2"),
}
"""Bounds of the defaults that replace a reading, by their path in [defaults]."""

USUAL: dict[str, tuple[str, str]] = {"track": ("62 in", "4 in")}
"""Values and half-widths of the defaults that a profile can leave out."""

_PATHS = {
    **{f"steering.{key}": key for key in ("arm", "pitman_arm", "ratio")},
    **{f"tie_rod.{key}": key for key in ("near_arm", "joint_from_far_ball")},
    **{f"kingpin.{key}": key for key in ("castor", "inclination")},
    **{f"guide.{key}": key for key in ("span", "pitch_gain", "fore_aft_gain")},
    **{f"travel.{key}": key for key in ("bump", "droop")},
    "wheels.hub_height": "hub_height",
    "wheels.track": "track",
    "vehicle.wheelbase": "wheelbase",
}
"""Path in [defaults] of the default of a reading, where it is the same for every guide."""


def default_path(reading: str, guide: GuideKind) -> str:
    """Path in [defaults] of the default that replaces a reading on a vehicle with this guide.

    Raises
    ------
    KeyError
        No vehicle with this guide has such a reading, or it has no default.
    """
    of_guide = f"guide.{guide}.{reading.removeprefix('guide.')}"
    return of_guide if of_guide in MEASURED else _PATHS[reading]


def bounds_of(reading: str, guide: GuideKind = GuideKind.UNMEASURED) -> Bounds:
    """Bounds of a reading that has a default; raises KeyError as `default_path` does."""
    return (CONDITIONS | MEASURED)[default_path(reading, guide)]


@dataclass(frozen=True)
class Defaults:
    """Values assumed where nothing was measured, by their path in [defaults].

    Attributes
    ----------
    values : mapping of float
        By the paths of CONDITIONS and MEASURED; mm, rad, rad/mm or a plain number.
    half_widths : mapping of float
        By the paths of MEASURED, in the same units.
    """

    values: Mapping[str, float]
    half_widths: Mapping[str, float]

    def value(self, name: str, guide: GuideKind) -> float:
        """Default that replaces a reading, by the name of the reading: "steering.arm".

        Raises KeyError where no vehicle with this guide has such a reading.
        """
        return self.values[default_path(name, guide)]

    def within(self, name: str, guide: GuideKind) -> float:
        """Half-width of the default that replaces a reading.

        Raises KeyError for a condition, which has no half-width, and as `value` does.
        """
        return self.half_widths[default_path(name, guide)]
