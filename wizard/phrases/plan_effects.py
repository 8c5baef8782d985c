"""Other effects of a plan: rules that get worse, roll centre, side walk of the axle."""

from collections.abc import Iterator
from math import degrees

from core.fix.plan import Plan
from core.text.quantity import LengthUnit
from core.verdict.rules import slopes
from core.verdict.verdict import Verdict
from wizard.phrases.amounts import sideways_words, travel_words
from wizard.phrases.fact import LOOK, Fact
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


def plan_effect_facts(verdict: Verdict, plan: Plan, unit: LengthUnit) -> Iterator[Fact]:
    """Rules that become worse, and side effects."""
    after = plan.after
    for name in after.worse:
        yield Fact("gets worse", f"{WORSE[name]}.".capitalize(), LOOK)
    yield from binding_facts(after.travel_limits, unit)
    yield roll_centre_fact(after.roll_centre_rise, unit)
    ends = zip((-1, 0), reversed(after.walk), reversed(after.walk_before), strict=True)
    walks = [
        f"At {travel_words(float(verdict.sweep.heave[end]), unit)} "
        f"{sideways_words(walk, unit)}, now {sideways_words(before, unit)}."
        for end, walk, before in ends
    ]
    yield Fact("axle walks", " ".join(walks))
    now = slopes(verdict.measured.linkage)
    steeper = abs(after.slopes[1]) - abs(float(now[1]))
    if degrees(steeper) >= 0.05:
        yield Fact(
            "drag link",
            f"It lies {degrees(steeper):.1f} deg steeper than now: the steering wheel feels more "
            "of the road, and the balls have to allow the angle.",
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
