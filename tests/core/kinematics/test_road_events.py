"""Shape of an event; test_against_ode checks drift and heading."""

from dataclasses import replace

import numpy as np
import pytest

from core.kinematics.road_events import Event, Road, drive, heave_at
from tests.geometries import parallel_pair

ROAD = Road(mass=2300.0, front_share=0.55, cornering_front=95e3, cornering_rear=110e3)
DIP = Event("dip", 0.2, 0.1, True, 50.0, 20e3, 0.0)
DIVE = Event("dive", 0.5, 1.0, False, 40.0, 20e3, 7e3)


def test_heave_rises_and_returns_along_a_raised_cosine():
    times = np.array([0.0, 0.05, 0.1, 0.2, 0.25, 0.3, 0.4, 0.5])
    expected = [0, 25 * (1 - np.sqrt(0.5)), 25, 50, 50, 50, 25, 0]
    np.testing.assert_allclose(heave_at(DIP, times), expected, atol=1e-12)


def test_heave_stays_where_the_event_does_not_return():
    np.testing.assert_allclose(heave_at(DIVE, np.array([0.25, 0.5, 1.5])), [20, 40, 40])


def test_a_vehicle_without_bump_steer_goes_straight():
    course = drive(DIP, parallel_pair(), 2800.0, ROAD)
    assert course.name == "dip"
    assert course.drift == pytest.approx(0.0, abs=1e-9)
    assert course.heading == pytest.approx(0.0, abs=1e-12)


def test_steer_to_the_left_gives_drift_to_the_left():
    left = drive(DIP, parallel_pair(parallel_deg=-2.0), 2800.0, ROAD)
    right = drive(DIP, parallel_pair(parallel_deg=2.0), 2800.0, ROAD)
    assert left.drift > 0
    assert left.heading > 0
    assert right.drift < 0


def test_a_stopped_vehicle_does_not_drift():
    linkage = parallel_pair(parallel_deg=2.0)
    stop = replace(DIVE, deceleration=20e3, hold=1.0)
    longer = replace(stop, hold=3.0)
    assert drive(longer, linkage, 2800.0, ROAD).drift == pytest.approx(
        drive(stop, linkage, 2800.0, ROAD).drift, rel=1e-3
    )


def test_the_half_width_of_the_wind_up_is_that_of_the_drift():
    linkage = parallel_pair(parallel_deg=2.0)
    stop = replace(DIVE, deceleration=6e3, windup=0.02, windup_within=0.01)
    drifts = [
        drive(replace(stop, windup=windup, windup_within=0.0), linkage, 2800.0, ROAD).drift
        for windup in (0.02, 0.03)
    ]
    assert drive(stop, linkage, 2800.0, ROAD).drift_within == pytest.approx(
        abs(drifts[1] - drifts[0])
    )
    assert drive(replace(stop, deceleration=0.0), linkage, 2800.0, ROAD).drift_within == 0.0


def test_a_longer_wheelbase_turns_less():
    linkage = parallel_pair(parallel_deg=2.0)
    short, long = (drive(DIP, linkage, wheelbase, ROAD) for wheelbase in (2400.0, 4800.0))
    assert 0.4 < long.heading / short.heading < 0.9


def test_drift_and_heading_are_nan_out_of_reach_of_a_link():
    course = drive(
        replace(DIP, travel=400.0), parallel_pair(slope_deg=0.0, run=300.0), 2800.0, ROAD
    )
    assert np.isnan(course.drift)
    assert np.isnan(course.heading)
