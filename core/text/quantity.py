"""Quantities: text as a tape reads to mm, rad, s and kg, and back.

Inside Evenarc every quantity is in mm, rad, s and kg, a stiffness in N/rad. A quantity is written
"number unit", the number decimal (17.625), a fraction (5/8) or mixed (17 5/8); feet and inches go
together (1' 5 5/8").
The common units are an exact table here. Pint converts any other unit; it is imported only then.
Inch, foot, mile and pound: exact since the international yard and pound agreement of 1959 (NIST
SP 811, appendix B.6); standard gravity 9.80665 m/s2: BIPM SI brochure, CGPM 1901.
"""

import re
import unicodedata
from collections.abc import Mapping
from fractions import Fraction
from functools import cache
from math import isfinite, pi
from typing import TYPE_CHECKING, Any, Literal, NamedTuple

from core.text.plain_text import plain

if TYPE_CHECKING:
    from pint import UnitRegistry

LengthUnit = Literal["in", "mm"]

INCH = 25.4
"""mm; exact."""


class QuantityError(ValueError):
    """The text is no quantity of the kind asked for; the message is one line with the reason."""


class _Kind(NamedTuple):
    article: str
    name: str
    inside: str  # the inside unit, as pint calls it
    examples: str


_LENGTH = _Kind("a", "length", "mm", "17 5/8, 17.625 in, 1' 5 5/8\" or 448 mm")
_ANGLE = _Kind("an", "angle", "rad", "8.5, 8 1/2 deg or 8.5°")
_DURATION = _Kind("a", "duration", "s", "0.4 s")
_SPEED = _Kind("a", "speed", "mm/s", "60 km/h, 40 mph or 16 m/s")
_ACCELERATION = _Kind("an", "acceleration", "mm/s**2", "0.8 g or 7.8 m/s2")
_ANGLE_PER_LENGTH = _Kind("an", "angle for a travel", "rad/mm", "-0.7 deg/in or 0.03 deg/mm")
_MASS = _Kind("a", "mass", "kg", "2300 kg or 5000 lb")
_STIFFNESS = _Kind("a", "stiffness", "N/rad", "90 kN/rad or 1570 N/deg")
_NUMBER = _Kind("a", "number", "", "16, 16.5 or 16 1/2")

_INCH = Fraction(254, 10)
_FOOT = 12 * _INCH
_GRAVITY = Fraction(980665, 100)
_POUND = Fraction(45359237, 10**8)
_DEGREE = pi / 180

_Factor = Fraction | float
_UNITS: Mapping[str, tuple[_Kind, _Factor]] = {
    **dict.fromkeys(("mm",), (_LENGTH, Fraction(1))),
    **dict.fromkeys(("cm",), (_LENGTH, Fraction(10))),
    **dict.fromkeys(("m",), (_LENGTH, Fraction(1000))),
    **dict.fromkeys(('"', "in", "inch", "inches"), (_LENGTH, _INCH)),
    **dict.fromkeys(("'", "ft", "foot", "feet"), (_LENGTH, _FOOT)),
    **dict.fromkeys(("°", "deg", "degree", "degrees"), (_ANGLE, _DEGREE)),
    **dict.fromkeys(("rad",), (_ANGLE, 1.0)),
    **dict.fromkeys(("s", "sec"), (_DURATION, Fraction(1))),
    **dict.fromkeys(("km/h", "kmh"), (_SPEED, Fraction(1_000_000, 3600))),
    **dict.fromkeys(("mph", "mi/h"), (_SPEED, 5280 * _FOOT / 3600)),
    **dict.fromkeys(("m/s",), (_SPEED, Fraction(1000))),
    **dict.fromkeys(("m/s2", "m/s^2"), (_ACCELERATION, Fraction(1000))),
    **dict.fromkeys(("g",), (_ACCELERATION, _GRAVITY)),
    **dict.fromkeys(("deg/in", "°/in", "deg/inch"), (_ANGLE_PER_LENGTH, _DEGREE / _INCH)),
    **dict.fromkeys(("deg/mm", "°/mm"), (_ANGLE_PER_LENGTH, _DEGREE)),
    **dict.fromkeys(("rad/mm",), (_ANGLE_PER_LENGTH, 1.0)),
    **dict.fromkeys(("kg",), (_MASS, Fraction(1))),
    **dict.fromkeys(("lb", "lbs"), (_MASS, _POUND)),
    **dict.fromkeys(("n/rad",), (_STIFFNESS, 1.0)),
    **dict.fromkeys(("kn/rad",), (_STIFFNESS, 1000.0)),
    **dict.fromkeys(("n/deg", "n/°"), (_STIFFNESS, 1 / _DEGREE)),
    **dict.fromkeys(("kn/deg", "kn/°"), (_STIFFNESS, 1000 / _DEGREE)),
}

