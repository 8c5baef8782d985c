"""Planned lifts as plain numbers, mm and deg, for `evenarc lift --json`."""

from typing import Any

from core.as_json.fix import curve_as_json, plan_as_json
from core.as_json.verdict import degrees
from core.fix.answers import marks_of
from core.fix.lift_plan import LiftPlan


def lift_as_json(plan: LiftPlan) -> dict[str, Any]:
    """One vehicle before and after a lift."""
    verdict, result = plan.verdict, plan.result
    plans = () if result is None else result.plans
    return {
        "like": verdict.session.id,
        "profile": verdict.session.profile,
        "overall": verdict.overall,
        "limit_deg": degrees(verdict.session.limits.steer),
        "now": curve_as_json(plan.now),
        "with": None if plan.with_change is None else curve_as_json(plan.with_change),
        "lifted": None
        if plan.lifted is None
        else {
            "lift_mm": plan.lift,
            "overall": plan.lifted.overall,
            "effective_deg": degrees(plan.lifted.rules.effective.value),
            "peak_steer_deg": degrees(plan.lifted.steer.ruling.value),
            "castor_deg": degrees(float(plan.lifted.measured.linkage.castor)),
        },
        "searched": 0 if result is None else result.searched,
        "plans": [
            plan_as_json(each, marks) | {"heights": curve_as_json(curve)}
            for each, marks, curve in zip(plans, marks_of(plans), plan.with_plans, strict=True)
        ],
    }
