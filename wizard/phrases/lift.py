"""Ride heights at which a vehicle steers true, in words."""

from collections.abc import Sequence
from math import ceil, floor

from core.fix.lift import HeightCurve
from core.text.quantity import INCH, LengthUnit, format_length
from wizard.phrases.amounts import listed

STEP: dict[LengthUnit, float] = {"in": INCH / 8, "mm": 1.0}
"""Step to which the ends of a range are rounded, inward, mm."""

AT_NO_HEIGHT = "at no ride height from 2 in lower to 8 in of lift"


def heights_words(curve: HeightCurve, unit: LengthUnit) -> str:
    """Ride heights at which a vehicle steers true: "from 2 1/2 to 4 3/4 in of lift"."""
    if not curve.ranges:
        return f"steers true {AT_NO_HEIGHT}"
    return f"steers true {ranges_words(curve.ranges, unit)}"


def ranges_words(ranges: Sequence[tuple[float, float]], unit: LengthUnit) -> str:
    """Ranges of the ride height in one line."""
    return listed([height_range_words(each, unit) for each in ranges])


def height_range_words(ends: tuple[float, float], unit: LengthUnit) -> str:
    """A range of the ride height, rounded inward."""
    step = STEP[unit]
    low, high = ceil(ends[0] / step - 1e-6) * step, floor(ends[1] / step + 1e-6) * step
    if low > high:
        middle = (ends[0] + ends[1]) / 2
        return f"only at about {height_words(middle, unit)}"
    if low >= 0:
        smallest = format_length(low, unit).removesuffix(f" {unit}")
        return f"from {smallest} to {format_length(high, unit)} of lift"
    if high < 0:
        largest = format_length(-low, unit).removesuffix(f" {unit}")
        return f"from {largest} to {format_length(-high, unit)} lower"
    return f"from {height_words(low, unit)} to {height_words(high, unit)}"


def height_words(rise: float, unit: LengthUnit) -> str:
    """A change of the ride height: "1 in lower", "as it stands", "2 in of lift"."""
    amount = format_length(abs(rise), unit)
    if amount == format_length(0.0, unit):
        return "as it stands"
    return f"{amount} {'of lift' if rise > 0 else 'lower'}"