_LONGEST = 60  # characters; a reading off a tape has about ten
_VALUE = (
    r"(?:(?:(?P<whole>[0-9]+)(?: ?- ?| ))?(?P<top>[0-9]+) ?/ ?(?P<bottom>[0-9]+)"
    r"|(?P<decimal>[0-9]+\.?[0-9]*|\.[0-9]+))"
)
_SIGN = r"(?P<sign>[+-]?) ?"
_UNIT = r"(?P<unit>[^\W\d_][^\d]*[23]?|°(?: ?/ ?[a-z]+)?|[\"'])"
_PLAIN = re.compile(rf"{_SIGN}{_VALUE} ?{_UNIT}?", re.IGNORECASE)
_FEET_AND_INCHES = re.compile(
    rf"{_SIGN}(?P<feet>[0-9]+) ?(?:'|ft\.?|foot|feet) ?-? ?{_VALUE} ?(?:\"|inch|inches|in\.?)?",
    re.IGNORECASE,
)
# Only plain unit names go to pint: its parser would also evaluate powers and products.
_UNIT_FOR_PINT = r"[a-zµ]{1,20}(?: ?/ ?[a-z]{1,20}(?:\^?[23])?)?"

_SAME = str.maketrans(
    {
        **dict.fromkeys("\u2212\u2010\u2011\u2012\u2013", "-"),
        **dict.fromkeys("\u2044\u2215", "/"),
        **dict.fromkeys("\u2032\u2018\u2019\u02b9\u00b4`", "'"),
        **dict.fromkeys("\u2033\u201c\u201d\u02ba", '"'),
        **dict.fromkeys("\u00ba\u02da", "°"),
        "²": "2",
        "\t": " ",
    }
)


def parse_length(text: str, unit: LengthUnit = "in") -> float:
    """Length in mm; a bare number is in `unit`. Raises QuantityError."""
    return _parse(text, _LENGTH, unit)


def parse_angle(text: str) -> float:
    """Angle in rad; a bare number is in degrees. Raises QuantityError."""
    return _parse(text, _ANGLE, "deg")


def parse_duration(text: str) -> float:
    """Duration in s; a bare number is in s. Raises QuantityError."""
    return _parse(text, _DURATION, "s")


def parse_speed(text: str) -> float:
    """Speed in mm/s; the unit is required. Raises QuantityError."""
    return _parse(text, _SPEED, None)


def parse_acceleration(text: str) -> float:
    """Acceleration in mm/s2; the unit is required. Raises QuantityError."""
    return _parse(text, _ACCELERATION, None)


def parse_angle_per_length(text: str) -> float:
    """Angle for a length of travel in rad/mm; the unit is required. Raises QuantityError."""
    return _parse(text, _ANGLE_PER_LENGTH, None)


def parse_mass(text: str) -> float:
    """Mass in kg; the unit is required. Raises QuantityError."""
    return _parse(text, _MASS, None)


def parse_stiffness(text: str) -> float:
    """Stiffness of an axle's tyres in N/rad; the unit is required. Raises QuantityError."""
    return _parse(text, _STIFFNESS, None)


