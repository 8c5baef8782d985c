"""A comparison as plain numbers: deg, mm, and the ratio without a unit."""

import json

import numpy as np

from core.as_json.comparison import comparison_as_json
from core.fix.comparison import compare
from core.fix.plan_record import ReachedMove
from tests.geometries import INCH, parallel_pair
from tests.plans import verdict_on

BEFORE = verdict_on(parallel_pair().raised("drag_link.axle", 3 * INCH), draws=0)
AFTER = verdict_on(parallel_pair(), draws=0)


def test_changes_are_in_degrees_and_the_ratio_is_plain():
    comparison = compare(BEFORE, AFTER, {"drag_link.axle"})
    fields = comparison_as_json(BEFORE, AFTER, comparison, ())
    assert fields["outcome"] == "shown"
    parallel = comparison.change("parallel")
    assert fields["changes"]["parallel"]["change_deg"] == np.degrees(parallel.change)
    assert fields["changes"]["parallel"]["changed"] is True
    assert fields["changes"]["length_ratio"].keys() == {"before", "after", "change", "u", "changed"}
    assert "before_deg_per_mm" in fields["changes"]["gradient"]
    assert json.loads(json.dumps(fields, allow_nan=False)) == fields


def test_control_points_and_moves_are_in_mm():
    comparison = compare(BEFORE, AFTER, {"drag_link.axle"})
    move = ReachedMove("drag_link.axle", -3 * INCH, -2 * INCH, 1.0)
    fields = comparison_as_json(BEFORE, AFTER, comparison, (move,))
    (control,) = fields["control_points"]
    assert control["pivots"] == ["track_bar.frame", "drag_link.frame"]
    assert control["holds"] is True
    assert fields["moves"] == [
        {
            "pivot": "drag_link.axle",
            "planned_mm": -3 * INCH,
            "reached_mm": -2 * INCH,
            "u_mm": 1.0,
            "fits": False,
        }
    ]
