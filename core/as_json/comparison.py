"""A comparison of two sessions as plain numbers, mm and deg, for `evenarc compare --json`."""

from collections.abc import Sequence
from typing import Any

from core.as_json.verdict import degrees, direct_as_json
from core.fix.comparison import Change, Comparison, Control
from core.fix.reached import ReachedMove
from core.verdict.verdict import Verdict


def comparison_as_json(
    before: Verdict, after: Verdict, comparison: Comparison, moves: Sequence[ReachedMove]
) -> dict[str, Any]:
    """A comparison and the reached moves of its plan; angles in deg, lengths in mm."""
    return {
        "before": _session(before),
        "after": _session(after),
        "outcome": comparison.outcome,
        "changes": {change.name: _change(change) for change in comparison.changes},
        "control_points": [_control(control) for control in comparison.controls],
        "moves": [
            {
                "pivot": move.pivot,
                "planned_mm": move.planned,
                "reached_mm": move.reached,
                "u_mm": move.u,
                "fits": move.fits,
            }
            for move in moves
        ],
    }


def _session(verdict: Verdict) -> dict[str, Any]:
    """A session of the comparison, with its direct check where there is one."""
    return {
        "id": verdict.session.id,
        "overall": verdict.overall,
        "direct": direct_as_json(verdict.direct),
    }


def _change(change: Change) -> dict[str, Any]:
    """A change; the unit is part of each field name, except for the length ratio."""
    values = {
        "before": change.before,
        "after": change.after,
        "change": change.change,
        "u": change.u,
    }
    if change.name != "length_ratio":
        per_mm = "_per_mm" if change.name == "gradient" else ""
        values = {f"{name}_deg{per_mm}": degrees(value) for name, value in values.items()}
    return {**values, "changed": change.changed}


def _control(control: Control) -> dict[str, Any]:
    """A pair of control points."""
    return {
        "pivots": list(control.pivots),
        "across_mm": control.across,
        "u_across_mm": control.u_across,
        "up_mm": control.up,
        "u_up_mm": control.u_up,
        "holds": control.unchanged,
    }