def parse_number(text: str) -> float:
    """Plain number without a unit, such as a ratio, 16 or 16:1. Raises QuantityError."""
    value, unit = _split(re.sub(" *: *1 *$", "", text), _NUMBER)
    if unit:
        raise QuantityError(
            f"“{plain(text)}” has a unit where a plain number is wanted, like {_NUMBER.examples}"
        )
    return float(value)


def split_repeats(text: str) -> tuple[str, ...]:
    """Repeats typed in one field, separated by ``;``. Raises QuantityError when there is none."""
    repeats = tuple(part.strip() for part in text.split(";") if part.strip())
    if not repeats:
        raise QuantityError(
            "nothing was typed; it is written like 17 5/8, several readings like 17 5/8; 17 9/16"
        )
    return repeats


def with_unit(text: str, unit: str) -> str:
    """The text of a quantity, with a unit added to a bare number.

    Such a text means the same after the units of the session are switched.
    Raises QuantityError when the text is no quantity.
    """
    kind = _UNITS[unit][0]
    _parse(text, kind, unit)
    typed = " ".join(text.split())
    return typed if _split(text, kind)[1] else f"{typed} {unit}"


def other_unit(unit: LengthUnit) -> LengthUnit:
    """Inches for mm, mm for inches."""
    return "in" if unit == "mm" else "mm"


def format_length(mm: float, unit: LengthUnit, decimals: int = 0) -> str:
    """Length as text, as a tape reads.

    Parameters
    ----------
    mm : float
        Length, mm.
    unit : {"in", "mm"}
        Inches to the nearest 1/16, or mm.
    decimals : int
        Decimals of the mm.

    Returns
    -------
    str
        "17 5/8 in", "-1/8 in", "448 mm"; a dash when the length is not finite.
    """
    if not isfinite(mm):
        return "—"
    if unit == "mm":
        return f"{_fixed(mm, decimals)} mm"
    sixteenths = round(Fraction(mm) / _INCH * 16)
    whole, rest = divmod(abs(sixteenths), 16)
    parts = [str(whole)] if whole or not rest else []
    if rest:
        parts.append(str(Fraction(rest, 16)))
    return f"{'-' if sixteenths < 0 else ''}{' '.join(parts)} in"


def format_angle(rad: float, decimals: int = 1) -> str:
    """Angle in degrees, "8.5 deg"; a dash when the angle is not finite."""
    return f"{_fixed(rad * 180 / pi, decimals)} deg" if isfinite(rad) else "—"


def format_angle_per_length(rad_per_mm: float, unit: LengthUnit) -> str:
    """Angle for a length of travel, "-0.70 deg/in" or "-0.028 deg/mm"; a dash if not finite."""
    if not isfinite(rad_per_mm):
        return "—"
    per_length = rad_per_mm * (INCH if unit == "in" else 1) / _DEGREE
    return f"{_fixed(per_length, 2 if unit == 'in' else 3)} deg/{unit}"


def _fixed(value: float, decimals: int) -> str:
    figure = f"{value:.{decimals}f}"
    return figure if figure.strip("-0.") else figure.lstrip("-")  # never "-0"


def _parse(text: str, kind: _Kind, bare: str | None) -> float:
    value, unit = _split(text, kind)
    if not unit and bare is None:
        raise QuantityError(f"“{plain(text)}” has no unit: write {kind.examples}")
    return float(value * _factor(unit or str(bare), kind))


