"""The comparison of two sessions: changes, control points, and the outcome of a fix."""

from dataclasses import replace

import pytest

from core.fix.comparison import FixOutcome, altered_pivots, compare
from core.kinematics.pivots import RIDE_HEIGHT
from core.verdict.verdict import Overall
from tests.geometries import INCH, parallel_pair
from tests.plans import verdict_on

CURED = frozenset({"drag_link.axle"})


@pytest.fixture(scope="module")
def sessions():
    """A vehicle before and after its drag link's axle end was lowered."""
    cured = parallel_pair(slope_deg=8.0)
    faulty = cured.raised("drag_link.axle", -3 * INCH)
    return verdict_on(faulty), verdict_on(cured)


def test_a_change_is_after_less_before(sessions):
    before, after = sessions
    change = compare(before, after, CURED).change("parallel")
    assert change.change == change.after - change.before
    assert change.before == before.rules.parallel.value
    assert change.after == after.rules.parallel.value


def test_a_cured_vehicle_that_changed_is_shown(sessions):
    before, after = sessions
    assert (before.overall, after.overall) == (Overall.BUMP_STEER, Overall.STEERS_TRUE)
    assert compare(before, after, CURED).outcome == FixOutcome.SHOWN


def test_a_vehicle_that_steers_true_without_a_change_is_not_settled(sessions):
    _, after = sessions
    comparison = compare(after, after, frozenset())
    assert comparison.outcome == FixOutcome.NOT_SETTLED
    assert not any(change.changed for change in comparison.changes)


def test_bump_steer_after_the_work_is_not_shown(sessions):
    before, after = sessions
    assert compare(after, before, CURED).outcome == FixOutcome.NOT_SHOWN


def test_a_verdict_that_is_held_back_is_not_settled(sessions):
    before, after = sessions
    held_back = replace(after, overall=Overall.HELD_BACK)
    assert compare(before, held_back, CURED).outcome == FixOutcome.NOT_SETTLED


def test_control_points_are_pairs_of_pivots_that_nobody_moved(sessions):
    controls = compare(*sessions, CURED).controls
    assert [control.pivots for control in controls] == [("track_bar.frame", "drag_link.frame")]
    assert controls[0].unchanged


def test_another_ride_height_leaves_the_control_points_unchanged(sessions):
    _, after = sessions
    lifted = verdict_on(parallel_pair(slope_deg=8.0).raised(RIDE_HEIGHT, 2 * INCH))
    controls = compare(after, lifted, {RIDE_HEIGHT}).controls
    assert len(controls) == 2
    assert all(control.unchanged for control in controls)


def test_a_pivot_that_moved_unsaid_shows_in_its_control_point(sessions):
    before, after = sessions
    (control,) = [
        control
        for control in compare(before, after, frozenset()).controls
        if "drag_link.axle" in control.pivots
    ]
    assert not control.unchanged
    assert abs(control.up) == pytest.approx(3 * INCH, abs=1e-6)


def test_no_control_points_where_the_moves_are_unknown(sessions):
    assert compare(*sessions, None).controls == ()


def test_altered_pivots_come_from_the_later_record_else_from_the_plan():
    planned = {
        "plan": {
            "moves": [{"pivot": "drag_link.frame", "rise": "1 in", "correction": "pitman arm"}]
        }
    }
    assert altered_pivots(planned, {"session": {"altered": ["ride_height"]}}) == {"ride_height"}
    assert altered_pivots(planned, {}) == {"drag_link.frame"}
    assert altered_pivots({}, {}) is None
