"""Predicted readings, and their derivatives checked by differences."""

import numpy as np
import pytest

from core.adjustment.observation import Observations, curvature, ends_of, predict
from core.kinematics.linkage import angle_finder_reading, centre_distance
from core.kinematics.pivots import pivots_of
from core.readings.survey import readings_in
from tests.geometries import document_of, random_linkage, true_readings

STEP = 0.01


@pytest.fixture
def linkage():
    return random_linkage(np.random.default_rng(4), "inverted-y")


@pytest.fixture
def readings(linkage):
    return readings_in(document_of(linkage, true_readings(linkage)), "inverted-y")


@pytest.fixture
def observations(readings):
    return Observations.of(readings, pivots_of("inverted-y"))


@pytest.fixture
def points(linkage):
    return np.array([linkage.pivot(name) for name in pivots_of("inverted-y")])


def shifted(points, coordinate, by):
    return points + by * np.eye(points.size)[coordinate].reshape(points.shape)


def test_true_pivots_predict_true_readings(linkage, readings, observations, points):
    predicted, _ = predict(observations, points)
    by_name = dict(zip((reading.name for reading in readings), predicted, strict=True))
    for name, value in by_name.items():
        assert value == pytest.approx(true_readings(linkage)[name], abs=1e-9)
    frame, axle = linkage.drag_link_frame, linkage.drag_link_axle
    assert by_name["drag_link.slope"] == pytest.approx(angle_finder_reading(frame, axle))
    assert by_name["drag_link.length"] == pytest.approx(centre_distance(frame, axle))


def test_derivatives_are_those_of_differences(observations, points):
    _, jacobian = predict(observations, points)
    for coordinate in range(points.size):
        ahead, behind = (
            predict(observations, shifted(points, coordinate, by))[0] for by in (STEP, -STEP)
        )
        np.testing.assert_allclose(
            jacobian[:, coordinate], (ahead - behind) / (2 * STEP), atol=1e-8
        )


def test_second_derivatives_are_those_of_differences(readings, observations, points):
    weights = np.random.default_rng(5).normal(size=len(readings))
    # A slope in rad curves some thousand times less than a length in mm, so it has more weight.
    weights *= [1000.0 if reading.kind == "slope" else 1.0 for reading in readings]
    second = curvature(observations, points, weights)
    for coordinate in range(points.size):
        ahead, behind = (
            weights @ predict(observations, shifted(points, coordinate, by))[1]
            for by in (STEP, -STEP)
        )
        np.testing.assert_allclose(second[coordinate], (ahead - behind) / (2 * STEP), atol=1e-7)


def test_ends_that_fall_together_have_finite_derivatives(observations):
    predicted, jacobian = predict(observations, np.zeros((5, 3)))
    assert np.isfinite(predicted).all()
    assert np.isfinite(jacobian).all()
    weights = np.ones(len(predicted))
    assert np.isfinite(curvature(observations, np.zeros((5, 3)), weights)).all()


def test_ends_of_a_reading():
    assert ends_of("tie_rod.near.height") == ("tie_rod.near",)
    assert ends_of("track_bar.slope") == ("track_bar.frame", "track_bar.axle")
    assert ends_of("braces.frame_to_axle") == ("track_bar.frame", "drag_link.axle")
