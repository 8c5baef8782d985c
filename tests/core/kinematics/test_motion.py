from dataclasses import replace

import numpy as np
import pytest

from core.kinematics.linkage import BEHIND
from core.kinematics.motion import moved, steering_wheel
from tests.geometries import parallel_pair, random_linkage


def test_heave_and_roll_broadcast():
    motion = moved(parallel_pair(), np.zeros((3, 1)), np.zeros(5))
    for values in (motion.axle_shift, motion.steer, motion.near_steer, motion.toe_in_change):
        assert values.shape == (3, 5)


def test_thousands_of_geometries_broadcast_with_heaves():
    many = parallel_pair().raised("drag_link.axle", np.linspace(-50, 50, 1000)).spread()
    assert moved(many, np.linspace(-50, 50, 41)).steer.shape == (1000, 41)
    assert steering_wheel(many, np.linspace(-50, 50, 41)).shape == (1000, 41)


def test_where_the_track_bar_cannot_reach_there_is_no_answer():
    short = parallel_pair(slope_deg=0.0, run=200.0)
    motion = moved(short, np.array([199.0, 201.0]))
    np.testing.assert_array_equal(np.isnan(motion.axle_shift), [False, True])
    np.testing.assert_array_equal(np.isnan(motion.steer), [False, True])


def test_where_the_steering_cannot_reach_the_axle_still_moves():
    linkage = parallel_pair(slope_deg=0.0, arm=60.0)
    steep = linkage.raised("drag_link.frame", 500.0)
    motion = moved(steep, np.array([0.0, -150.0]))
    np.testing.assert_array_equal(np.isnan(motion.steer), [False, True])
    assert np.isfinite(motion.axle_shift).all()


def test_no_warning_where_nothing_reaches(recwarn):
    moved(parallel_pair(run=200.0), np.array([1000.0]))
    steering_wheel(parallel_pair(run=200.0), np.array([1000.0]))
    assert not recwarn.list


def test_a_steeper_drag_link_steers_to_the_right_in_bump():
    """The ball is pushed to the right by a link that flattens; the arm points ahead.

    In bump the steeper link comes nearer to flat and so reaches further across.
    """
    steeper = parallel_pair(slope_deg=5.0, parallel_deg=3.0)
    assert moved(steeper, 30.0).steer < 0
    assert moved(steeper, -30.0).steer > 0


def test_the_arm_behind_the_axle_steers_the_other_way():
    ahead = parallel_pair(parallel_deg=0.5)
    behind = replace(ahead, arm_side=BEHIND)
    assert moved(behind, 20.0).steer == pytest.approx(-moved(ahead, 20.0).steer, rel=0.05)


def test_toe_stays_where_the_layout_cannot_change_it():
    for layout in ("knuckle", "tie-rod"):
        linkage = random_linkage(np.random.default_rng(2), layout)
        motion = moved(linkage, np.linspace(-80, 80, 9), 0.05)
        np.testing.assert_array_equal(motion.toe_in_change, 0.0)
        np.testing.assert_array_equal(motion.near_steer, motion.far_steer)


def test_toe_changes_in_an_inverted_y():
    linkage = random_linkage(np.random.default_rng(2), "inverted-y", same_side=True)
    motion = moved(linkage, np.array([-60.0, 60.0]))
    assert np.abs(motion.toe_in_change).min() > 1e-4
    np.testing.assert_allclose(motion.steer, (motion.near_steer + motion.far_steer) / 2)


def test_a_roll_of_nothing_is_no_roll():
    linkage = random_linkage(np.random.default_rng(3), "inverted-y")
    heave = np.linspace(-50, 50, 5)
    one, other = moved(linkage, heave), moved(linkage, heave, np.zeros(5))
    np.testing.assert_allclose(other.steer, one.steer, atol=1e-14)
    np.testing.assert_allclose(other.axle_shift, one.axle_shift, atol=1e-11)
