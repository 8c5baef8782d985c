"""Peak steer against the ride height, as data of a picture."""

from __future__ import annotations

from math import degrees

import numpy as np

from core.fix.lift import HIGHEST, LOWEST, HeightCurve, curve_now, curve_with_plan
from core.fix.lift_plan import LiftPlan
from core.fix.plan import Plan
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.views.picture_data import CurvePicture, Trace

NOW = "now"

ENDS = ("◂ lower", "lift ▸")
"""Words at the ends of the axis of ride height."""


def heights_of_plan(verdict: Verdict, plan: Plan, unit: LengthUnit, word: str) -> CurvePicture:
    """Peak steer against the ride height now and with a plan, with the limit.

    Parameters
    ----------
    verdict : Verdict
    plan : Plan
    unit : "in" or "mm"
    word : str
        Name of the plan's curve in the legend.
    """
    return _picture(verdict, curve_now(verdict), curve_with_plan(verdict, plan), unit, word)


def heights_of_lift(lift: LiftPlan, unit: LengthUnit, number: int) -> CurvePicture:
    """Peak steer against the ride height now, and with one part of a planned lift.

    Parameters
    ----------
    lift : LiftPlan
    unit : "in" or "mm"
    number : int
        Counts the curves that a lift has beside the present one, from 0.
    """
    curves = curves_of_lift(lift)
    word, curve = curves[number] if number < len(curves) else ("", None)
    return _picture(lift.verdict, lift.now, curve, unit, word)


def curves_of_lift(lift: LiftPlan) -> tuple[tuple[str, HeightCurve], ...]:
    """Curves of a lift beside the present one, each with its name."""
    change = [("with the change", lift.with_change)] if lift.with_change else []
    plans = [(f"plan {number}", curve) for number, curve in enumerate(lift.with_plans, 1)]
    return (*change, *plans)


def _picture(
    verdict: Verdict, now: HeightCurve, planned: HeightCurve | None, unit: LengthUnit, word: str
) -> CurvePicture:
    """Present curve, and over it the planned one where there is one."""
    return CurvePicture(
        trace=_trace(word, planned) if planned else _trace(NOW, now),
        compared=_trace(NOW, now) if planned else None,
        limit=degrees(verdict.session.limits.steer),
        working=(-LOWEST, HIGHEST),
        unit=unit,
        upward="peak steer against ride height",
        downward="",
        ends=ENDS,
        one_sided=True,
    )


def _trace(name: str, curve: HeightCurve) -> Trace:
    return Trace(name, curve.rise.tolist(), np.degrees(curve.peak_steer).tolist())
