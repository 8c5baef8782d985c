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
from core.text.plain_text import plain
from core.text.quantity import INCH, LengthUnit, format_length
from wizard.phrases.cautions import CAUTION_IN_SHORT
from wizard.phrases.lift import (
    DOUBT_NOTE,
    TYPICAL_NOTE,
    is_typical,
    lifted_cell,
    one_lift_facts,
    range_cell,
)
from wizard.phrases.plan_cautions import clearance_facts
from wizard.phrases.session_names import vehicle_tag
from wizard.phrases.work_steps import plan_move_words
from wizard.reports.console import fact_sheet, print_report, style_of

if TYPE_CHECKING:
    from wizard.flow.lifting import Lifted


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
    yield Text(f"{DOUBT_NOTE} {CAUTION_IN_SHORT}", style_of("quiet"))


def one_lift_parts(lifted: "Lifted", change: str) -> Iterator[RenderableType]:
    """Parts of the report on one vehicle."""
    plan, unit = lifted.plan, units_of(lifted.document)
    yield Text(f"A lift on {vehicle_tag(lifted.document)}", style_of("title"))
    yield fact_sheet("How far it works", one_lift_facts(plan, change, unit))
    yield heights_table(plan, unit)
    result = plan.result
    for number, each in enumerate(result.plans if result else (), 1):
        title = f"Plan {number}: {'; '.join(plan_move_words(each, unit))}"
        yield fact_sheet(title, clearance_facts(each))
    note = TYPICAL_NOTE if is_typical(plan) else ""
    yield Text(f"{note} {DOUBT_NOTE} {CAUTION_IN_SHORT}".strip(), style_of("quiet"))


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
