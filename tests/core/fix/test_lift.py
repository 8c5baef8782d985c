"""Ride heights at which a vehicle steers true, against scipy's root finder, and planned lifts.

The steer of each ride height comes from the distance equations, solved by scipy. The frame of these
vehicles rises straight, because their guide does not pitch.
"""

from dataclasses import replace
from decimal import Decimal

import numpy as np
import pytest
from scipy.optimize import brentq

from core.fix.lift import HIGHEST, LOWEST, curve_now, curve_with_plan, height_curve, lifted
from core.fix.lift_plan import lift_plan
from core.fix.moves import Move
from core.fix.plan import plan_of
from core.kinematics.pivots import Layout
from core.kinematics.raising import raised
from core.profiles.conversions import Conversion
from core.profiles.corrections import Correction, PivotStep
from core.profiles.part import Part, Price
from core.uncertainty.propagation import parameters, with_parameters
from core.verdict.verdict import Overall
from tests.geometries import INCH, parallel_pair
from tests.plans import COARSE, vehicle, verdict_on
from tests.test_against_brute_force import out_of_square, peaks

SHORT = replace(
    parallel_pair(),
    drag_link_frame=parallel_pair().drag_link_frame + np.array([0.0, 150.0, 12.0]),
)
"""Links of different lengths: the vehicle steers true at some ride heights alone."""


def excess(linkage, limits, rise):
    """Largest rule as a share of its limit, with the frame ends raised by hand."""
    up = [0.0, 0.0, rise]
    moved = linkage.with_pivots(
        {name: linkage.pivot(name) + up for name in ("track_bar.frame", "drag_link.frame")}
    )
    steer, toe = peaks(moved, limits)
    return max(
        abs(out_of_square(moved)) / limits.parallel,
        steer / limits.steer,
        toe / limits.toe_change,
    )


@pytest.mark.parametrize(
    "linkage", [SHORT, vehicle(2, Layout.TIE_ROD), vehicle(3, Layout.INVERTED_Y)]
)
def test_the_ends_of_a_range_are_those_of_the_root_finder(linkage):
    verdict = verdict_on(linkage)
    limits, measured = verdict.session.limits, verdict.measured.linkage
    ends = [end for each in curve_now(verdict).ranges for end in each]
    expected = []
    heights = np.linspace(LOWEST, HIGHEST, 21)
    over = [excess(measured, limits, rise) - 1 for rise in heights]
    for low, high, first, second in zip(heights, heights[1:], over, over[1:], strict=False):
        if first * second < 0:
            root = brentq(lambda rise: excess(measured, limits, rise) - 1, low, high, xtol=1e-6)
            expected.append(root)
    inner = [end for end in ends if LOWEST < end < HIGHEST]
    assert inner == pytest.approx(expected, abs=0.01)


def test_one_vehicle_of_these_has_an_end_inside_the_curve():
    ranges = curve_now(verdict_on(SHORT)).ranges
    assert any(LOWEST < end < HIGHEST for each in ranges for end in each)


def test_the_curve_has_the_peak_of_each_height():
    verdict = verdict_on(SHORT)
    curve = curve_now(verdict)
    for place in (0, 16, 40, 80):
        moved = raised(verdict.measured.linkage, "ride_height", curve.rise[place])
        steer, _ = peaks(moved, verdict.session.limits)
        assert curve.peak_steer[place] == pytest.approx(steer, abs=np.radians(1e-5))


def test_a_plan_with_another_ride_height_counts_from_the_present_one():
    verdict = verdict_on(SHORT)
    plan = plan_of(verdict, (Move(COARSE[5], INCH),))
    now, then = curve_now(verdict), curve_with_plan(verdict, plan)
    np.testing.assert_allclose(now.peak_steer, then.peak_steer, atol=1e-9)


@pytest.mark.parametrize("layout", [Layout.KNUCKLE, Layout.INVERTED_Y])
def test_a_lift_is_the_verdict_on_the_raised_vehicle(layout):
    linkage = vehicle(0, layout)
    by_lift = lifted(verdict_on(linkage), 3 * INCH)
    measured = verdict_on(raised(linkage, "ride_height", 3 * INCH))
    assert by_lift.overall == measured.overall
    assert by_lift.steer.ruling.value == pytest.approx(measured.steer.ruling.value, abs=1e-5)
    assert by_lift.steer.ruling.u == pytest.approx(measured.steer.ruling.u, rel=0.1)
    assert by_lift.rules.effective.u == pytest.approx(measured.rules.effective.u, rel=0.1)
    assert by_lift.roll_centre_height == pytest.approx(measured.roll_centre_height, abs=0.1)


