"""Check of one quantity by itself: possible, usual, and with repeats that agree."""

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
from core.profiles.defaults import bounds_of
from core.readings.guide_survey import GUIDE, KINGPIN
from core.readings.reading import Instruments, Kind, Reading, claimed_uncertainty, repeats_scatter
from core.readings.survey import SURVEY, WHEELS
from core.text import quantity
from core.text.plain_text import plain
from core.text.quantity import (
    INCH,
    LengthUnit,
    QuantityError,
    format_angle,
    format_length,
    other_unit,
)

LONGEST = 1000
"""Characters of one answer."""

MOST_REPEATS = 30

BOUNDED = {
    "wheelbase": "vehicle.wheelbase",
    **{
        name: name
        for name in (
            "travel.bump",
            "travel.droop",
            "wheels.hub_height",
            "steering.arm",
            "steering.pitman_arm",
            "tie_rod.near_arm",
            "tie_rod.joint_from_far_ball",
            "guide.span",
        )
    },
}
"""Lengths that have bounds of their own, with the name that has them."""

LARGEST = {asked: bounds_of(name).largest_value for asked, name in BOUNDED.items()}
LARGEST_OTHERWISE = 4_000.0
"""mm; nothing on a vehicle with a solid front axle is further apart, but for LARGEST."""

STEEPEST = radians(60)
"""rad; a steeper bar could not hold or steer an axle sideways."""

MOST_LEAN = radians(40)
"""rad; no kingpin leans further."""

GUIDE_READ = {name: kind for name, kind in GUIDE.items() if kind != "gain"}
"""Readings of the guide that are asked for; the pitch gain comes from castor at two heights."""

SMALLEST_RATIO, LARGEST_RATIO = 5, 40
"""Steering-wheel angle to pitman arm angle (common practice, no source)."""


@dataclass(frozen=True)
class AskedQuantity:
    """A quantity that is asked for.

    Attributes
    ----------
    name : str
        Name of the reading, as in a profile's usual ranges.
    kind : "height", "offset", "station", "length", "brace", "slope" or "number"
    repeats : bool
        True if the quantity is kept as a list of repeats.
    can_be_zero : bool
        True if a length can be 0.
    """

    name: str
    kind: Kind | Literal["number"]
    repeats: bool = True
    can_be_zero: bool = False


