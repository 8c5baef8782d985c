"""Peak steer against the ride height, as data of a picture."""

from __future__ import annotations

from math import degrees

import numpy as np

from core.fix.lift import HIGHEST, LOWEST, HeightCurve, curve_now, curve_with_plan
from core.fix.plan import Plan
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.views.picture_data import CurvePicture, Trace

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
    return CurvePicture(
        trace=_trace(word, curve_with_plan(verdict, plan)),
        compared=_trace("now", curve_now(verdict)),
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
