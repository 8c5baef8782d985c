"""Planned lifts in words: one vehicle in full, or a row for each of several."""

from collections.abc import Iterator, Sequence
from math import degrees, isfinite
from typing import TYPE_CHECKING

import numpy as np
from rich.console import RenderableType
from rich.table import Table
from rich.text import Text

from core.documents.entries import units_of
from core.fix.lift import HeightCurve
from core.fix.lift_plan import LiftPlan
from core.fix.plan import Plan
from core.text.plain_text import plain
from core.text.quantity import INCH, LengthUnit, format_length
from core.verdict.verdict import Overall
from wizard.phrases.amounts import count_words
from wizard.phrases.cautions import CAUTION_IN_SHORT
from wizard.phrases.fact import Fact
from wizard.phrases.lift import AT_NO_HEIGHT, heights_words, ranges_words
from wizard.phrases.plan_cautions import clearance_facts
from wizard.phrases.session_names import vehicle_tag
from wizard.phrases.verdict_words import mark_and_word
from wizard.phrases.work_steps import plan_move_words
from wizard.reports.console import fact_sheet, print_report, style_of

if TYPE_CHECKING:
    from wizard.reports.lift import Lifted

TYPICAL_NOTE = (
    "Typical geometry is common practice without a source: it says what to expect, not what a "
    "vehicle has. Measure the vehicle before parts are ordered."
)
EXACT_NOTE = (
    "Ranges of the ride height take the pivots as they are given; the doubt of readings is not in "
    "them. The chances of plans count it. The travel is taken to stay as it was."
)


def print_lift_words(lifts: "Sequence[Lifted]", lift: float | None, change: str) -> None:
    """Print planned lifts: one in full, several as a table."""
    if len(lifts) == 1:
        print_report(one_lift_parts(lifts[0], change))
    else:
        print_report(many_lift_parts(lifts, lift, change))


def many_lift_parts(
    lifts: "Sequence[Lifted]", lift: float | None, change: str
) -> Iterator[RenderableType]:
    """Parts of the report on several vehicles."""
    yield Text("Ride heights at which each vehicle steers true", style_of("title"))
    table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0))
    heads = ["vehicle", "as it is"]
    heads += [f"with {plain(change)}"] if change else []
    heads += (
        [] if lift is None else [f"lifted by {format_length(lift, units_of(lifts[0].document))}"]
    )
    for head in heads:
        table.add_column(Text(head, style_of("head")), overflow="fold")
    for each in lifts:
        unit, plan = units_of(each.document), each.plan
        cells = [vehicle_tag(each.document), range_cell(plan.now, unit)]
        if change:
            fits = plan.with_change is not None
            cells.append(range_cell(plan.with_change, unit) if fits else "does not fit it")
        if lift is not None:
            cells.append(lifted_cell(plan, unit))
        table.add_row(*map(Text, cells))
    yield table
    yield Text(f"{EXACT_NOTE} {CAUTION_IN_SHORT}", style_of("quiet"))


def range_cell(curve: HeightCurve | None, unit: LengthUnit) -> str:
    """Ranges of a curve in a cell."""
    if curve is None or not curve.ranges:
        return AT_NO_HEIGHT
    return ranges_words(curve.ranges, unit)


def lifted_cell(plan: LiftPlan, unit: LengthUnit) -> str:
    """Verdict after the lift, and the first plan that goes with it."""
    if plan.lifted is None or plan.result is None:
        return ""
    words = mark_and_word(plan.lifted.overall)
    if plan.result.plans:
        first = plan.result.plans[0]
        words += f"; {'; '.join(plan_move_words(first, unit))}: {first.answer}"
    return words


def one_lift_parts(lifted: "Lifted", change: str) -> Iterator[RenderableType]:
    """Parts of the report on one vehicle."""
    plan, unit = lifted.plan, units_of(lifted.document)
    yield Text(f"A lift on {vehicle_tag(lifted.document)}", style_of("title"))
    facts = [
        Fact("as it is", f"{mark_and_word(plan.verdict.overall)}; {heights_words(plan.now, unit)}.")
    ]
    if change:
        fits = plan.with_change is not None
        words = heights_words(plan.with_change, unit) if plan.with_change else "does not fit it"
        facts.append(Fact("with", f"{plain(change)}: {words}.", "" if fits else "!"))
    facts += lifted_facts(plan, unit)
    yield fact_sheet("How far it works", facts)
    yield heights_table(plan, unit)
    result = plan.result
    for number, each in enumerate(result.plans if result else (), 1):
        title = f"Plan {number}: {'; '.join(plan_move_words(each, unit))}"
        yield fact_sheet(title, clearance_facts(each))
    note = TYPICAL_NOTE if plan.verdict.session.id.startswith("typical ") else ""
    yield Text(f"{note} {EXACT_NOTE} {CAUTION_IN_SHORT}".strip(), style_of("quiet"))


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


def heights_table(plan: LiftPlan, unit: LengthUnit) -> Table:
    """Peak steer at each inch of ride height, now and with the first plan or the change."""
    limit = degrees(plan.verdict.session.limits.steer)
    curves = {"as it is": plan.now}
    if plan.with_change is not None:
        curves["with the change"] = plan.with_change
    curves |= {f"plan {number}": curve for number, curve in enumerate(plan.with_plans[:3], 1)}
    table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0))
    table.add_column(Text("ride height", style_of("head")))
    for name in curves:
        table.add_column(Text(f"{name}, deg", style_of("head")), justify="right")
    for rise in np.arange(-2.0, 8.1, 1.0) * INCH:
        cells = [steer_cell(curve, float(rise)) for curve in curves.values()]
        sign = "+" if rise > 0.1 else ""
        words = "as it stands" if abs(rise) < 0.1 else f"{sign}{format_length(float(rise), unit)}"
        table.add_row(Text(words), *map(Text, cells))
    table.caption = Text(f"Peak steer over the working travel; the limit is {limit:g} deg.")
    return table


def steer_cell(curve: HeightCurve, rise: float) -> str:
    """Peak steer at a ride height, marked where it is within its limit."""
    peak = float(np.interp(rise, curve.rise, np.degrees(curve.peak_steer)))
    if not isfinite(peak):
        return "✗ cannot reach"
    return f"{'✓' if curve.steers_true_at(rise) else '✗'} {peak:.2f}"
