"""The prediction of a moved linkage: rules, side effects and travel limits."""

import numpy as np
import pytest

from core.fix.moves import Move
from core.fix.plan import plan_of
from core.kinematics.ball_path import effective_angle
from core.kinematics.raising import raised
from core.profiles.corrections import Correction
from core.verdict.verdict import Overall
from tests.geometries import INCH, parallel_pair
from tests.plans import COARSE, verdict_on

CROSSED = raised(parallel_pair(), "drag_link.frame", 3 * INCH)


@pytest.fixture(scope="module")
def verdict():
    return verdict_on(CROSSED)


def after(verdict, *moves):
    """The prediction after some moves, each a pivot and its rise."""
    return plan_of(
        verdict, tuple(Move(Correction("x", pivot, (rise,)), rise) for pivot, rise in moves)
    ).after


def test_parallel_links_of_one_length_do_not_steer(verdict):
    prediction = after(verdict, ("drag_link.frame", -3 * INCH))
    assert prediction.parallel == pytest.approx(0, abs=1e-9)
    assert prediction.peak_steer == pytest.approx(0, abs=1e-9)
    assert prediction.overall == Overall.STEERS_TRUE
    assert prediction.worse == ()


def test_rules_that_get_worse_are_named(verdict):
    prediction = after(verdict, ("drag_link.frame", 1 * INCH))
    assert {"parallel", "steer", "drag_link"} <= set(prediction.worse)
    assert "track_bar" not in prediction.worse
    assert "toe" not in prediction.worse
    assert prediction.overall == Overall.BUMP_STEER


def test_a_tiny_move_makes_nothing_worse(verdict):
    assert after(verdict, ("drag_link.frame", 0.05)).worse == ()


def test_a_middling_probability_is_too_close_to_call(verdict):
    prediction = after(verdict, ("drag_link.frame", -2.1 * INCH))
    assert 0.05 < prediction.p_true < 0.95
    assert prediction.overall == Overall.TOO_CLOSE


def test_lengths_to_set_are_from_centre_to_centre(verdict):
    prediction = after(verdict, ("track_bar.axle", 2 * INCH))
    bar = prediction.linkage.track_bar_frame - prediction.linkage.track_bar_axle
    assert prediction.lengths[0] == pytest.approx(np.linalg.norm(bar))
    # The bar rises to its frame end, so raising its axle end makes it flatter and shorter.
    assert prediction.length_changes[0] < 0
    assert prediction.length_changes[1] == pytest.approx(0)


def test_the_track_bar_alone_decides_the_walk_at_the_ends_of_the_travel(verdict):
    # The axle end moves on a circle about the frame end.
    prediction = after(verdict, ("track_bar.axle", 2 * INCH))
    frame, axle = prediction.linkage.track_bar_frame, prediction.linkage.track_bar_axle
    radius = np.hypot(*(frame - axle)[1:])
    for walk, heave in zip(
        prediction.walk, (-verdict.session.droop, verdict.session.bump), strict=True
    ):
        y = frame[1] - np.sqrt(radius**2 - (axle[2] + heave - frame[2]) ** 2)
        assert walk == pytest.approx(y - axle[1], abs=1e-9)


def test_without_wheels_there_is_no_rise_of_the_roll_centre():
    wheels = ("wheels.left_offset", "wheels.right_offset", "wheels.hub_height")
    without_wheels = verdict_on(CROSSED, leave_out=wheels)
    assert after(without_wheels, ("track_bar.axle", 2 * INCH)).roll_centre_rise is None


def test_a_track_bar_that_binds_has_travel_limits_and_makes_the_rules_worse(verdict):
    # A track bar that is far too steep cannot follow the droop.
    prediction = after(verdict, ("track_bar.frame", 60 * INCH))
    assert prediction.travel_limits != (None, None)
    assert {"parallel", "track_bar", "steer"} <= set(prediction.worse)


def test_the_splits_add_up_to_the_peak_steer(verdict):
    prediction = after(verdict, ("drag_link.frame", -2 * INCH))
    totals = [abs(split.not_parallel + split.slope_and_length) for split in prediction.splits]
    assert max(totals) == pytest.approx(prediction.peak_steer, rel=1e-6)


def test_undoing_a_wrong_move_gives_the_right_linkage(verdict):
    plan = plan_of(verdict, (Move(COARSE[1], -76.2),))
    assert plan.after.linkage.drag_link_frame == pytest.approx(parallel_pair().drag_link_frame)


def test_the_frame_end_that_wants_to_rise_further_is_square_after_that_rise(verdict):
    prediction = after(verdict, ("drag_link.frame", -2 * INCH))
    rise = prediction.rise_to_square
    assert rise.value == pytest.approx(-INCH)
    assert rise.u == verdict.rise_to_square.u
    square = raised(prediction.linkage, "drag_link.frame", rise.value)
    assert float(effective_angle(square)) == pytest.approx(0, abs=1e-12)
    # The path is the ball's own: the height of the drag link's frame end does not change it.
    np.testing.assert_allclose(prediction.ball_path.centre, verdict.ball_path.centre)