def _split(text: str, kind: _Kind) -> tuple[Fraction, str]:
    """Exact number and unit as typed ("" when bare)."""
    if not text.strip():
        raise QuantityError(
            f"nothing was typed: {kind.article} {kind.name} is written like {kind.examples}"
        )
    if len(text) > _LONGEST:
        raise QuantityError(
            f"“{plain(text, 20)}” is too long for {kind.article} {kind.name}, "
            f"which is written like {kind.examples}"
        )
    plainly = _spelled_plainly(text)
    if match := _FEET_AND_INCHES.fullmatch(plainly):
        inches = _value(match, text)
        if inches >= 12:
            raise QuantityError(f"“{plain(text)}”: the inches after whole feet are less than 12")
        return _signed(match, 12 * int(match["feet"]) + inches), "in"
    if match := _PLAIN.fullmatch(plainly):
        return _signed(match, _value(match, text)), (match["unit"] or "").rstrip(".")
    if re.search("[0-9],[0-9]", plainly):
        raise QuantityError(f"“{plain(text)}” has a comma: {_without_comma(plainly)}")
    raise QuantityError(
        f"“{plain(text)}” is not {kind.article} {kind.name}: write it like {kind.examples}"
    )


def _spelled_plainly(text: str) -> str:
    """The text with one form of minus, prime, degree and fraction, and single spaces."""
    spelled = "".join(_vulgar_fraction(character) for character in text).translate(_SAME)
    return re.sub(" +", " ", spelled.replace("''", '"')).strip()


def _vulgar_fraction(character: str) -> str:
    if unicodedata.decomposition(character).startswith("<fraction>"):
        return f" {unicodedata.normalize('NFKC', character)} "
    return " " if unicodedata.category(character) == "Zs" else character


def _value(match: re.Match[str], text: str) -> Fraction:
    if match["decimal"]:
        return Fraction(match["decimal"].rstrip("."))
    top, bottom = int(match["top"]), int(match["bottom"])
    if bottom == 0:
        raise QuantityError(f"“{plain(text)}” divides by 0: write a fraction like 5/8")
    if match["whole"] and top >= bottom:
        raise QuantityError(
            f"“{plain(text)}”: {top}/{bottom} after a whole number is less than 1, as in 17 5/8"
        )
    return int(match["whole"] or 0) + Fraction(top, bottom)


def _signed(match: re.Match[str], value: Fraction) -> Fraction:
    return -value if match["sign"] == "-" else value


def _without_comma(plainly: str) -> str:
    point = plain(plainly.replace(",", "."))
    if plainly.count(",") == 1 and not re.search(",[0-9]{3}(?![0-9])", plainly):
        return f"write {point} with a point"
    return f"write {plain(plainly.replace(',', ''))} without it, or a decimal with a point"


def _factor(unit: str, kind: _Kind) -> _Factor:
    """Size of a unit in the inside unit of its kind."""
    known = _UNITS.get(re.sub(" ?/ ?", "/", unit.casefold()))
    if known is None:
        return _factor_by_pint(unit, kind)
    if known[0] is not kind:
        raise QuantityError(
            f"{plain(unit)} is a unit of {known[0].name}, not of {kind.name}: write {kind.examples}"
        )
    return known[1]


def _factor_by_pint(unit: str, kind: _Kind) -> _Factor:
    unknown = QuantityError(f"{plain(unit)} is not a unit of {kind.name}: write {kind.examples}")
    if not re.fullmatch(_UNIT_FOR_PINT, unit, re.IGNORECASE):
        raise unknown
    from pint import PintError

    powers = re.sub("(?<=[a-z])(?=[23])", "^", unit, flags=re.IGNORECASE)
    for spelling in (powers, powers.casefold()):
        try:
            quantity = _registry().Quantity(Fraction(1), spelling)
            inside = quantity.to(kind.inside)
        except (PintError, ArithmeticError, ValueError, TypeError, AttributeError):
            continue
        # To pint an angle has no dimension, and neither has a percentage or a dozen.
        wanted = _registry().Quantity(Fraction(1), kind.inside)
        if quantity.to_root_units().units != wanted.to_root_units().units:
            continue
        return float(inside.magnitude)
    raise unknown


@cache
def _registry() -> "UnitRegistry[Any]":
    from pint import UnitRegistry

    return UnitRegistry()
