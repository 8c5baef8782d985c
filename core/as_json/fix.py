"""A search of corrections as plain numbers, mm and deg, for `evenarc fix --json`."""

from typing import Any

from core.as_json.verdict import degrees
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
            "parallel_deg": degrees(verdict.rules.parallel.value),
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
            "parallel_deg": degrees(after.parallel),
            "peak_steer_deg": degrees(after.peak_steer),
            "peak_toe_change_deg": degrees(after.peak_toe_change),
            "track_bar_slope_deg": degrees(after.slopes[0]),
            "drag_link_slope_deg": degrees(after.slopes[1]),
            "length_ratio": after.length_ratio,
            "p_true": after.p_true,
            "roll_centre_rise_mm": after.roll_centre_rise,
        },
        "set_length_mm": dict(zip(LINKS, after.lengths, strict=True)),
        "length_change_mm": dict(zip(LINKS, after.length_changes, strict=True)),
        "worse": list(after.worse),
    }
