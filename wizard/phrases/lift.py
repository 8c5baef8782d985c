"""Ride heights at which a vehicle steers true, in words."""

from collections.abc import Iterator, Mapping, Sequence
from math import ceil, degrees, floor

from core.fix.lift import HeightCurve
from core.fix.lift_plan import LiftPlan
from core.fix.plan import Plan
from core.text.plain_text import plain
from core.text.quantity import INCH, LengthUnit, format_length
from core.verdict.verdict import Overall
from wizard.phrases.amounts import count_words, listed
from wizard.phrases.fact import Fact
from wizard.phrases.verdict_words import mark_and_word
from wizard.phrases.work_steps import plan_move_words

STEP: dict[LengthUnit, float] = {"in": INCH / 8, "mm": 1.0}
"""Step to which the ends of a range are rounded, inward, mm."""

TYPICAL_NOTE = (
    "Typical geometry is common practice without a source: it says what to expect, not what a "
    "vehicle has. Measure the vehicle before parts are ordered."
)
DOUBT_NOTE = (
    "Surely means at least 95 in 100: the doubt of the readings, of what is assumed and of the "
    "model is counted. The travel is taken to stay as it was."
)

AS_IT_STANDS = "as it stands"

AT_NO_HEIGHT = "at no ride height from 2 in lower to 8 in of lift"


def heights_words(curve: HeightCurve, unit: LengthUnit) -> str:
    """Ride heights at which a vehicle steers true: "from 2 1/2 to 4 3/4 in of lift"."""
    if not curve.ranges:
        return f"steers true {AT_NO_HEIGHT}"
    return f"steers true {ranges_words(curve.ranges, unit)}{sure_words(curve, unit)}"


def sure_words(curve: HeightCurve, unit: LengthUnit) -> str:
    """The sure part of the ranges: ", surely from 1 in lower to 3 1/2 in of lift"."""
    if curve.sure_ranges is None:
        return ""
    if not curve.sure_ranges:
        return ", surely at none of them"
    return f", surely {ranges_words(curve.sure_ranges, unit)}"


def ranges_words(ranges: Sequence[tuple[float, float]], unit: LengthUnit) -> str:
    """Ranges of the ride height in one line."""
    return listed([height_range_words(each, unit) for each in ranges])


def height_range_words(ends: tuple[float, float], unit: LengthUnit) -> str:
    """A range of the ride height, rounded inward."""
    step = STEP[unit]
    low, high = ceil(ends[0] / step - 1e-6) * step, floor(ends[1] / step + 1e-6) * step
    if low >= high:
        words = height_words((ends[0] + ends[1]) / 2, unit)
        return f"only {words}" if words == AS_IT_STANDS else f"only at about {words}"
    if low >= 0:
        smallest = format_length(low, unit).removesuffix(f" {unit}")
        return f"from {smallest} to {format_length(high, unit)} of lift"
    if high < 0:
        largest = format_length(-low, unit).removesuffix(f" {unit}")
        return f"from {largest} to {format_length(-high, unit)} lower"
    return f"from {height_words(low, unit)} to {height_words(high, unit)}"


def height_words(rise: float, unit: LengthUnit) -> str:
    """A change of the ride height: "1 in lower", "as it stands", "2 in of lift"."""
    amount = format_length(abs(rise), unit)
    if amount == format_length(0.0, unit):
        return AS_IT_STANDS
    return f"{amount} {'of lift' if rise > 0 else 'lower'}"


def range_cell(curve: HeightCurve | None, unit: LengthUnit) -> str:
    """Ranges of a curve in a cell."""
    if curve is None or not curve.ranges:
        return AT_NO_HEIGHT
    return f"{ranges_words(curve.ranges, unit)}{sure_words(curve, unit)}"


def lifted_cell(plan: LiftPlan, unit: LengthUnit) -> str:
    """Verdict after the lift, and the first plan that goes with it."""
    if plan.lifted is None or plan.result is None:
        return ""
    words = mark_and_word(plan.lifted.overall)
    if plan.result.plans:
        first = plan.result.plans[0]
        words += f"; {'; '.join(plan_move_words(first, unit))}: {first.answer}"
    return words


def is_typical(plan: LiftPlan) -> bool:
    """True if a plan is made on the typical geometry of a profile."""
    return plan.verdict.session.id.startswith("typical ")


def several_lift_facts(
    plans: Mapping[str, LiftPlan], change: str, unit: LengthUnit
) -> Iterator[Fact]:
    """Facts on how far a lift works on each of several vehicles, by their names."""
    for name, plan in plans.items():
        parts = [f"as it is, {range_cell(plan.now, unit)}"]
        if change:
            fits = plan.with_change is not None
            words = range_cell(plan.with_change, unit) if fits else "does not fit it"
            parts.append(f"with {plain(change)}, {words}")
        if plan.lift is not None:
            lift = format_length(plan.lift, unit)
            parts.append(f"lifted by {lift}: {lifted_cell(plan, unit)}")
        yield Fact(name, "; ".join(parts) + ".")


def one_lift_facts(plan: LiftPlan, change: str, unit: LengthUnit) -> Iterator[Fact]:
    """Facts on how far a lift works on one vehicle, and what has to go with it."""
    words = f"{mark_and_word(plan.verdict.overall)}; {heights_words(plan.now, unit)}."
    yield Fact("as it is", words)
    if change:
        fits = plan.with_change is not None
        words = heights_words(plan.with_change, unit) if plan.with_change else "does not fit it"
        yield Fact("with", f"{plain(change)}: {words}.", "" if fits else "!")
    yield from lifted_facts(plan, unit)


def lifted_facts(plan: LiftPlan, unit: LengthUnit) -> Iterator[Fact]:
    """The verdict after the lift, and what has to go with it."""
    if plan.lifted is None or plan.result is None or plan.lift is None:
        return
    after = plan.lifted
    peak = degrees(after.steer.ruling.value)
    yield Fact(
        f"lifted {format_length(plan.lift, unit)}",
        f"{mark_and_word(after.overall)} without more: peak steer {peak:.2f} deg, castor "
        f"{degrees(float(after.measured.linkage.castor)):.1f} deg.",
    )
    if after.overall == Overall.STEERS_TRUE:
        yield Fact("with it", "nothing has to go with the lift.")
        return
    if plan.result.plans:
        yield Fact("with it", going_with_words(plan.result.plans))
    else:
        yield Fact("with it", "nothing that is on offer fits this vehicle and this lift.", "!")
    for number, (each, curve) in enumerate(zip(plan.result.plans, plan.with_plans, strict=True), 1):
        moves = "; ".join(plan_move_words(each, unit))
        yield Fact(f"plan {number}", f"{moves}: {each.answer}, {heights_words(curve, unit)}.")


def going_with_words(plans: Sequence[Plan]) -> str:
    """Number of the plans that have to go with a lift, in one sentence."""
    cures = sum(each.steers_true for each in plans)
    if cures:
        return f"{count_words(cures)} of these, each enough for the vehicle to steer true."
    return "nothing on offer is enough; the best of it stands below."
