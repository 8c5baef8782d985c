"""Causes of the steer, the course on the road, and the movement of the axle."""

from collections.abc import Iterator
from math import degrees

from core.kinematics.road_events import Course
from core.text.plain_text import plain
from core.text.quantity import INCH, LengthUnit, format_length
from core.verdict.direct_check import DecidedBy
from core.verdict.verdict import READINGS, Verdict, decided_by
from wizard.phrases.amounts import (
    angle_words,
    drift_words,
    rounded_length_words,
    side_words,
    sideways_words,
    speed_words,
    travel_words,
)
from wizard.phrases.ball_path import frame_end_fact, guide_facts
from wizard.phrases.fact import LOOK, Fact

GRADIENT_TRAVEL = {"in": (INCH, "for each inch"), "mm": (10.0, "for each 10 mm")}
"""The travel a gradient is given for."""

ESTIMATE = (
    "Tyre slip is that of a usual vehicle of this kind. The driver holds the steering wheel still. "
    "The give of bushes and the lash of joints are left out."
)


BY_THE_PIVOTS = (
    "This is computed from the pivots. The measured steer contradicts them, so it does not hold "
    "for this vehicle."
)


def contradicted_facts(verdict: Verdict) -> Iterator[Fact]:
    """Caution over what is computed from pivots that the measured steer contradicts."""
    if decided_by(verdict) == DecidedBy.DIRECT:
        yield Fact("", BY_THE_PIVOTS, LOOK)


def steer_reason_facts(verdict: Verdict, unit: LengthUnit) -> Iterator[Fact]:
    """Causes of the steer at both ends of the working travel."""
    yield from contradicted_facts(verdict)
    for split in reversed(verdict.splits):
        whole = split.not_parallel + split.slope_and_length
        yield Fact(
            travel_words(split.heave, unit),
            f"{angle_words(whole)}: not parallel {share_words(split.not_parallel)}, "
            f"slope and length {share_words(split.slope_and_length)}",
        )
    mm, each = GRADIENT_TRAVEL[unit]
    gradient = degrees(float(verdict.derivatives.gradient)) * mm
    give = 2 * degrees(verdict.u_gradient) * mm
    way = f" {side_words(gradient)}" if abs(gradient) >= 0.005 else ""
    yield Fact(
        "at ride height", f"{abs(gradient):.2f} deg{way} {each} of bump, give or take {give:.2f}"
    )


def share_words(rad: float) -> str:
    """A share of the steer; the side is said where it is any."""
    deg = degrees(rad)
    return f"{abs(deg):.1f} {'left' if deg > 0 else 'right'}" if abs(deg) >= 0.05 else "0.0"


def road_facts(verdict: Verdict, unit: LengthUnit) -> Iterator[Fact]:
    """Course of the vehicle through the profile's events."""
    if verdict.courses:
        yield from contradicted_facts(verdict)
    for event, course in zip(verdict.session.events, verdict.courses, strict=False):
        yield Fact(
            plain(event.name),
            f"{speed_words(event.speed, unit)}, {travel_words(event.travel, unit)}: heads "
            f"{angle_words(course.heading)}, drifts {drift_words(course.drift, unit)}"
            f"{windup_words(course, unit)}",
        )
    if verdict.courses:
        yield Fact("an estimate", ESTIMATE)


def windup_words(course: Course, unit: LengthUnit) -> str:
    """Doubt of the drift that comes from the assumed wind-up, where there is any."""
    if not course.drift_within >= INCH / 16:
        return ""
    give = rounded_length_words(course.drift_within, unit)
    return f". Give or take {give}, by how far the brakes turn the axle"


def axle_facts(verdict: Verdict, unit: LengthUnit) -> Iterator[Fact]:
    """Sideways walk, roll centre, and where a link binds."""
    sweep = verdict.sweep
    ends = [
        f"{sideways_words(float(sweep.axle_shift[end]), unit)} at "
        f"{travel_words(float(sweep.heave[end]), unit)}"
        for end in (-1, 0)
    ]
    yield Fact("axle walks", ", ".join(ends))
    if READINGS not in verdict.held_back_by:
        yield frame_end_fact(verdict, unit)
    yield from guide_facts(verdict, unit)
    if verdict.roll_centre_height is not None:
        yield Fact(
            "roll centre", f"{format_length(verdict.roll_centre_height, unit)} above the floor"
        )
    yield from binding_facts(verdict.travel_limits, unit)


def binding_facts(limits: tuple[float | None, float | None], unit: LengthUnit) -> Iterator[Fact]:
    """Heave at which a link binds before the end of the travel."""
    for limit in limits:
        if limit is not None:
            yield Fact(
                "a link binds",
                f"at {travel_words(limit, unit)}, before the travel ends: "
                "there it can go no further. "
                "Look at the travel, the bump stops and the lengths before it is driven.",
                LOOK,
            )
