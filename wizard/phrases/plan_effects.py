"""Other effects of a plan: rules that get worse, roll centre, side walk of the axle."""

from collections.abc import Iterator
from math import degrees

from core.fix.lift import curve_now, curve_with_plan
from core.fix.plan import Plan
from core.kinematics.pivots import RIDE_HEIGHT
from core.text.quantity import LengthUnit, format_length
from core.verdict.rules import slopes
from core.verdict.verdict import Verdict
from wizard.phrases.amounts import sideways_words, travel_words
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.lift import heights_words
from wizard.phrases.rises import is_unchanged, rise_words
from wizard.phrases.verdict_reasons import binding_facts

WORSE = {
    "parallel": "the links are less parallel than now",
    "track_bar": "the track bar is less flat than now",
    "drag_link": "the drag link is less flat than now",
    "length": "the links are less near in length than now",
    "steer": "the wheels steer more over the working travel than now",
    "toe": "the toe changes more over the working travel than now",
}


ROLL_STEER_STEP = 0.02
"""deg/deg; a smaller change of roll steer is not felt (common practice, no source)."""


def plan_effect_facts(
    verdict: Verdict, plan: Plan, clearance: float, unit: LengthUnit
) -> Iterator[Fact]:
    """Rules that become worse, and side effects.

    Parameters
    ----------
    verdict : Verdict
    plan : Plan
    clearance : float
        Distance between both links that the profile asks for, mm.
    unit : "in" or "mm"
    """
    after = plan.after
    for name in after.worse:
        yield Fact("gets worse", f"{WORSE[name]}.".capitalize(), LOOK)
    yield heights_fact(verdict, plan, unit)
    yield from binding_facts(after.travel_limits, unit)
    if after.linkage.has_track_bar:
        yield roll_centre_fact(after.roll_centre_rise, unit)
    yield from travel_left_facts(plan, unit)
    yield from turned_axle_facts(plan)
    yield from link_clearance_facts(plan, clearance, unit)
    if after.linkage.has_track_bar:
        yield walk_fact(verdict, plan, unit)
    now = slopes(verdict.measured.linkage)
    steeper = abs(after.slopes[1]) - abs(float(now[1]))
    if degrees(steeper) >= 0.05:
        yield Fact(
            "drag link",
            f"It lies {degrees(steeper):.1f} deg steeper than now: the steering wheel feels more "
            "of the road, and the balls have to allow the angle.",
            LOOK,
        )


def heights_fact(verdict: Verdict, plan: Plan, unit: LengthUnit) -> Fact:
    """Ride heights at which the vehicle steers true, now and with the plan."""
    now, then = curve_now(verdict), curve_with_plan(verdict, plan)
    text = f"With the plan it {heights_words(then, unit)}. Now it {heights_words(now, unit)}."
    return Fact("ride height", text)


def walk_fact(verdict: Verdict, plan: Plan, unit: LengthUnit) -> Fact:
    """Sideways walk of the axle at both ends of the travel."""
    after = plan.after
    ends = zip((-1, 0), reversed(after.walk), reversed(after.walk_before), strict=True)
    walks = [
        f"At {travel_words(float(verdict.sweep.heave[end]), unit)} "
        f"{sideways_words(walk, unit)}, now {sideways_words(before, unit)}."
        for end, walk, before in ends
    ]
    return Fact("axle walks", " ".join(walks))


def travel_left_facts(plan: Plan, unit: LengthUnit) -> Iterator[Fact]:
    """Travel that a change of the ride height leaves."""
    if any(move.raises(RIDE_HEIGHT) for move in plan.moves):
        bump, droop = (format_length(travel, unit) for travel in plan.after.travel)
        yield Fact("travel left", f"{bump} of bump and {droop} of droop.")


def turned_axle_facts(plan: Plan) -> Iterator[Fact]:
    """Castor and roll steer after a plan, where they change."""
    after = plan.after
    if abs(degrees(after.castor - after.castor_before)) >= 0.05:
        yield Fact(
            "castor",
            f"It goes from {degrees(after.castor_before):.1f} to {degrees(after.castor):.1f} deg, "
            "because the arms turn the axle.",
        )
    change = abs(after.roll_steer) - abs(after.roll_steer_before)
    if abs(change) >= ROLL_STEER_STEP:
        yield Fact(
            "roll steer",
            f"For each degree of roll it goes from {abs(after.roll_steer_before):.2f} to "
            f"{abs(after.roll_steer):.2f} deg.",
            LOOK if change > 0 else "",
        )


def link_clearance_facts(plan: Plan, wanted: float, unit: LengthUnit) -> Iterator[Fact]:
    """Clearance between the two links after a plan, where it is less than is wanted (mm)."""
    clearance = plan.after.clearance
    if clearance is not None and clearance.smallest < wanted:
        yield Fact(
            "the two links",
            f"They come within {format_length(clearance.smallest, unit)} at "
            f"{travel_words(clearance.at_heave, unit)}, centre line to centre line. Straight bars "
            "are taken.",
            LOOK,
        )


def roll_centre_fact(rise: float | None, unit: LengthUnit) -> Fact:
    """Change of the roll centre, and its effect (common practice, no source)."""
    name = "roll centre"
    if rise is None:
        return Fact(name, "Not known: it needs the offsets of both wheels.")
    if is_unchanged(rise, unit):
        return Fact(name, "It stays where it is.")
    leans = "a little less" if rise > 0 else "a little more"
    return Fact(
        name, f"{rise_words(rise, unit).capitalize()}: the vehicle leans {leans} in a bend."
    )
