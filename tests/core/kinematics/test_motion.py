from dataclasses import replace

import numpy as np
import pytest

from core.kinematics.motion import motion_at, steering_wheel_angle
from core.kinematics.pivots import Direction
from core.kinematics.raising import raised
from tests.geometries import parallel_pair, random_linkage


def test_heave_and_roll_broadcast():
    motion = motion_at(parallel_pair(), np.zeros((3, 1)), np.zeros(5))
    for values in (motion.axle_shift, motion.steer, motion.near_steer, motion.toe_in_change):
        assert values.shape == (3, 5)


def test_thousands_of_geometries_broadcast_with_heaves():
    many = raised(parallel_pair(), "drag_link.axle", np.linspace(-50, 50, 1000)).with_heave_axis()
    assert motion_at(many, np.linspace(-50, 50, 41)).steer.shape == (1000, 41)
    assert steering_wheel_angle(many, np.linspace(-50, 50, 41)).shape == (1000, 41)


def test_the_motion_is_nan_where_the_track_bar_cannot_reach():
    short = parallel_pair(slope_deg=0.0, run=200.0)
    motion = motion_at(short, np.array([199.0, 201.0]))
    np.testing.assert_array_equal(np.isnan(motion.axle_shift), [False, True])
    np.testing.assert_array_equal(np.isnan(motion.steer), [False, True])


def test_the_axle_shift_is_finite_where_the_drag_link_cannot_reach():
    linkage = parallel_pair(slope_deg=0.0, arm=60.0)
    steep = raised(linkage, "drag_link.frame", 500.0)
    motion = motion_at(steep, np.array([0.0, -150.0]))
    np.testing.assert_array_equal(np.isnan(motion.steer), [False, True])
    assert np.isfinite(motion.axle_shift).all()


def test_no_warning_is_given_where_a_link_cannot_reach(recwarn):
    motion_at(parallel_pair(run=200.0), np.array([1000.0]))
    steering_wheel_angle(parallel_pair(run=200.0), np.array([1000.0]))
    assert not recwarn.list


def test_a_steeper_drag_link_steers_to_the_right_in_bump():
    """In bump the steeper link comes nearer to flat, so its ball moves to the right.

    The steering arm points ahead.
    """
    steeper = parallel_pair(slope_deg=5.0, parallel_deg=3.0)
    assert motion_at(steeper, 30.0).steer < 0
    assert motion_at(steeper, -30.0).steer > 0


def test_an_arm_behind_the_axle_steers_the_other_way():
    ahead = parallel_pair(parallel_deg=0.5)
    behind = replace(ahead, arm_direction=Direction.BEHIND)
    assert motion_at(behind, 20.0).steer == pytest.approx(-motion_at(ahead, 20.0).steer, rel=0.05)


def test_toe_does_not_change_with_a_knuckle_or_a_tie_rod():
    for layout in ("knuckle", "tie-rod"):
        linkage = random_linkage(np.random.default_rng(2), layout)
        motion = motion_at(linkage, np.linspace(-80, 80, 9), 0.05)
        np.testing.assert_array_equal(motion.toe_in_change, 0.0)
        np.testing.assert_array_equal(motion.near_steer, motion.far_steer)


def test_toe_changes_with_an_inverted_y():
    linkage = random_linkage(np.random.default_rng(2), "inverted-y", same_side=True)
    motion = motion_at(linkage, np.array([-60.0, 60.0]))
    assert np.abs(motion.toe_in_change).min() > 1e-4
    np.testing.assert_allclose(motion.steer, (motion.near_steer + motion.far_steer) / 2)


def test_a_roll_of_zero_changes_nothing():
    linkage = random_linkage(np.random.default_rng(3), "inverted-y")
    heave = np.linspace(-50, 50, 5)
    level, rolled = motion_at(linkage, heave), motion_at(linkage, heave, np.zeros(5))
    np.testing.assert_allclose(rolled.steer, level.steer, atol=1e-14)
    np.testing.assert_allclose(rolled.axle_shift, level.axle_shift, atol=1e-11)
