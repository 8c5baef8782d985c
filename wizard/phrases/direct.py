"""The direct check in words: whether the vehicle does what its pivots say, and where to look."""

from collections.abc import Iterator
from math import degrees, isfinite

from core.kinematics.vectors import Array
from core.text.quantity import LengthUnit, format_length
from core.verdict.direct_check import DecidedBy, DirectResult
from core.verdict.direct_shape import LookAt
from core.verdict.verdict import Verdict
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.verdict_words import NO, YES, give_or_take

AGREES = "The vehicle does what its pivots say. The measured steer and the pivots decide together."
DISAGREES = "The vehicle does not do what its pivots say. The measured steer decides alone."

DECIDED_BY = {
    DecidedBy.PIVOTS: "by the pivots",
    DecidedBy.BOTH: "by the pivots and the direct check",
    DecidedBy.DIRECT: "by the direct check alone",
}
"""What decides the peak steer, in words."""

LOOK_AT = {
    LookAt.ARC: "The difference goes one way in bump and in droop. Look at the lengths and the "
    "heights of both links, and at the guide.",
    LookAt.SLOPE: "The difference grows with the travel, one way in bump and the other in droop. "
    "Look for a soft bush or a bending arm. Read the arms, the slopes and the guide again.",
    LookAt.LASH: "The wheels stand otherwise going up than coming down. Look for play in a joint, "
    "the steering box or a wheel bearing.",
    LookAt.BINDING: "The difference begins beyond some height. Look for a part that touches or "
    "binds there.",
}
"""Where to look, by the shape of the difference; a hint, never a finding."""


def direct_facts(verdict: Verdict, unit: LengthUnit) -> Iterator[Fact]:
    """The direct check of a verdict; nothing where there is none."""
    direct = verdict.direct
    if direct is None:
        return
    yield Fact("direct check", AGREES if direct.agrees else DISAGREES, YES if direct.agrees else NO)
    yield Fact("peak steer", peak_words(direct))
    yield Fact("", by_pivots_alone_words(direct))
    if not direct.has_returned:
        yield Fact("ride height", closing_words(direct, unit), LOOK)
    if direct.lash_deg is not None and direct.u_lash_deg is not None:
        yield Fact("play", lash_words(direct), LOOK if LookAt.LASH in direct.look_at else "")
    for shape in direct.look_at:
        yield Fact("look at", LOOK_AT[shape], LOOK)
    yield Fact("largest gap", gap_words(direct, unit))


def peak_words(direct: DirectResult) -> str:
    """The peak steer that counts, with its doubt and what decides it."""
    peak = give_or_take(direct.peak_deg, 2 * direct.u_peak_deg, decimals=2)
    return f"{peak}, {DECIDED_BY[direct.decided_by]}"


def by_pivots_alone_words(direct: DirectResult) -> str:
    """The peak steer without the direct check."""
    alone = direct.by_pivots.ruling
    return f"{give_or_take(degrees(alone.value), degrees(2 * alone.u), decimals=2)}, by the pivots"


def closing_words(direct: DirectResult, unit: LengthUnit) -> str:
    """Caution that the axle was not back at ride height in the last row."""
    return (
        f"The last row is {format_length(direct.closing_mm, unit)} off the first. Both should be "
        "read at ride height; read the last row again."
    )


def lash_words(direct: DirectResult) -> str:
    """Width of the loop between going up and coming down."""
    assert direct.lash_deg is not None
    assert direct.u_lash_deg is not None
    width = give_or_take(direct.lash_deg, 2 * direct.u_lash_deg, decimals=2)
    words = f"{width}, between going up and coming down"
    if LookAt.LASH in direct.look_at and direct.lash_wheel_deg is not None:
        words += f". That is {direct.lash_wheel_deg:.0f} deg at the steering wheel"
    return words


def gap_words(direct: DirectResult, unit: LengthUnit) -> str:
    """The largest difference between measured and computed steer."""
    gap = abs(direct.steer_deg - direct.computed_deg)
    place = largest_at(gap)
    if place is None:
        return "not known: by its pivots a link binds at every height read"
    heave = direct.heave_mm[place]
    way = "bump" if heave > 0 else "droop"
    return (
        f"measured {direct.steer_deg[place]:.2f} deg, by the pivots "
        f"{direct.computed_deg[place]:.2f} deg, at {format_length(abs(heave), unit)} of {way}"
    )


def largest_at(values: Array) -> int | None:
    """Index of the largest finite value; None where there is none."""
    finite = [i for i, value in enumerate(values.tolist()) if isfinite(value)]
    return max(finite, key=lambda i: float(values[i])) if finite else None
