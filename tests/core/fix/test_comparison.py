"""Comparison of two sessions of a vehicle."""

from dataclasses import replace

import numpy as np
import pytest

from core.documents.entries import EntryError
from core.fix.comparison import Change, Control, FixOutcome, altered_pivots, compare
from core.kinematics.pivots import PIVOTS
from core.kinematics.raising import raised
from core.verdict.verdict import Overall, evaluate
from tests.direct_rows import board_check, steer_of_left
from tests.geometries import INCH, document_of, parallel_pair, session_of, true_readings
from tests.plans import verdict_on

PARALLEL = parallel_pair()
CROSSED = raised(PARALLEL, "drag_link.frame", 3 * INCH)
"""A vehicle that steers true, and the same with its pitman ball 3 in too high."""


@pytest.fixture(scope="module")
def crossed():
    return verdict_on(CROSSED)


@pytest.fixture(scope="module")
def parallel():
    return verdict_on(PARALLEL)


def measured_verdict(linkage):
    """The verdict on a vehicle with true rows of a direct check."""
    session = session_of(document_of(linkage, true_readings(linkage)))
    return evaluate(replace(session, direct=board_check(steer_of_left(linkage))), 0)


def controls_by_pair(comparison):
    return {frozenset(control.pivots): control for control in comparison.controls}


class TestOutcome:
    def test_a_fix_is_shown_by_a_change_to_a_vehicle_that_steers_true(self, crossed, parallel):
        assert compare(crossed, parallel, None).outcome == FixOutcome.SHOWN

    def test_bump_steer_afterwards_shows_no_fix(self, crossed, parallel):
        assert compare(crossed, crossed, None).outcome == FixOutcome.NOT_SHOWN
        assert compare(parallel, crossed, None).outcome == FixOutcome.NOT_SHOWN

    def test_without_a_change_nothing_is_settled(self, parallel):
        assert compare(parallel, parallel, None).outcome == FixOutcome.NOT_SETTLED

    @pytest.mark.parametrize("overall", [Overall.TOO_CLOSE, Overall.HELD_BACK])
    def test_without_a_clear_verdict_afterwards_nothing_is_settled(
        self, crossed, parallel, overall
    ):
        after = replace(parallel, overall=overall)
        assert compare(crossed, after, None).outcome == FixOutcome.NOT_SETTLED


class TestMeasuredOnTheJack:
    """The steer was read at the wheels before and after the work."""

    @pytest.fixture(scope="class")
    def before(self):
        return measured_verdict(CROSSED)

    @pytest.fixture(scope="class")
    def after(self):
        return replace(measured_verdict(PARALLEL), overall=Overall.TOO_CLOSE)

    def test_a_measured_peak_within_shows_the_fix_at_once(self, before, after):
        assert compare(before, after, None).outcome == FixOutcome.SHOWN

    def test_both_sessions_have_to_be_measured(self, before, after):
        assert compare(replace(before, direct=None), after, None).outcome == FixOutcome.NOT_SETTLED
        assert compare(before, replace(after, direct=None), None).outcome == FixOutcome.NOT_SETTLED

    def test_an_unchanged_peak_shows_nothing(self, after):
        assert compare(after, after, None).outcome == FixOutcome.NOT_SETTLED

    @pytest.mark.parametrize(
        ("overall", "outcome"),
        [
            (Overall.BUMP_STEER, FixOutcome.NOT_SHOWN),
            (Overall.HELD_BACK, FixOutcome.NOT_SETTLED),
        ],
    )
    def test_another_verdict_comes_first(self, before, after, overall, outcome):
        assert compare(before, replace(after, overall=overall), None).outcome == outcome


