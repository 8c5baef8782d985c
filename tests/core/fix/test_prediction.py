"""What moved pivots bring besides: side effects, what gets worse, travel limits."""

import numpy as np
import pytest

from core.fix.moves import Move
from core.fix.plan import plan_of
from core.profiles.corrections import Correction
from core.verdict.verdict import Overall
from tests.geometries import INCH, parallel_pair
from tests.plans import COARSE, verdict_on

CROSSED = parallel_pair().raised("drag_link.frame", 3 * INCH)


def after(verdict, *moves):
    """What some moves bring."""
    return plan_of(
        verdict, tuple(Move(Correction("x", pivot, (rise,)), rise) for pivot, rise in moves)
    ).after


def test_a_flat_pair_in_line_leaves_no_steer():
    verdict = verdict_on(CROSSED)
    outcome = after(verdict, ("drag_link.frame", -3 * INCH))
    assert outcome.parallel == pytest.approx(0, abs=1e-9)
    assert outcome.peak_steer == pytest.approx(0, abs=1e-9)
    assert outcome.overall == Overall.STEERS_TRUE
    assert outcome.worse == ()


def test_it_says_what_gets_worse():
    verdict = verdict_on(CROSSED)
    outcome = after(verdict, ("drag_link.frame", 1 * INCH))
    assert {"parallel", "steer", "drag_link"} <= set(outcome.worse)
    assert "track_bar" not in outcome.worse
    assert "toe" not in outcome.worse
    assert outcome.overall == Overall.BUMP_STEER


def test_a_hair_is_no_change():
    verdict = verdict_on(CROSSED)
    assert after(verdict, ("drag_link.frame", 0.05)).worse == ()


def test_in_between_it_is_too_close_to_call():
    verdict = verdict_on(CROSSED)
    outcome = after(verdict, ("drag_link.frame", -2.1 * INCH))
    assert 0.05 < outcome.p_true < 0.95
    assert outcome.overall == Overall.TOO_CLOSE


def test_lengths_are_those_from_centre_to_centre():
    verdict = verdict_on(CROSSED)
    outcome = after(verdict, ("track_bar.axle", 2 * INCH))
    bar = outcome.linkage.track_bar_frame - outcome.linkage.track_bar_axle
    assert outcome.lengths[0] == pytest.approx(np.linalg.norm(bar))
    # the bar rises to its frame end, so raising its axle end makes it flatter and shorter
    assert outcome.length_changes[0] < 0
    assert outcome.length_changes[1] == pytest.approx(0)


def test_the_walk_at_the_ends_of_the_travel_is_that_of_the_track_bar_alone():
    # a circle about the frame end: y of the axle end at each height
    verdict = verdict_on(CROSSED)
    outcome = after(verdict, ("track_bar.axle", 2 * INCH))
    frame, axle = outcome.linkage.track_bar_frame, outcome.linkage.track_bar_axle
    radius = np.hypot(*(frame - axle)[1:])
    for walk, heave in zip(
        outcome.walk, (-verdict.session.droop, verdict.session.bump), strict=True
    ):
        y = frame[1] - np.sqrt(radius**2 - (axle[2] + heave - frame[2]) ** 2)
        assert walk == pytest.approx(y - axle[1], abs=1e-9)


def test_without_wheels_the_roll_centre_is_not_known():
    wheels = ("wheels.left_offset", "wheels.right_offset", "wheels.hub_height")
    verdict = verdict_on(CROSSED, leave_out=wheels)
    assert after(verdict, ("track_bar.axle", 2 * INCH)).roll_centre_rise is None


def test_a_bar_that_binds_is_told_and_makes_everything_worse():
    # a track bar far too steep cannot follow the droop
    verdict = verdict_on(CROSSED)
    outcome = after(verdict, ("track_bar.frame", 60 * INCH))
    assert outcome.travel_limits != (None, None)
    assert {"parallel", "track_bar"} <= set(outcome.worse)


def test_the_split_of_the_steer_adds_up():
    verdict = verdict_on(CROSSED)
    outcome = after(verdict, ("drag_link.frame", -2 * INCH))
    whole = [abs(split.not_parallel + split.slope_and_length) for split in outcome.splits]
    assert max(whole) == pytest.approx(outcome.peak_steer, rel=1e-6)


def test_moves_of_a_plan_are_those_of_the_correction():
    verdict = verdict_on(CROSSED)
    plan = plan_of(verdict, (Move(COARSE[1], -76.2),))
    assert plan.after.linkage.drag_link_frame == pytest.approx(parallel_pair().drag_link_frame)
