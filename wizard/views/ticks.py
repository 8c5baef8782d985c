"""Round numbers for the axes of a picture."""

from math import ceil, floor, log10

EDGE = 1e-9
"""Share of a step by which a number may miss an end of the axis through rounding."""


def round_step(span: float, most: int, least: float = 0.0) -> float:
    """Smallest step of 1, 2 or 5 times a power of ten that divides a span into few intervals.

    Parameters
    ----------
    span : float
        Length of the axis, in the unit of its numbers; positive.
    most : int
        Largest number of intervals.
    least : float
        No step is smaller.
    """
    rough = span / max(most, 1)
    power = 10.0 ** floor(log10(rough))
    steps = (factor * power for factor in (1, 2, 5, 10))
    return max(next(step for step in steps if step >= rough * (1 - EDGE)), least)


def multiples(low: float, high: float, step: float) -> tuple[float, ...]:
    """Multiples of a step from low to high."""
    first, last = ceil(low / step - EDGE), floor(high / step + EDGE)
    return tuple(step * number for number in range(first, last + 1))


def ticks(low: float, high: float, most: int, least: float = 0.0) -> tuple[float, ...]:
    """Round numbers from low to high with at most `most` intervals, each at least `least`."""
    return multiples(low, high, round_step(high - low, most, least))
