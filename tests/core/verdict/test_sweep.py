"""The motion over the full travel."""

import numpy as np
import pytest

from core.kinematics.motion import motion_at, steering_wheel_angle
from core.kinematics.series import derivatives
from core.verdict.sweep import articulation, splits, sweep
from tests.geometries import parallel_pair, random_linkage
from tests.measured import measure

DROOP, BUMP = 127.0, 101.6


@pytest.fixture(scope="module")
def measured_session():
    return measure(random_linkage(np.random.default_rng(6), "inverted-y", same_side=True))


@pytest.fixture
def measured(measured_session):
    return measured_session.measured


@pytest.fixture
def limits(measured_session):
    return measured_session.session.limits


def test_a_sweep_has_the_motion_of_41_heaves_from_full_droop_to_full_bump(measured):
    travel = sweep(measured, DROOP, BUMP)
    assert (len(travel.heave), travel.heave[0], travel.heave[-1]) == (41, -DROOP, BUMP)
    motion = motion_at(measured.linkage, travel.heave)
    np.testing.assert_array_equal(travel.steer, motion.steer)
    np.testing.assert_array_equal(travel.axle_shift, motion.axle_shift)
    np.testing.assert_array_equal(travel.toe_in_change, motion.toe_in_change)
    np.testing.assert_array_equal(
        travel.steering_wheel, steering_wheel_angle(measured.linkage, travel.heave)
    )


def test_the_uncertainty_of_the_steer_is_smallest_at_ride_height_and_agrees_with_draws(measured):
    travel = sweep(measured, DROOP, BUMP)
    assert abs(travel.heave[np.argmin(travel.steer_u)]) < 6.0
    drawn = motion_at(measured.draw(20_000, 1), travel.heave[5]).steer
    assert travel.steer_u[5] == pytest.approx(drawn.std(), rel=0.02)


def test_the_steer_is_nan_where_a_link_binds():
    short = measure(parallel_pair(slope_deg=0.0, run=200.0)).measured
    travel = sweep(short, 250.0, BUMP)
    assert np.isnan(travel.steer[0])
    assert np.isfinite(travel.steer[-1])
    assert np.isnan(travel.steer_u[0])


def test_articulation_has_a_row_for_each_heave_and_a_column_for_each_roll(measured):
    grid = articulation(measured.linkage, DROOP, BUMP)
    np.testing.assert_allclose(np.degrees(grid.roll), [-8, -6, -4, -2, 0, 2, 4, 6, 8])
    np.testing.assert_array_equal(grid.heave, [-DROOP, 0.0, BUMP])
    assert grid.steer.shape == (3, 9)
    assert grid.steer[2, 1] == pytest.approx(
        float(motion_at(measured.linkage, BUMP, np.radians(-6.0)).steer)
    )
    assert grid.steer[1, 4] == pytest.approx(0.0, abs=1e-12)


def test_splits_add_up_to_the_steer(measured, limits):
    for split, heave in zip(splits(measured.linkage, limits), (-50.8, 50.8), strict=True):
        assert split.heave == pytest.approx(heave)
        total = split.not_parallel + split.slope_and_length
        assert total == pytest.approx(float(motion_at(measured.linkage, heave).steer))
        gradient = derivatives(measured.linkage).gradient
        assert split.not_parallel == pytest.approx(float(gradient) * heave)


def test_parallel_links_of_different_length_steer_by_their_length_alone(limits):
    for split in splits(parallel_pair(run_ratio=0.7), limits):
        assert split.not_parallel == pytest.approx(0.0, abs=1e-12)
        assert abs(split.slope_and_length) > 1e-3