class TestChanges:
    def test_each_value_changes_from_before_to_after(self, crossed, parallel):
        comparison = compare(crossed, parallel, None)
        assert [change.name for change in comparison.changes] == [
            "parallel",
            "effective",
            "peak_steer",
            "peak_toe_change",
            "track_bar_slope",
            "drag_link_slope",
            "length_ratio",
            "gradient",
        ]
        angle = comparison.change("parallel")
        before, after = crossed.rules.parallel, parallel.rules.parallel
        assert (angle.before, angle.after) == (before.value, after.value)
        assert angle.change == after.value - before.value
        assert angle.u == pytest.approx(np.hypot(before.u, after.u))
        assert comparison.change("gradient").before == crossed.derivatives.gradient

    def test_only_the_moved_link_changes(self, crossed, parallel):
        comparison = compare(crossed, parallel, None)
        assert comparison.change("parallel").changed
        assert comparison.change("drag_link_slope").changed
        assert not comparison.change("track_bar_slope").changed
        assert not comparison.change("peak_toe_change").changed

    def test_a_change_is_more_than_two_standard_uncertainties(self):
        assert Change("parallel", 1.0, 3.1, 1.0).changed
        assert not Change("parallel", 3.0, 1.0, 1.0).changed


class TestControls:
    def test_frame_ends_and_axle_ends_are_paired_among_themselves(self, crossed):
        pairs = controls_by_pair(compare(crossed, crossed, ())).keys()
        assert pairs == {
            frozenset({"track_bar.frame", "drag_link.frame"}),
            frozenset({"track_bar.axle", "drag_link.axle"}),
        }

    def test_a_moved_pivot_is_no_control_point(self, crossed, parallel):
        (control,) = compare(crossed, parallel, {"drag_link.frame"}).controls
        assert control.pivots == ("track_bar.axle", "drag_link.axle")
        assert control.unchanged

    def test_without_known_moves_there_are_no_controls(self, crossed):
        assert compare(crossed, crossed, None).controls == ()

    def test_a_pivot_that_moved_unnoticed_is_seen(self, crossed):
        after = verdict_on(raised(CROSSED, "drag_link.axle", INCH))
        controls = controls_by_pair(compare(crossed, after, ()))
        axle_ends = controls[frozenset({"track_bar.axle", "drag_link.axle"})]
        assert axle_ends.up == pytest.approx(INCH, abs=0.1)
        assert axle_ends.across == pytest.approx(0.0, abs=0.1)
        assert not axle_ends.unchanged
        assert controls[frozenset({"track_bar.frame", "drag_link.frame"})].unchanged

    def test_another_ride_height_changes_no_control(self, crossed):
        after = verdict_on(raised(CROSSED, "ride_height", 2 * INCH))
        assert all(control.unchanged for control in compare(crossed, after, ()).controls)

    def test_the_uncertainty_includes_the_covariance_of_both_pivots(self, crossed):
        control = compare(crossed, crossed, ()).controls[0]
        covariance = crossed.adjustment.covariance
        first, second = (3 * PIVOTS.index(pivot) + 2 for pivot in control.pivots)
        variance = (
            covariance[first, first] + covariance[second, second] - 2 * covariance[first, second]
        )
        assert control.u_up == pytest.approx(np.sqrt(2 * variance))

    def test_a_control_is_unchanged_up_to_three_standard_uncertainties(self):
        pair = ("track_bar.axle", "drag_link.axle")
        assert Control(pair, 3.0, -3.0, 1.0, 1.0).unchanged
        assert not Control(pair, 3.1, 0.0, 1.0, 1.0).unchanged
        assert not Control(pair, 0.0, -3.1, 1.0, 1.0).unchanged


class TestAlteredPivots:
    PLANNED = {"plan": {"moves": [{"pivot": "drag_link.frame", "rise": "-3 in"}]}}

    def test_the_later_record_names_them(self):
        after = {"session": {"altered": ["track_bar.axle"]}}
        assert altered_pivots(self.PLANNED, after) == {"track_bar.axle"}

    def test_otherwise_they_are_those_of_the_earlier_plan(self):
        assert altered_pivots(self.PLANNED, {}) == {"drag_link.frame"}

    def test_without_either_they_are_not_known(self):
        assert altered_pivots({}, {}) is None

    def test_an_invalid_plan_is_refused(self):
        with pytest.raises(EntryError):
            altered_pivots({"plan": {"moves": "up"}}, {})
