"""Facts about bump steer that every workshop knows.

Each test is marked "common practice, no source".
"""

from dataclasses import replace

import numpy as np
import pytest

from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at, steering_wheel_angle
from core.kinematics.raising import raised
from core.kinematics.series import derivatives
from core.uncertainty.measured_linkage import measured_linkage
from core.verdict.verdict import evaluate
from tests.geometries import INCH, document_of, parallel_pair, session_of, true_readings

TRAVEL = np.linspace(-4 * INCH, 4 * INCH, 41)
WORKING = np.linspace(-2 * INCH, 2 * INCH, 41)


def peak_steer_deg(linkage: Linkage, heave=WORKING) -> float:
    return float(np.degrees(np.abs(motion_at(linkage, heave).steer).max()))


def walk(linkage: Linkage) -> float:
    """Largest sideways shift of the axle over the travel, mm."""
    return float(np.abs(motion_at(linkage, TRAVEL).axle_shift).max())


@pytest.mark.parametrize("slope_deg", [-5, 0, 8, 20])
def test_parallel_links_alike_in_length_do_not_bump_steer(slope_deg):
    """Common practice, no source."""
    linkage = parallel_pair(slope_deg=slope_deg)
    np.testing.assert_allclose(motion_at(linkage, TRAVEL).steer, 0.0, atol=1e-12)
    np.testing.assert_allclose(steering_wheel_angle(linkage, TRAVEL), 0.0, atol=1e-11)


def test_the_axle_walks_least_with_flat_links():
    """Common practice, no source."""
    walks = [walk(parallel_pair(slope_deg=slope)) for slope in (0, 2, 4, 8, 12, 16, 20)]
    assert walks == sorted(walks)
    assert walks[0] < walks[-1] / 5


def test_with_flat_links_bump_and_droop_walk_the_axle_alike():
    """Common practice, no source."""
    shift = motion_at(parallel_pair(slope_deg=0), np.array([-60.0, 60.0])).axle_shift
    assert shift[0] == pytest.approx(shift[1], abs=1e-9)


def test_a_bend_in_a_bar_changes_nothing():
    """Common practice, no source: only the line from pivot centre to pivot centre counts.

    The slope read on a bent bar does not count; its slope comes from its ends.
    """
    linkage = parallel_pair(parallel_deg=2.0)
    readings = true_readings(linkage)
    del readings["track_bar.slope"]
    straight = document_of(linkage, readings)
    bent = document_of(linkage, {**readings, "track_bar.slope": np.radians(30.0)})
    bent["readings"]["track_bar"]["bent"] = True
    straight_sweep, bent_sweep = (
        evaluate(session_of(document), 0).sweep for document in (straight, bent)
    )
    assert (bent_sweep.steer == straight_sweep.steer).all()


def test_a_re_mounted_drag_link_makes_bump_steer_without_the_track_bar():
    """Common practice, no source."""
    before = parallel_pair(slope_deg=14.0)
    re_mounted = raised(before, "drag_link.axle", 4 * INCH)
    both = raised(re_mounted, "track_bar.axle", 4 * INCH)
    assert peak_steer_deg(before) < 1e-9
    assert peak_steer_deg(re_mounted) > 1.0
    assert peak_steer_deg(both) < 0.1


@pytest.mark.parametrize("pivot", ["drag_link.frame", "track_bar.frame"])
def test_moving_one_frame_end_alone_makes_bump_steer(pivot):
    """Common practice, no source: a pitman arm with more drop, a track bar bracket alone."""
    moved_alone = raised(parallel_pair(), pivot, -3 * INCH)
    assert peak_steer_deg(moved_alone) > 1.0


def test_a_lift_keeps_links_alike_in_length_parallel_but_not_flat():
    """Common practice, no source: the vehicle still steers true, and its axle walks more."""
    before = parallel_pair(slope_deg=5.0)
    lifted = raised(before, "ride_height", 4 * INCH)
    assert peak_steer_deg(lifted) < 1e-9
    assert walk(lifted) > 1.5 * walk(before)


def test_a_lift_makes_bump_steer_with_links_of_unlike_length():
    """Common practice, no source."""
    before = parallel_pair(slope_deg=3.0, run_ratio=1.25)
    lifted = raised(before, "ride_height", 4 * INCH)
    assert peak_steer_deg(lifted) > 3 * peak_steer_deg(before)


def test_parallel_counts_most_and_near_in_length_least():
    """Common practice, no source.

    Each rule is broken by twice its usual limit: links 3 deg from parallel, 20 deg steep, the
    shorter link 0.7 of the longer one.
    """
    kept = parallel_pair()
    apart, short = parallel_pair(parallel_deg=3.0), parallel_pair(run_ratio=0.7)
    steep = parallel_pair(slope_deg=20.0)
    assert peak_steer_deg(apart) > 3 * peak_steer_deg(short)
    # Steep links make the axle walk, and make the two other faults worse.
    assert walk(steep) > 1.8 * walk(kept)
    assert walk(apart) == walk(short) == walk(kept)
    for fault in ({"parallel_deg": 3.0}, {"run_ratio": 0.7}):
        steep_too = parallel_pair(slope_deg=20.0, **fault)
        assert peak_steer_deg(steep_too) > peak_steer_deg(parallel_pair(**fault))


def test_arcs_of_links_from_opposite_sides_add_up():
    """Common practice, no source: only flat links then help, and only a little."""
    same_side = parallel_pair(slope_deg=0.0)
    crossed = same_side.with_pivots(
        {"track_bar.frame": same_side.track_bar_axle + np.array([0.0, -850.0, 0.0])}
    )
    one_arc = np.abs(derivatives(same_side).axle_arc / same_side.arm)
    assert derivatives(crossed).curvature == pytest.approx(2 * one_arc)


def test_a_shorter_steering_arm_makes_bump_steer_worse():
    """Common practice, no source."""
    linkage = parallel_pair(parallel_deg=2.0)
    assert peak_steer_deg(replace(linkage, arm=120.0)) > peak_steer_deg(linkage)


def test_a_steering_wheel_held_steers_the_road_wheels_and_one_let_go_turns():
    """Common practice, no source: the slower the steering box, the more the wheel turns."""
    linkage = parallel_pair(parallel_deg=2.0)
    slow = replace(linkage, ratio=20.0)
    assert peak_steer_deg(linkage) > 0.5
    swing, slower = (np.abs(steering_wheel_angle(each, WORKING)).max() for each in (linkage, slow))
    assert np.degrees(swing) > 5.0
    assert slower == pytest.approx(swing * 20 / 16)


def test_braking_steers_a_vehicle_with_bump_steer():
    """Common practice, no source: the nose dives, and the vehicle pulls to one side."""
    verdicts = [
        evaluate(session_of(document_of(linkage, true_readings(linkage))), 0)
        for linkage in (parallel_pair(), parallel_pair(parallel_deg=3.0))
    ]
    without, with_bump_steer = (
        {course.name: course for course in verdict.courses} for verdict in verdicts
    )
    assert abs(without["hard stop"].drift) < 1.0
    assert abs(with_bump_steer["hard stop"].drift) > 500.0
    assert np.sign(with_bump_steer["hard stop"].drift) == np.sign(
        motion_at(measured_linkage(verdicts[1].session, verdicts[1].adjustment).linkage, 38.0).steer
    )
