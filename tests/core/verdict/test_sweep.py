import numpy as np
import pytest

from core.adjustment.least_squares import adjust
from core.kinematics.motion import motion_at, steering_wheel_angle
from core.kinematics.series import derivatives
from core.uncertainty.measured_linkage import measured_linkage
from core.verdict.sweep import articulation, splits, sweep
from tests.geometries import document_of, parallel_pair, random_linkage, session_of, true_readings

DROOP, BUMP = 127.0, 101.6


@pytest.fixture
def session():
    linkage = random_linkage(np.random.default_rng(6), "inverted-y", same_side=True)
    return session_of(document_of(linkage, true_readings(linkage)))


@pytest.fixture
def subject(session):
    return measured_linkage(session, adjust(session.readings, session.instruments, session.layout))


def test_41_heaves_from_full_droop_to_full_bump(subject):
    travel = sweep(subject, DROOP, BUMP)
    assert (len(travel.heave), travel.heave[0], travel.heave[-1]) == (41, -DROOP, BUMP)
    motion = motion_at(subject.linkage, travel.heave)
    np.testing.assert_array_equal(travel.steer, motion.steer)
    np.testing.assert_array_equal(travel.axle_shift, motion.axle_shift)
    np.testing.assert_array_equal(travel.toe_in_change, motion.toe_in_change)
    np.testing.assert_array_equal(
        travel.steering_wheel, steering_wheel_angle(subject.linkage, travel.heave)
    )


def test_the_steer_is_surest_at_ride_height_and_as_sure_as_draws_say(subject):
    travel = sweep(subject, DROOP, BUMP)
    assert abs(travel.heave[np.argmin(travel.steer_u)]) < 6.0
    drawn = motion_at(subject.draw(20_000, 1), travel.heave[5]).steer
    assert travel.steer_u[5] == pytest.approx(drawn.std(), rel=0.02)


def test_beyond_the_reach_of_a_link_there_is_no_answer():
    linkage = parallel_pair(slope_deg=0.0, run=200.0)
    session = session_of(document_of(linkage, true_readings(linkage)))
    short = measured_linkage(session, adjust(session.readings, session.instruments, session.layout))
    travel = sweep(short, 250.0, BUMP)
    assert np.isnan(travel.steer[0])
    assert np.isfinite(travel.steer[-1])
    assert np.isnan(travel.steer_u[0])


def test_articulation_rows_by_heave_columns_by_roll(subject):
    grid = articulation(subject.linkage, DROOP, BUMP)
    np.testing.assert_allclose(np.degrees(grid.roll), [-8, -6, -4, -2, 0, 2, 4, 6, 8])
    np.testing.assert_array_equal(grid.heave, [-DROOP, 0.0, BUMP])
    assert grid.steer.shape == (3, 9)
    assert grid.steer[2, 1] == pytest.approx(
        float(motion_at(subject.linkage, BUMP, np.radians(-6.0)).steer)
    )
    assert grid.steer[1, 4] == pytest.approx(0.0, abs=1e-12)


def test_splits_add_up_to_the_steer(subject, session):
    for split, heave in zip(splits(subject.linkage, session.limits), (-50.8, 50.8), strict=True):
        assert split.heave == pytest.approx(heave)
        whole = split.not_parallel + split.slope_and_length
        assert whole == pytest.approx(float(motion_at(subject.linkage, heave).steer))
        gradient = derivatives(subject.linkage).gradient
        assert split.not_parallel == pytest.approx(float(gradient) * heave)


def test_parallel_links_unlike_in_length_owe_nothing_to_the_angle(session):
    for split in splits(parallel_pair(run_ratio=0.7), session.limits):
        assert split.not_parallel == pytest.approx(0.0, abs=1e-12)
        assert abs(split.slope_and_length) > 1e-3
