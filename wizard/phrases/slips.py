"""Slips that would explain why the readings do not close, each in a sentence."""

from collections.abc import Iterator, Sequence

from core.adjustment.slips import Slip, SlipKind
from core.readings.photograph import is_mark
from core.text.quantity import LengthUnit, format_angle, format_length
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.reading_names import name_of_reading

MOST_NAMED = 4
"""Largest number of slips that are named together."""

CLOSES = "everything closes"


def slip_facts(slips: Sequence[Slip], unit: LengthUnit) -> Iterator[Fact]:
    """The likely slips, the best first."""
    likely = [slip for slip in slips if slip.is_likely][:MOST_NAMED]
    for place, slip in enumerate(likely):
        name = "a slip?" if place == 0 else "or this slip?"
        yield Fact(name, slip_sentence(slip, unit), LOOK)


def slip_sentence(slip: Slip, unit: LengthUnit) -> str:
    """A slip, and that the readings close without it."""
    names = [f"the {name_of_reading(name)}" for name in slip.readings]
    now = value_words(slip, unit)
    match slip.slip:
        case SlipKind.EXCHANGED:
            return f"If {names[0]} and {names[-1]} were exchanged, {CLOSES}."
        case SlipKind.SIGN:
            return f"If {names[0]} has the wrong sign and is {now}, {CLOSES}."
        case SlipKind.UNIT:
            return f"If {names[0]} was read in another unit and is {now}, {CLOSES}."
        case SlipKind.WHOLE:
            return f"If {names[0]} was misread and is {now}, {CLOSES}."
        case SlipKind.EDGE:
            return f"If {names[0]} was taken to the edge of the bolt and is {now}, {CLOSES}."
        case SlipKind.SET_ASIDE if is_mark(slip.readings[0]):
            return f"If {names[0]} is left out, {CLOSES}. Set that mark again."
        case SlipKind.SET_ASIDE:
            return f"If {names[0]} is set aside, {CLOSES}. The others make it {now}."


def value_words(slip: Slip, unit: LengthUnit) -> str:
    """Value of the first reading without the slip; "" for a mark."""
    if not slip.now:
        return ""
    name, value = slip.readings[0], slip.now[0]
    return format_angle(value) if name.endswith(".slope") else format_length(value, unit)