QUANTITIES: dict[str, AskedQuantity] = {
    **{
        f"readings.{name}": AskedQuantity(name, kind)
        for name, kind in (SURVEY | WHEELS | GUIDE_READ | KINGPIN).items()
    },
    **{
        f"readings.{name}": AskedQuantity(name, "length")
        for name in (
            "tie_rod.joint_from_far_ball",
            "tie_rod.near_arm",
            "wheels.track",
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
    """A quantity as it was typed, with its repeats.

    Attributes
    ----------
    values : tuple of float
        mm, rad or plain numbers.
    texts : tuple of str
        The repeats as typed, with their unit.
    bare : bool
        True if a length was typed without its unit.
    """

    values: tuple[float, ...]
    texts: tuple[str, ...]
    bare: bool

    def kept(self, asked: AskedQuantity) -> list[str] | str:
        """Value for the document: the list of repeats, or a single text."""
        return list(self.texts) if asked.repeats else self.texts[0]


def parse_answer(answer: Sequence[str], asked: AskedQuantity, units: LengthUnit) -> TypedQuantity:
    """Quantity in a typed answer.

    Parameters
    ----------
    answer : sequence of str
        The repeats, each text again separated at ";".
    asked : AskedQuantity
    units : "in" or "mm"
        Unit of a length without a unit.

    Raises
    ------
    QuantityError
        The answer is no quantity of this kind, too long, or has too many repeats.
    """
    if sum(map(len, answer)) > LONGEST:
        raise QuantityError(f"is too long: {LONGEST} characters at most")
    texts = quantity.split_repeats(";".join(answer))
    if len(texts) > MOST_REPEATS:
        raise QuantityError(f"has {len(texts)} repeats: {MOST_REPEATS} at most")
    if len(texts) > 1 and not asked.repeats:
        raise QuantityError("has more than one value: type a single one, without ;")
    if asked.kind == "number":
        return TypedQuantity(tuple(map(quantity.parse_number, texts)), texts, bare=False)
    if asked.kind in ("slope", "angle"):
        angles = tuple(map(quantity.parse_angle, texts))
        with_unit = tuple(quantity.with_unit(text, "deg") for text in texts)
        return TypedQuantity(angles, with_unit, bare=False)
    for text in texts:
        _refuse_forgotten_space(text)
    lengths = tuple(quantity.parse_length(text, units) for text in texts)
    with_unit = tuple(quantity.with_unit(text, units) for text in texts)
    bare = any(kept != " ".join(text.split()) for kept, text in zip(with_unit, texts, strict=True))
    return TypedQuantity(lengths, with_unit, bare)


def _refuse_forgotten_space(text: str) -> None:
    """Raise QuantityError for a fraction that is not less than 1, such as 175/8.

    It is more often 17 5/8 with the space forgotten than 21 7/8. A file may hold such a fraction:
    only typed answers are checked.
    """
    fraction = re.fullmatch(r"[-+]? *([0-9]+) */ *([0-9]+)[^0-9]*", text)
    if fraction and 0 < int(fraction[2]) <= int(fraction[1]):
        raise QuantityError(
            f"“{plain(text)}”: {fraction[1]}/{fraction[2]} is not less than 1; "
            "leave a space before the fraction, as in 17 5/8"
        )


def objections(
    typed: TypedQuantity, asked: AskedQuantity, known: KnownAnswers
) -> Iterator[Objection]:
    """Objections to a quantity by itself.

    Parameters
    ----------
    typed : TypedQuantity
    asked : AskedQuantity
        One of QUANTITIES.
    known : KnownAnswers
        The instruments, the session's unit, and the profile with its usual ranges.
    """
    unit_question = _other_unit_question(typed, asked, known)
    usual = _usual_sentence(asked, known)
    for value in typed.values:
        if fault := _impossible(value, asked):
            yield Objection(
                f"{_subject(asked)} {format_value(value, asked.kind, known.units)}: "
                f"{fault}{unit_question}{usual}",
                impossible=True,
            )
    if asked.kind != "number" and known.instruments:
        reading = Reading(asked.name, asked.kind, typed.values)
        yield from _scatter(reading, known.instruments, known.units)
    if known.profile is None:
        return
    smallest, largest = known.profile.ranges[asked.name]
    value = fmean(typed.values)
    if not smallest - ROUNDING <= value <= largest + ROUNDING:
        again = f" {look_again(asked.kind)}" if asked.kind != "number" else ""
        yield Objection(
            f"{_subject(asked)} {format_value(value, asked.kind, known.units)} is unusual."
            f"{usual}{unit_question}{again}"
        )


def _usual_sentence(asked: AskedQuantity, known: KnownAnswers) -> str:
    """Sentence with the usual range of the profile; empty without a profile."""
    if known.profile is None:
        return ""
    smallest, largest = (
        format_value(end, asked.kind, known.units) for end in known.profile.ranges[asked.name]
    )
    return f" Usual for this profile is {smallest} to {largest}."


def format_value(value: float, kind: str, units: LengthUnit) -> str:
    """Text of a quantity, as a tape or an angle finder reads.

    Parameters
    ----------
    value : float
        mm, rad or a plain number.
    kind : str
        "slope", "number", or a kind of length.
    units : "in" or "mm"
        Unit of a length in the text.
    """
    if kind in ("slope", "angle"):
        return format_angle(value)
    return f"{value:g}" if kind == "number" else format_length(value, units)


def _subject(asked: AskedQuantity) -> str:
    """Name of the reading, as the beginning of a sentence."""
    name = reading_name(asked.name)
    return f"{name[0].upper()}{name[1:]}"


def _impossible(value: float, asked: AskedQuantity) -> str:
    """Reason why a value is impossible; empty where it is possible."""
    if asked.kind == "slope":
        return "" if abs(value) < STEEPEST else "a bar that steep cannot hold an axle sideways."
    if asked.kind == "angle":
        return "" if abs(value) <= MOST_LEAN else "no kingpin leans that far."
    if asked.kind == "number":
        if SMALLEST_RATIO <= value <= LARGEST_RATIO:
            return ""
        return f"it should lie between {SMALLEST_RATIO} and {LARGEST_RATIO}, like 16."
    if abs(value) > LARGEST.get(asked.name, LARGEST_OTHERWISE):
        return "no vehicle is that large."
    if asked.kind == "height" and value <= 0:
        return "that is on the floor or below it. Heights are taken upwards from the floor."
    if asked.kind in ("length", "brace"):
        if value < 0:
            return "it cannot be negative."
        if value == 0 and not asked.can_be_zero:
            return "it has to be more than 0."
    return ""


def _other_unit_question(typed: TypedQuantity, asked: AskedQuantity, known: KnownAnswers) -> str:
    """Question whether a bare number was meant in the other unit, where that would be usual."""
    if known.profile is None or not typed.bare:
        return ""
    smallest, largest = known.profile.ranges[asked.name]
    value = fmean(typed.values)
    in_other_unit = value * INCH if known.units == "mm" else value / INCH
    if smallest <= value <= largest or not smallest <= in_other_unit <= largest:
        return ""
    return f" Was it {other_unit(known.units)}? Then type the unit too."


def _scatter(reading: Reading, instruments: Instruments, units: LengthUnit) -> Iterator[Objection]:
    """Objection to repeats that scatter more than the instruments claim."""
    if not repeats_scatter(reading, instruments):
        return

    def text(value: float) -> str:
        return format_value(value, reading.kind, units)

    least, most = min(reading.repeats), max(reading.repeats)
    claimed = claimed_uncertainty(reading.kind, instruments)
    yield Objection(
        f"The repeats lie {text(most - least)} apart ({text(least)} to {text(most)}). "
        f"The instruments claim about {text(claimed)} each time. "
        "Sight the same centre and take it once more. "
        "If you keep the repeats, their scatter counts as the doubt."
    )
