"""Places of the axle: motion does not change the lengths of the links."""

import numpy as np
import pytest

from core.kinematics.linkage import centre_distance
from core.kinematics.places import FAR_BALL, JOINT, axle_points, axle_pose, carried_point
from core.kinematics.pose import pose_at
from core.uncertainty.measured_linkage import hub_centres
from tests.geometries import LAYOUTS, document_of, random_linkage, session_of, true_readings

HEAVES, ROLLS = np.array([-80.0, 0.0, 60.0]), np.array([[-0.08], [0.0], [0.1]])


@pytest.fixture(params=LAYOUTS)
def linkage(request):
    return random_linkage(np.random.default_rng(7), request.param)


def test_links_keep_their_lengths(linkage):
    points = axle_points(linkage, HEAVES, ROLLS)
    for link in ("track_bar", "drag_link"):
        frame = linkage.pivot(f"{link}.frame")
        moved = centre_distance(frame, points[f"{link}.axle"])
        assert moved.shape == (3, 3)
        np.testing.assert_allclose(
            moved, centre_distance(frame, linkage.pivot(f"{link}.axle")), atol=1e-9
        )


def test_the_tie_rod_keeps_its_length_and_its_joint_its_place_on_the_drag_link():
    linkage = random_linkage(np.random.default_rng(8), "inverted-y")
    at_rest, points = axle_points(linkage, 0.0), axle_points(linkage, HEAVES, ROLLS)
    tie_rod = centre_distance(points[JOINT], points["tie_rod.near"])
    np.testing.assert_allclose(
        tie_rod, centre_distance(at_rest[JOINT], at_rest["tie_rod.near"]), atol=1e-9
    )
    from_ball = centre_distance(points[JOINT], points[FAR_BALL])
    np.testing.assert_allclose(from_ball, linkage.joint_from_far_ball, atol=1e-9)


def test_every_pivot_is_in_its_measured_place_at_ride_height(linkage):
    for pivot, point in axle_points(linkage, 0.0).items():
        if pivot != JOINT:
            assert point == pytest.approx(linkage.pivot(pivot), abs=1e-9)


def test_the_wheels_roll_about_the_middle_between_them():
    linkage = random_linkage(np.random.default_rng(9), "knuckle")
    session = session_of(document_of(linkage, true_readings(linkage, datum=900.0, tread=1600.0)))
    hubs = hub_centres(session, linkage)
    assert hubs["wheels.left"] == pytest.approx([0.0, 800.0, float(linkage.hub_height)])
    pose = pose_at(linkage, 50.0, 0.1)
    left, right = (carried_point(pose, hubs[f"wheels.{side}"]) for side in ("left", "right"))
    assert left[2] > right[2]
    assert (left[2] + right[2]) / 2 == pytest.approx(float(linkage.hub_height) + 50.0)


def test_no_hub_centres_without_wheel_offsets():
    linkage = random_linkage(np.random.default_rng(9), "knuckle")
    read = {
        name: value
        for name, value in true_readings(linkage).items()
        if not name.startswith("wheels")
    }
    document = document_of(linkage, read)
    assert hub_centres(session_of(document), linkage) == {}


def test_an_axle_out_of_reach_of_a_link_is_not_reached():
    linkage = random_linkage(np.random.default_rng(9), "knuckle")
    session = session_of(document_of(linkage, true_readings(linkage)))
    assert axle_pose(linkage, hub_centres(session, linkage), 20.0).is_reached
    assert not axle_pose(linkage, hub_centres(session, linkage), 5000.0).is_reached
