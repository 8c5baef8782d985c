"""Rises of a pivot and lengths to set, in words."""

from collections.abc import Sequence

from core.text.quantity import LengthUnit, format_length


def rise_words(rise: float, unit: LengthUnit) -> str:
    """A rise in words: "up 1 in"."""
    return f"{'up' if rise >= 0 else 'down'} {format_setting(abs(rise), unit)}"


def rise_range_words(rises: Sequence[float], unit: LengthUnit) -> str:
    """Range of a correction: "up 1/2 in to 4 in", "down 2 1/4 in"."""
    low, high = min(rises), max(rises)
    if low == high:
        return rise_words(low, unit)
    if low < 0 < high:
        return f"{rise_words(low, unit)} to {rise_words(high, unit)}"
    least, most = sorted((low, high), key=abs)
    return f"{rise_words(least, unit)} to {format_setting(abs(most), unit)}"


def format_setting(mm: float, unit: LengthUnit) -> str:
    """A length to set: to a sixteenth, or to half a millimetre where it is not a whole one."""
    return format_length(mm, unit, decimals=0 if abs(mm - round(mm)) < 0.05 else 1)


def is_unchanged(change: float, unit: LengthUnit) -> bool:
    """True if a tape cannot show the change."""
    return format_length(abs(change), unit) == format_length(0.0, unit)
