"""A search of corrections as plain numbers, mm and deg, for `evenarc fix --json`."""

from typing import Any

import numpy as np

from core.as_json.verdict import degrees, numbers
from core.fix.answers import Mark, marks_of
from core.fix.lift import HeightCurve, curve_with_plan
from core.fix.moves import Move
from core.fix.plan import Plan
from core.fix.search import SearchResult
from core.profiles.conversions import Change, Conversion
from core.profiles.corrections import PivotStep
from core.profiles.part import Cost
from core.readings.survey import LINKS
from core.verdict.verdict import Verdict


def search_as_json(verdict: Verdict, result: SearchResult) -> dict[str, Any]:
    """The result of a search, with the verdict that it started from."""
    return {
        "id": verdict.session.id,
        "before": {
            "overall": verdict.overall,
            "parallel_deg": None
            if verdict.rules.parallel is None
            else degrees(verdict.rules.parallel.value),
            "effective_deg": degrees(verdict.rules.effective.value),
            "peak_steer_deg": degrees(verdict.steer.ruling.value),
        },
        "searched": result.searched,
        "plans": [
            plan_as_json(plan, marks) | {"heights": curve_as_json(curve_with_plan(verdict, plan))}
            for plan, marks in zip(result.plans, marks_of(result.plans), strict=True)
        ],
    }


def plan_as_json(plan: Plan, marks: tuple[Mark, ...]) -> dict[str, Any]:
    """A plan with its prediction."""
    after = plan.after
    return {
        "moves": [step for move in plan.moves for step in _steps(move)],
        "after": {
            "overall": after.overall,
            "parallel_deg": None if after.parallel is None else degrees(after.parallel),
            "effective_deg": degrees(after.effective),
            "peak_steer_deg": degrees(after.peak_steer),
            "peak_toe_change_deg": degrees(after.peak_toe_change),
            "track_bar_slope_deg": degrees(after.slopes[0]),
            "drag_link_slope_deg": degrees(after.slopes[1]),
            "length_ratio": numbers(after.length_ratio),
            "p_true": after.p_true,
            "roll_centre_rise_mm": after.roll_centre_rise,
            "castor_deg": degrees(after.castor),
            "roll_steer_deg_per_deg": after.roll_steer,
            "clearance_mm": None if after.clearance is None else after.clearance.smallest,
        },
        "set_length_mm": dict(zip(LINKS, numbers(np.array(after.lengths)), strict=True)),
        "length_change_mm": dict(zip(LINKS, numbers(np.array(after.length_changes)), strict=True)),
        "worse": list(after.worse),
        "answer": plan.answer,
        "marks": list(marks),
        "parts": [_part(move.correction) for move in plan.moves],
        **_cost(plan.cost),
    }


def curve_as_json(curve: HeightCurve) -> dict[str, Any]:
    """Peak steer against ride height, and where the vehicle steers true."""
    return {
        "rise_mm": numbers(curve.rise),
        "peak_steer_deg": degrees(curve.peak_steer),
        "steers_true_mm": [list(each) for each in curve.ranges],
        "surely_true_mm": None
        if curve.sure_ranges is None
        else [list(each) for each in curve.sure_ranges],
    }


def _steps(move: Move) -> list[dict[str, Any]]:
    """The pivots that a move moves; a conversion of the layout alone has one without a pivot."""
    if not move.steps:
        return [{"correction": move.correction.name, "pivot": None, "rise_mm": 0.0}]
    return [_step(move, step) for step in move.steps]


def _step(move: Move, step: PivotStep) -> dict[str, Any]:
    """One pivot that a correction or a conversion moves."""
    places = {"to_station_mm": step.to_station, "to_offset_mm": step.to_offset}
    return {
        "correction": move.correction.name,
        "pivot": step.pivot,
        "rise_mm": step.rise,
        **{key: value for key, value in places.items() if value is not None},
    }


def _part(change: Change) -> dict[str, Any]:
    """One part with what the file says of it; null where it says nothing."""
    part = change.part
    entry: dict[str, Any] = {
        "name": change.name,
        "part": part.number or None,
        "price": None if part.price is None else float(part.price.amount),
        "currency": None if part.price is None else part.price.currency,
        "hours": part.hours,
        "in_stock": part.in_stock,
        "lift_mm": None if part.lift is None else list(part.lift),
        "needs": list(change.needs),
    }
    if isinstance(change, Conversion):
        layout = {"steering": change.steering, "arm": change.arm, "pitman": change.pitman}
        entry["conversion"] = {
            "layout": {key: value for key, value in layout.items() if value is not None},
            "readings": dict(change.readings),
        }
    return entry


def _cost(cost: Cost) -> dict[str, Any]:
    """Sums of a plan; null where a part does not say it, one price for each currency."""
    return {
        "price": [
            {"amount": float(amount), "currency": currency} for amount, currency in cost.prices
        ],
        "price_known": cost.all_priced,
        "hours": cost.hours,
        "in_stock": cost.in_stock,
    }
