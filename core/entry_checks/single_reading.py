"""The check of a single quantity: possible, repeats that agree, usual."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import radians
from statistics import fmean
from typing import Literal

from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Objection
from core.entry_checks.reading_names import look_again, reading_name
from core.entry_checks.rule import ROUNDING
from core.readings.reading import Instruments, Kind, Reading, claimed_uncertainty, repeats_scatter
from core.readings.survey import SURVEY, WHEELS
from core.text import quantity
from core.text.plain_text import plain
from core.text.quantity import INCH, LengthUnit, QuantityError, format_angle, format_length

LONGEST = 1000
"""Longest answer, characters."""

MOST_REPEATS = 30

LARGEST = {"wheelbase": 12_000.0}
LARGEST_OTHERWISE = 4_000.0
"""mm; nothing on a vehicle with a solid front axle is further apart."""

STEEPEST = radians(60)
"""rad; a steeper bar could not locate or steer an axle sideways."""

SMALLEST_RATIO, LARGEST_RATIO = 5, 40
"""Steering-wheel angle to pitman arm angle (common practice, no source)."""


@dataclass(frozen=True)
class AskedQuantity:
    """A quantity that a question asks for.

    Attributes
    ----------
    name : str
        Name of the reading, as in a profile's usual ranges.
    kind : "height", "offset", "station", "length", "brace", "slope" or "number"
    repeats : bool
        Whether it is kept as a list of repeats.
    can_be_zero : bool
        Of lengths only.
    """

    name: str
    kind: Kind | Literal["number"]
    repeats: bool = True
    can_be_zero: bool = False


QUANTITIES: dict[str, AskedQuantity] = {
    **{f"readings.{name}": AskedQuantity(name, kind) for name, kind in (SURVEY | WHEELS).items()},
    **{
        f"readings.{name}": AskedQuantity(name, "length")
        for name in (
            "tie_rod.joint_from_far_ball",
            "tie_rod.near_arm",
            "steering.arm",
            "steering.pitman_arm",
        )
    },
    "readings.steering.ratio": AskedQuantity("steering.ratio", "number", repeats=False),
    "readings.travel.bump": AskedQuantity("travel.bump", "length", repeats=False, can_be_zero=True),
    "readings.travel.droop": AskedQuantity(
        "travel.droop", "length", repeats=False, can_be_zero=True
    ),
    "vehicle.wheelbase": AskedQuantity("wheelbase", "length", repeats=False),
    "stance.ride_height.left": AskedQuantity("ride_height", "length", repeats=False),
    "stance.ride_height.right": AskedQuantity("ride_height", "length", repeats=False),
}
"""Every quantity with a usual range, by its path in the document."""


@dataclass(frozen=True)
class TypedQuantity:
    """A quantity as it was typed: values in mm, rad or plain numbers, texts with their unit."""

    values: tuple[float, ...]
    texts: tuple[str, ...]
    bare: bool

    def kept(self, asked: AskedQuantity) -> list[str] | str:
        """Value for the document: a list of repeats, or a single text."""
        return list(self.texts) if asked.repeats else self.texts[0]


def parse_answer(answer: Sequence[str], asked: AskedQuantity, units: LengthUnit) -> TypedQuantity:
    """The repeats of an answer, separated by ";". Raises QuantityError."""
    if sum(map(len, answer)) > LONGEST:
        raise QuantityError(f"is too long: {LONGEST} characters at most")
    texts = quantity.split_repeats(";".join(answer))
    if len(texts) > MOST_REPEATS:
        raise QuantityError(f"has {len(texts)} repeats: {MOST_REPEATS} at most")
    if len(texts) > 1 and not asked.repeats:
        raise QuantityError("has more than one value: it takes a single one, without ;")
    if asked.kind == "number":
        return TypedQuantity(tuple(map(quantity.parse_number, texts)), texts, bare=True)
    if asked.kind == "slope":
        values = tuple(map(quantity.parse_angle, texts))
        return TypedQuantity(
            values, tuple(quantity.with_unit(text, "deg") for text in texts), bare=False
        )
    for text in texts:
        _refuse_forgotten_space(text)
    values = tuple(quantity.parse_length(text, units) for text in texts)
    with_unit = tuple(quantity.with_unit(text, units) for text in texts)
    bare = any(kept != " ".join(text.split()) for kept, text in zip(with_unit, texts, strict=True))
    return TypedQuantity(values, with_unit, bare)


def _refuse_forgotten_space(text: str) -> None:
    """Raise QuantityError for 175/8: more often 17 5/8 without its space than 21 7/8.

    A file may hold such a fraction, because nobody types a file in a hurry.
    """
    found = re.fullmatch(r"[-+]? *([0-9]+) */ *([0-9]+)[^0-9]*", text)
    if found and 0 < int(found[2]) <= int(found[1]):
        raise QuantityError(
            f"“{plain(text)}”: {found[1]}/{found[2]} is not less than 1; "
            "leave a space before the fraction, as in 17 5/8"
        )


def objections(
    answer: TypedQuantity, asked: AskedQuantity, known: KnownAnswers
) -> Iterator[Objection]:
    """Objections to a quantity by itself."""
    units = known.units
    meant = _other_unit(answer, asked, known)
    usual = _usual(asked, known)
    for value in answer.values:
        if fault := _impossible(value, asked):
            amount = format_value(value, asked.kind, units)
            text = f"{_subject(asked)} {amount}: {fault}{meant}"
            yield Objection(f"{text} Usual is {usual}." if usual else text, impossible=True)
    if asked.kind != "number" and known.instruments:
        yield from _scatter(
            Reading(asked.name, asked.kind, answer.values), known.instruments, units
        )
    if known.profile is None:
        return
    smallest, largest = known.profile.ranges[asked.name]
    value = fmean(answer.values)
    if not smallest - ROUNDING <= value <= largest + ROUNDING:
        amount = format_value(value, asked.kind, units)
        again = f" {look_again(asked.kind)}" if asked.kind != "number" else ""
        yield Objection(
            f"{_subject(asked)} {amount} is unusual: {usual} is usual "
            f"for this profile.{meant}{again}"
        )


def _usual(asked: AskedQuantity, known: KnownAnswers) -> str:
    """Usual range of the profile, "12 in to 36 in"; empty without a profile."""
    if known.profile is None:
        return ""
    ends = (format_value(end, asked.kind, known.units) for end in known.profile.ranges[asked.name])
    return " to ".join(ends)


def format_value(value: float, kind: str, units: LengthUnit) -> str:
    """A quantity as an instrument reads it."""
    if kind == "slope":
        return format_angle(value)
    return f"{value:g}" if kind == "number" else format_length(value, units)


def _subject(asked: AskedQuantity) -> str:
    words = reading_name(asked.name)
    return f"{words[0].upper()}{words[1:]}"


def _impossible(value: float, asked: AskedQuantity) -> str:
    """Reason that a value is impossible; empty where it is possible."""
    if asked.kind == "slope":
        return "" if abs(value) < STEEPEST else "a bar that steep holds nothing sideways."
    if asked.kind == "number":
        possible = SMALLEST_RATIO <= value <= LARGEST_RATIO
        return "" if possible else f"it lies between {SMALLEST_RATIO} and {LARGEST_RATIO}, like 16."
    if abs(value) > LARGEST.get(asked.name, LARGEST_OTHERWISE):
        return "no vehicle is that large."
    if asked.kind == "height" and value <= 0:
        return "that is on the floor or below it; heights are taken upwards from the floor."
    if asked.kind in ("length", "brace"):
        if value < 0:
            return "it cannot be negative."
        if value == 0 and not asked.can_be_zero:
            return "it has to be more than 0."
    return ""


def _other_unit(answer: TypedQuantity, asked: AskedQuantity, known: KnownAnswers) -> str:
    """Question about the other unit, where a bare number would be usual in it; else empty."""
    if known.profile is None or not answer.bare or asked.kind == "number":
        return ""
    smallest, largest = known.profile.ranges[asked.name]
    value = fmean(answer.values)
    meant = value * INCH if known.units == "mm" else value / INCH
    if smallest <= value <= largest or not smallest <= meant <= largest:
        return ""
    return f" Was it {'in' if known.units == 'mm' else 'mm'}? Then type the unit too."


def _scatter(reading: Reading, instruments: Instruments, units: LengthUnit) -> Iterator[Objection]:
    if not repeats_scatter(reading, instruments):
        return
    least, most = min(reading.repeats), max(reading.repeats)
    claimed = claimed_uncertainty(reading.kind, instruments)
    spread, low, high, expected = (
        format_value(value, reading.kind, units) for value in (most - least, least, most, claimed)
    )
    yield Objection(
        f"The repeats lie {spread} apart ({low} to {high}). The instruments claim about {expected} "
        "each time. Sight the same centre and take it once more. If you keep the repeats, their "
        "scatter counts as the doubt."
    )
