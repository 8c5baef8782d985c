"""Priors in place of stations that were not taken."""

import pytest

from core.adjustment.prior import station_priors
from tests.geometries import INCH

PIVOTS = ("track_bar.frame", "track_bar.axle", "drag_link.frame", "drag_link.axle")
STATIONS = {f"{pivot}.station" for pivot in PIVOTS}


def priors_of(
    taken, *, has_track_bar=True, ball: float | None = 160.0, has_near_ball=False, fore_aft=False
):
    """The priors by name."""
    priors = station_priors(set(taken), has_track_bar, ball, has_near_ball, fore_aft)
    by_name = {prior.name: prior for prior in priors}
    assert len(by_name) == len(priors)
    return by_name


def test_stations_that_were_taken_need_no_prior():
    assert priors_of(STATIONS) == {}


def test_without_both_stations_the_track_bar_has_a_mean_and_a_difference():
    priors = priors_of(STATIONS - {"track_bar.frame.station", "track_bar.axle.station"})
    mean, alike = priors["track_bar.frame.station"], priors["track_bar.axle.station"]
    assert mean.coefficients == {"track_bar.frame.x": 0.5, "track_bar.axle.x": 0.5}
    assert (mean.value, mean.u) == (0.0, pytest.approx(5 * INCH / 3**0.5))
    assert set(alike.coefficients.values()) == {1.0, -1.0}
    assert (alike.value, alike.u) == (0.0, pytest.approx(2 * INCH / 3**0.5))


@pytest.mark.parametrize("missing", ["track_bar.frame.station", "track_bar.axle.station"])
def test_without_one_station_the_track_bar_has_the_difference_alone(missing):
    (prior,) = priors_of(STATIONS - {missing}).values()
    assert prior.name == missing
    assert set(prior.coefficients) == {"track_bar.frame.x", "track_bar.axle.x"}


def test_the_ball_stands_at_the_end_of_its_arm():
    (prior,) = priors_of(STATIONS - {"drag_link.axle.station"}, ball=-160.0).values()
    assert prior.coefficients == {"drag_link.axle.x": 1.0}
    assert (prior.value, prior.u) == (-160.0, pytest.approx(1.5 * INCH / 3**0.5))


def test_the_frame_end_and_the_near_ball_stand_beside_the_ball():
    priors = priors_of(STATIONS - {"drag_link.frame.station"}, has_near_ball=True)
    frame, near = priors["drag_link.frame.station"], priors["tie_rod.near.station"]
    assert frame.coefficients == {"drag_link.frame.x": 1.0, "drag_link.axle.x": -1.0}
    assert near.coefficients == {"tie_rod.near.x": 1.0, "drag_link.axle.x": -1.0}
    assert (frame.u, near.u) == pytest.approx((2 * INCH / 3**0.5, INCH / 3**0.5))


def test_a_vehicle_without_a_track_bar_has_no_prior_for_it():
    assert priors_of((), has_track_bar=False).keys() == {
        "drag_link.axle.station",
        "drag_link.frame.station",
    }


def test_a_link_that_runs_fore_and_aft_has_no_prior():
    assert priors_of((), has_track_bar=False, ball=None, fore_aft=True) == {}
