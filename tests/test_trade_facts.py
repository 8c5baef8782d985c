"""What every workshop knows about bump steer.

Each test is marked "common practice, no source".
"""

from dataclasses import replace

import numpy as np
import pytest

from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at, steering_wheel_angle
from core.kinematics.series import derivatives
from core.uncertainty.measured_linkage import measured_linkage
from core.verdict.verdict import evaluate
from tests.geometries import INCH, document_of, parallel_pair, session_of, true_readings

TRAVEL = np.linspace(-4 * INCH, 4 * INCH, 41)
WORKING = np.linspace(-2 * INCH, 2 * INCH, 41)


def peak_steer_deg(linkage: Linkage, heave=WORKING) -> float:
    return float(np.degrees(np.abs(motion_at(linkage, heave).steer).max()))


def walk(linkage: Linkage) -> float:
    """Farthest that the axle goes sideways, mm."""
    return float(np.abs(motion_at(linkage, TRAVEL).axle_shift).max())


@pytest.mark.parametrize("slope_deg", [-5, 0, 8, 20])
def test_parallel_links_of_equal_length_do_not_bump_steer(slope_deg):
    """Common practice, no source."""
    like = parallel_pair(slope_deg=slope_deg)
    np.testing.assert_allclose(motion_at(like, TRAVEL).steer, 0.0, atol=1e-12)
    np.testing.assert_allclose(steering_wheel_angle(like, TRAVEL), 0.0, atol=1e-11)


def test_about_flat_the_axle_walks_least():
    """Common practice, no source."""
    walks = [walk(parallel_pair(slope_deg=slope)) for slope in (0, 2, 4, 8, 12, 16, 20)]
    assert walks == sorted(walks)
    assert walks[0] < walks[-1] / 5


def test_about_flat_up_and_down_walk_the_axle_alike():
    """Common practice, no source."""
    shift = motion_at(parallel_pair(slope_deg=0), np.array([-60.0, 60.0])).axle_shift
    assert shift[0] == pytest.approx(shift[1], abs=1e-9)


def test_a_bend_in_a_bar_changes_nothing():
    """Common practice, no source: only the line from pivot centre to pivot centre counts.

    A bent bar takes no angle finder; its slope then comes from its ends.
    """
    linkage = parallel_pair(parallel_deg=2.0)
    read = true_readings(linkage)
    del read["track_bar.slope"]
    straight = document_of(linkage, read)
    bent = document_of(linkage, {**read, "track_bar.slope": np.radians(30.0)})
    bent["readings"]["track_bar"]["bent"] = True
    for one, other in zip(
        *(evaluate(session_of(document), 0).sweep.steer for document in (straight, bent)),
        strict=True,
    ):
        assert one == other


def test_a_re_mounted_drag_link_makes_bump_steer_without_the_track_bar():
    """Common practice, no source."""
    before = parallel_pair(slope_deg=14.0)
    over = before.raised("drag_link.axle", 4 * INCH)
    both = over.raised("track_bar.axle", 4 * INCH)
    assert peak_steer_deg(before) < 1e-9
    assert peak_steer_deg(over) > 1.0
    assert peak_steer_deg(both) < 0.1


@pytest.mark.parametrize("pivot", ["drag_link.frame", "track_bar.frame"])
def test_moving_one_frame_end_alone_makes_bump_steer(pivot):
    """Common practice, no source: a dropped pitman arm, a track bar bracket by itself."""
    moved_alone = parallel_pair().raised(pivot, -3 * INCH)
    assert peak_steer_deg(moved_alone) > 1.0


def test_a_lift_with_both_links_alike_keeps_them_parallel_but_not_flat():
    """Common practice, no source: it steers no more, and walks more."""
    before = parallel_pair(slope_deg=5.0)
    lifted = before.raised("ride_height", 4 * INCH)
    assert peak_steer_deg(lifted) < 1e-9
    assert walk(lifted) > 1.5 * walk(before)


def test_a_lift_of_links_unlike_in_length_makes_bump_steer():
    """Common practice, no source."""
    before = parallel_pair(slope_deg=3.0, run_ratio=1.25)
    lifted = before.raised("ride_height", 4 * INCH)
    assert peak_steer_deg(lifted) > 3 * peak_steer_deg(before)


def test_parallel_counts_most_and_equal_length_least():
    """Common practice, no source.

    Each rule is missed by twice what its usual limit allows: 3 deg apart, 20 deg steep, the
    shorter link 0.7 of the longer one.
    """
    kept = parallel_pair()
    apart, short = parallel_pair(parallel_deg=3.0), parallel_pair(run_ratio=0.7)
    steep = parallel_pair(slope_deg=20.0)
    assert peak_steer_deg(apart) > 3 * peak_steer_deg(short)
    # Flatness is about the walk of the axle, and makes the two other faults worse.
    assert walk(steep) > 1.8 * walk(kept)
    assert walk(apart) == walk(short) == walk(kept)
    for fault in ({"parallel_deg": 3.0}, {"run_ratio": 0.7}):
        steep_too = parallel_pair(slope_deg=20.0, **fault)
        assert peak_steer_deg(steep_too) > peak_steer_deg(parallel_pair(**fault))


def test_frame_ends_on_opposite_sides_add_up():
    """Common practice, no source: then only flat links help, and little."""
    alike = parallel_pair(slope_deg=0.0)
    crossed = alike.with_pivots(
        {"track_bar.frame": alike.track_bar_axle + np.array([0.0, -850.0, 0.0])}
    )
    one_arc = np.abs(derivatives(alike).axle_arc / alike.arm)
    assert derivatives(crossed).curvature == pytest.approx(2 * one_arc)


def test_a_shorter_steering_arm_makes_it_worse():
    """Common practice, no source."""
    linkage = parallel_pair(parallel_deg=2.0)
    assert peak_steer_deg(replace(linkage, arm=120.0)) > peak_steer_deg(linkage)


def test_the_wheel_held_steers_the_road_wheels_and_let_go_turns_itself():
    """Common practice, no source: and the slower the steering box, the more it turns."""
    linkage = parallel_pair(parallel_deg=2.0)
    slow = replace(linkage, ratio=20.0)
    assert peak_steer_deg(linkage) > 0.5
    swing, slower = (np.abs(steering_wheel_angle(one, WORKING)).max() for one in (linkage, slow))
    assert np.degrees(swing) > 5.0
    assert slower == pytest.approx(swing * 20 / 16)


def test_braking_steers_a_vehicle_with_bump_steer():
    """Common practice, no source: the nose dives, and it pulls to one side."""
    verdicts = [
        evaluate(session_of(document_of(linkage, true_readings(linkage))), 0)
        for linkage in (parallel_pair(), parallel_pair(parallel_deg=3.0))
    ]
    true, bump_steer = ({course.name: course for course in verdict.courses} for verdict in verdicts)
    assert abs(true["hard stop"].drift) < 1.0
    assert abs(bump_steer["hard stop"].drift) > 500.0
    assert np.sign(bump_steer["hard stop"].drift) == np.sign(
        motion_at(measured_linkage(verdicts[1].session, verdicts[1].adjustment).linkage, 38.0).steer
    )