def test_a_lift_of_nothing_changes_nothing():
    verdict = verdict_on(vehicle(1, Layout.KNUCKLE))
    same = lifted(verdict, 0.0)
    assert same.overall == verdict.overall
    np.testing.assert_allclose(same.measured.influence, verdict.measured.influence, atol=1e-6)
    assert same.steer.ruling.u == pytest.approx(verdict.steer.ruling.u, rel=1e-3)


def test_what_goes_with_a_lift_is_planned_and_its_range_holds_the_lift():
    verdict = verdict_on(parallel_pair())
    wrong = verdict_on(raised(parallel_pair(), "drag_link.frame", 2 * INCH))
    plan = lift_plan(wrong, COARSE, 2 * INCH)
    assert plan.lifted.overall == Overall.BUMP_STEER
    assert plan.result.plans
    for each, curve in zip(plan.result.plans, plan.with_plans, strict=True):
        assert all(move.raises("ride_height") == 0 for move in each.moves)
        assert each.steers_true
        assert curve.steers_true_at(2 * INCH)
    assert lift_plan(verdict, COARSE, None).result is None


def test_parts_made_for_other_lifts_are_left_out():
    wrong = verdict_on(raised(parallel_pair(), "drag_link.frame", 3 * INCH))
    small = Part(price=Price(Decimal(1), "USD"), lift=(0.0, 2 * INCH))
    drop = Correction("more drop", "drag_link.frame", (-3 * INCH,), part=small)
    assert lift_plan(wrong, [drop], 2 * INCH).result.plans
    assert not lift_plan(wrong, [drop], 4 * INCH).result.plans


def test_the_range_with_a_conversion_is_asked_for():
    verdict = verdict_on(vehicle(3, Layout.INVERTED_Y))
    conversion = Conversion(
        "tie rod off", (PivotStep("track_bar.axle", INCH),), steering=Layout.KNUCKLE
    )
    plan = lift_plan(verdict, [], None, Move(conversion))
    moved = raised(verdict.measured.linkage, "track_bar.axle", INCH)
    expected = height_curve(
        replace(moved, layout=Layout.KNUCKLE, near_ball=None), verdict.session.limits
    )
    np.testing.assert_allclose(plan.with_change.peak_steer, expected.peak_steer, atol=1e-9)
    knuckle = verdict_on(vehicle(0, Layout.KNUCKLE))
    assert lift_plan(knuckle, [], None, Move(conversion)).with_change is None


def share_that_steers_true(verdict, rise, count):
    """Share of drawn vehicles that steer true at a ride height, by the root finder.

    The draws, the motion and the error of the model (5 % and 0.02 deg) are computed here.
    """
    limits, measured = verdict.session.limits, verdict.measured
    chance = np.random.default_rng(20261126)
    drawn = chance.multivariate_normal(parameters(measured.linkage), measured.covariance, count)
    up = [0.0, 0.0, rise]
    true = 0
    for values in drawn:
        linkage = with_parameters(measured.linkage, values)
        ends = ("track_bar.frame", "drag_link.frame")
        moved = linkage.with_pivots({name: linkage.pivot(name) + up for name in ends})
        steer, toe = peaks(moved, limits)
        first, second = chance.standard_normal(2)
        steer += first * np.hypot(0.05 * steer, np.radians(0.02))
        toe += second * np.hypot(0.05 * toe, np.radians(0.02))
        true += (
            abs(out_of_square(moved)) <= limits.parallel
            and abs(steer) <= limits.steer
            and abs(toe) <= limits.toe_change
        )
    return true / count


def test_the_ends_of_a_sure_range_are_those_of_a_simulation():
    verdict = verdict_on(SHORT)
    curve = lift_plan(verdict, (), None).now
    inner = [end for each in curve.sure_ranges for end in each if LOWEST < end < HIGHEST]
    assert inner
    for end in inner:
        # 400 draws: the standard error of a share of 0.95 is 0.011.
        assert share_that_steers_true(verdict, end, 400) == pytest.approx(0.95, abs=0.035)


def test_a_sure_range_lies_within_a_range():
    for linkage in (SHORT, vehicle(2, Layout.TIE_ROD), vehicle(3, Layout.INVERTED_Y)):
        curve = lift_plan(verdict_on(linkage), (), None).now
        for low, high in curve.sure_ranges:
            assert any(first <= low <= high <= last for first, last in curve.ranges)
