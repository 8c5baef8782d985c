import numpy as np
import pytest

from core.kinematics.linkage import angle_finder_reading, centre_distance, slope
from core.kinematics.raising import raised
from tests.geometries import parallel_pair, random_linkage

LEFT_AND_HIGHER = np.array([0.0, 400.0, 600.0])
RIGHT_AND_LOWER = np.array([0.0, -400.0, 500.0])


def test_slope_is_positive_with_the_frame_end_on_the_left_and_higher():
    expected = np.arctan(100 / 800)
    assert slope(LEFT_AND_HIGHER, RIGHT_AND_LOWER) == pytest.approx(expected)


def test_slope_is_that_of_a_line_whichever_end_is_the_frame_end():
    left, right = LEFT_AND_HIGHER, RIGHT_AND_LOWER
    assert slope(left, right) == slope(right, left)


def test_links_with_raised_frame_ends_on_opposite_sides_have_opposite_slopes():
    upward = np.array([0.0, -400.0, 600.0])
    assert slope(upward, np.array([0.0, 400.0, 500.0])) == pytest.approx(-np.arctan(100 / 800))


def test_the_angle_finder_reads_the_bar_and_not_the_front_view():
    frame, axle = np.array([600.0, 800.0, 500.0]), np.zeros(3)
    assert angle_finder_reading(frame, axle) == pytest.approx(np.arctan(500 / 1000))
    assert angle_finder_reading(axle, frame) == pytest.approx(-np.arctan(500 / 1000))
    assert slope(frame, axle) == pytest.approx(np.arctan(500 / 800))


def test_length_is_from_centre_to_centre_in_space():
    assert centre_distance(np.array([2.0, 3.0, 6.0]), np.zeros(3)) == pytest.approx(7.0)


def test_raising_a_pivot_leaves_the_other_pivots_and_the_first_linkage():
    linkage = parallel_pair()
    moved = raised(linkage, "track_bar.axle", 25.0)
    assert moved.track_bar_axle[2] == linkage.track_bar_axle[2] + 25.0
    np.testing.assert_array_equal(moved.track_bar_axle[:2], linkage.track_bar_axle[:2])
    np.testing.assert_array_equal(moved.drag_link_axle, linkage.drag_link_axle)


def test_ride_height_raises_both_frame_ends():
    linkage = parallel_pair()
    lifted = raised(linkage, "ride_height", 100.0)
    for name in ("track_bar.frame", "drag_link.frame"):
        np.testing.assert_array_equal(lifted.pivot(name) - linkage.pivot(name), [0, 0, 100.0])
    for name in ("track_bar.axle", "drag_link.axle"):
        np.testing.assert_array_equal(lifted.pivot(name), linkage.pivot(name))


def test_rises_broadcast():
    moved = raised(parallel_pair(), "drag_link.frame", np.array([[0.0, 10.0, 20.0]]))
    assert moved.drag_link_frame.shape == (1, 3, 3)


def test_the_heave_axis_is_the_last_one():
    linkage = random_linkage(np.random.default_rng(0), "inverted-y").with_heave_axis()
    assert linkage.near_ball.shape == (1, 3)
    assert np.shape(linkage.arm) == (1,)
