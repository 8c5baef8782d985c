"""Lengths, angles, sides and speeds in words."""

from collections.abc import Sequence
from math import degrees, isfinite

from core.text.quantity import INCH, LengthUnit, format_length

TIMES = {1: "once", 2: "twice"}
COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")

KMH, MPH = 1e6 / 3600, 1609344.0 / 3600
"""mm/s in one of each."""


def travel_words(heave: float, unit: LengthUnit) -> str:
    """A heave in words: "2 in of bump"."""
    if abs(heave) < 0.5:
        return "ride height"
    return f"{format_length(abs(heave), unit)} of {'bump' if heave > 0 else 'droop'}"


def place_in_travel(heave: float, unit: LengthUnit) -> str:
    """A heave as the name of a place: "2 in bump"."""
    amount = format_length(abs(heave), unit)
    if amount == format_length(0.0, unit):
        return "ride height"
    return f"{amount} {'bump' if heave > 0 else 'droop'}"


def angle_words(rad: float) -> str:
    """An angle with its side: "1.2 deg to the left"; tenths below 10 deg."""
    deg = abs(degrees(rad))
    if not isfinite(deg):
        return "—"
    if deg < 0.05:
        return "less than 0.1 deg"
    return f"{deg:.{0 if deg >= 9.95 else 1}f} deg {side_words(rad)}"


def sideways_words(mm: float, unit: LengthUnit, nothing: str = "") -> str:
    """A lateral movement with its side: "3/16 in to the left"; `nothing` where there is none."""
    if not isfinite(mm):
        return "—"
    amount = format_length(abs(mm), unit)
    if amount == format_length(0.0, unit):
        return nothing or f"less than {format_length(1.6, unit)}"
    return f"{amount} {side_words(mm)}"


def drift_words(mm: float, unit: LengthUnit) -> str:
    """A lateral movement that is an estimate: beyond 10 in to whole inches, or to 10 mm."""
    step = INCH if unit == "in" else 10.0
    return sideways_words(round(mm / step) * step if isfinite(mm) and abs(mm) > 254 else mm, unit)


def side_words(value: float) -> str:
    """Side of a positive or negative value."""
    return "to the left" if value > 0 else "to the right"


def rounded_length_words(mm: float, unit: LengthUnit) -> str:
    """A rounded length: to 1/8 in, or to a whole mm; beyond 10 in to whole inches, or to 10 mm."""
    step = INCH / 8 if unit == "in" else 1.0
    if abs(mm) > 254:
        step = INCH if unit == "in" else 10.0
    return format_length(max(round(abs(mm) / step), 1) * step, unit)


def speed_words(mm_per_s: float, unit: LengthUnit) -> str:
    """A speed as the road signs of that unit give it."""
    if unit == "in":
        return f"{mm_per_s / MPH:.0f} mph"
    return f"{mm_per_s / KMH:.0f} km/h"


def repeat_count_words(count: int) -> str:
    """Number of repeats: "once more", "twice more", "three times more"."""
    return f"{TIMES.get(count, f'{count_words(count)} times')} more"


def count_words(number: int) -> str:
    """A small number as a word."""
    return COUNTS[number] if number < len(COUNTS) else str(number)


def listed(words: Sequence[str]) -> str:
    """Words in a list: "a, b and c"."""
    return " and ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))
