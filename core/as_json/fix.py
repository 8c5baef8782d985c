"""A search of corrections as plain numbers, mm and deg, for `evenarc fix --json`."""

from typing import Any

import numpy as np

from core.as_json.verdict import degrees, numbers
from core.fix.plan import Plan
from core.fix.search import SearchResult
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
        "plans": [_plan(plan) for plan in result.plans],
    }


def _plan(plan: Plan) -> dict[str, Any]:
    """A plan with its prediction."""
    after = plan.after
    return {
        "moves": [
            {
                "correction": move.correction.name,
                "pivot": move.correction.pivot,
                "rise_mm": move.rise,
            }
            for move in plan.moves
        ],
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
    }
