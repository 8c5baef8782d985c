"""Checks of an instrument's resolution: neither finer nor coarser than instruments are."""

from collections.abc import Iterator
from math import radians

from core.entry_checks.outcome import Objection
from core.entry_checks.single_reading import AskedQuantity, format_value
from core.text.quantity import INCH, LengthUnit

COARSEST = {"length": INCH / 2, "slope": radians(2)}
"""Usual largest graduation or half-width by kind, mm or rad (common practice, no source)."""

QUANTITIES = {
    "instruments.tape": AskedQuantity("tape", "length", repeats=False),
    "instruments.sighting": AskedQuantity("sighting", "length", repeats=False, can_be_zero=True),
    "instruments.floor": AskedQuantity("floor", "length", repeats=False, can_be_zero=True),
    "instruments.angle_finder": AskedQuantity("angle_finder", "slope", repeats=False),
    "instruments.seating": AskedQuantity("seating", "slope", repeats=False, can_be_zero=True),
}
"""By path: the graduations of tape and angle finder, the half-widths of the others."""


def objections(value: float, asked: AskedQuantity, units: LengthUnit) -> Iterator[Objection]:
    """Objections to the resolution of an instrument.

    Parameters
    ----------
    value : float
        Graduation or half-width, mm or rad.
    asked : AskedQuantity
        One of QUANTITIES.
    units : "in" or "mm"
        Unit of the lengths in the messages.
    """
    resolution = format_value(value, asked.kind, units)
    coarsest = COARSEST[asked.kind]
    if value < 0 or (value == 0 and not asked.can_be_zero):
        yield Objection(f"{resolution} is too fine: it has to be more than 0.", impossible=True)
    elif value == 0:
        yield Objection(
            "No instrument is that exact. With 0 the verdict would be surer than the readings are."
        )
    elif value > 10 * coarsest:
        yield Objection(
            f"{resolution} is too coarse to measure with. "
            f"Up to {format_value(coarsest, asked.kind, units)} is usual.",
            impossible=True,
        )
    elif value > coarsest:
        yield Objection(
            f"{resolution} is coarse: up to {format_value(coarsest, asked.kind, units)} is usual. "
            "Look at the marks and at the unit."
        )
