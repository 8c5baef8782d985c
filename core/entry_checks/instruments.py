"""Resolution of tape and angle finder: refused or queried where it is too fine or too coarse."""

from collections.abc import Iterator
from math import radians

from core.entry_checks.outcome import Objection
from core.entry_checks.single_reading import AskedQuantity, format_value
from core.text.quantity import INCH, LengthUnit

COARSEST = {"length": INCH / 2, "slope": radians(2)}
"""Usual largest graduation or half-width (common practice, no source)."""

QUANTITIES = {
    "instruments.tape": AskedQuantity("tape", "length", repeats=False),
    "instruments.sighting": AskedQuantity("sighting", "length", repeats=False, can_be_zero=True),
    "instruments.floor": AskedQuantity("floor", "length", repeats=False, can_be_zero=True),
    "instruments.angle_finder": AskedQuantity("angle_finder", "slope", repeats=False),
    "instruments.seating": AskedQuantity("seating", "slope", repeats=False, can_be_zero=True),
}
"""Quantities by path: graduations of tape and angle finder, half-widths of the others."""


def objections(value: float, asked: AskedQuantity, units: LengthUnit) -> Iterator[Objection]:
    """Objections to the stated resolution of an instrument."""
    coarsest = COARSEST[asked.kind]
    stated, usual = (format_value(size, asked.kind, units) for size in (value, coarsest))
    if value < 0 or (value == 0 and not asked.can_be_zero):
        yield Objection("It has to be more than 0: nothing can be read finer.", impossible=True)
    elif value == 0:
        yield Objection("Nothing is that exact: the verdict would be surer than the readings are.")
    elif value > 10 * coarsest:
        yield Objection(f"{stated} is too coarse to tell.", impossible=True)
    elif value > coarsest:
        yield Objection(
            f"{stated} is coarse: up to {usual} is usual. Look at the marks and at the unit."
        )
