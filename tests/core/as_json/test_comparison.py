"""A comparison of two sessions as plain numbers."""

import json
from math import degrees

import pytest

from core.as_json.comparison import comparison_as_json
from core.fix.comparison import compare
from core.fix.plan_record import FiledMove, FiledPlan
from core.fix.reached import reached_moves
from core.kinematics.raising import raised
from tests.geometries import INCH, parallel_pair
from tests.plans import verdict_on

PARALLEL = parallel_pair()
CROSSED = raised(PARALLEL, "drag_link.frame", 3 * INCH)
PLANNED = FiledPlan((FiledMove("more drop", "drag_link.frame", -3 * INCH),), {})


@pytest.fixture(scope="module")
def verdicts():
    return verdict_on(CROSSED), verdict_on(PARALLEL)


@pytest.fixture(scope="module")
def written(verdicts):
    """The plain numbers, which have passed through JSON."""
    comparison = compare(*verdicts, PLANNED.moved)
    moves = reached_moves(PLANNED, *verdicts)
    return json.loads(json.dumps(comparison_as_json(*verdicts, comparison, moves), allow_nan=False))


def test_a_comparison_has_the_fields_of_the_specification(written):
    assert list(written) == ["before", "after", "outcome", "changes", "control_points", "moves"]
    assert written["before"].keys() == written["after"].keys() == {"id", "overall", "direct"}
    angle = {"before_deg", "after_deg", "change_deg", "u_deg", "changed"}
    per_mm = {f"{name}_deg_per_mm" for name in ("before", "after", "change", "u")}
    plain = {"before", "after", "change", "u", "changed"}
    changes = written["changes"]
    assert changes.pop("gradient").keys() == {*per_mm, "changed"}
    assert changes.pop("length_ratio").keys() == plain
    assert changes.keys() == {
        "parallel",
        "effective",
        "track_bar_slope",
        "drag_link_slope",
        "peak_steer",
        "peak_toe_change",
    }
    assert all(change.keys() == angle for change in changes.values())
    assert [control.keys() for control in written["control_points"]] == [
        {"pivots", "across_mm", "u_across_mm", "up_mm", "u_up_mm", "holds"}
    ]
    assert [move.keys() for move in written["moves"]] == [
        {"pivot", "planned_mm", "reached_mm", "u_mm", "fits"}
    ]


def test_angles_are_in_degrees_and_lengths_in_mm(verdicts):
    before, after = verdicts
    comparison = compare(before, after, PLANNED.moved)
    written = comparison_as_json(before, after, comparison, reached_moves(PLANNED, before, after))
    assert written["outcome"] == "shown"
    parallel = written["changes"]["parallel"]
    assert parallel["before_deg"] == pytest.approx(degrees(before.rules.parallel.value))
    assert parallel["change_deg"] == pytest.approx(
        degrees(after.rules.parallel.value - before.rules.parallel.value)
    )
    assert written["changes"]["length_ratio"]["before"] == before.rules.length.value
    (control,), (move,) = written["control_points"], written["moves"]
    assert control["pivots"] == ["track_bar.axle", "drag_link.axle"]
    assert control["holds"]
    assert move["planned_mm"] == pytest.approx(-76.2)
    assert move["reached_mm"] == pytest.approx(-76.2, abs=0.1)


def test_an_uncertainty_that_does_not_exist_is_none():
    """A link binds in every drawn geometry, so the drawn peak has no standard deviation."""
    binding = verdict_on(parallel_pair(slope_deg=0.0, run=40.0))
    written = comparison_as_json(binding, binding, compare(binding, binding, None), ())
    assert written["changes"]["peak_steer"]["u_deg"] is None
    assert written["control_points"] == written["moves"] == []
    json.dumps(written, allow_nan=False)
