"""Road events against scipy's solve_ivp, and against the steady state of the single-track model.

m (vy' + v r) = F_f + F_r and I r' = a F_f - b F_r, with F_f = C_f (steer - (vy + a r)/v) and
F_r = -C_r (vy - b r)/v (P. Riekert and T. E. Schunck 1940, from memory; axes of ISO 8855:2011).
The raised cosine of the heave and the steady loss of speed are written here as functions of time.
"""

from itertools import pairwise
from math import cos, pi

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from core.kinematics.motion import motion_at
from core.kinematics.road_events import Event, Road, drive, single_track
from tests.geometries import LAYOUTS, random_linkage

WHEELBASE = 2800.0
ROAD = Road(mass=2300.0, front_share=0.55, cornering_front=95e3, cornering_rear=110e3)
EVENTS = [
    Event("dip", 0.25, 0.1, True, 50.8, 60e3 / 3.6, 0.0),
    Event("hump", 0.2, 0.0, True, -60.0, 20e3, 1000.0),
    Event("hard stop", 0.5, 1.5, False, 38.1, 80e3 / 3.6, 7000.0, windup=0.0087),
    Event("a stop before the nose is down", 1.0, 0.5, True, 70.0, 5e3, 6000.0),
]


@pytest.mark.parametrize("event", EVENTS, ids=lambda event: event.name)
@pytest.mark.parametrize("layout", LAYOUTS)
def test_drift_and_heading(event, layout):
    linkage = random_linkage(np.random.default_rng(7), layout)
    front, rear = 2.8 * (1 - ROAD.front_share), 2.8 * ROAD.front_share
    inertia = ROAD.mass * front * rear

    def heave(t):
        if t < event.rise:
            return event.travel * (1 - cos(pi * t / event.rise)) / 2
        if t < event.rise + event.hold:
            return event.travel
        left = 2 * event.rise + event.hold - t
        return event.travel * (1 - cos(pi * left / event.rise)) / 2

    def rates(t, state):
        sideways, yaw_rate, heading, _ = state
        speed = (event.speed - event.deceleration * t) / 1000
        windup = event.windup if event.deceleration else 0.0
        steer = float(motion_at(linkage, heave(t), windup=windup).steer)
        front_force = ROAD.cornering_front * (steer - (sideways + front * yaw_rate) / speed)
        rear_force = -ROAD.cornering_rear * (sideways - rear * yaw_rate) / speed
        return [
            (front_force + rear_force) / ROAD.mass - speed * yaw_rate,
            (front * front_force - rear * rear_force) / inertia,
            yaw_rate,
            speed * heading + sideways,
        ]

    # The solver goes from corner to corner, so that no step contains a kink.
    corners = [0.0, event.rise, event.rise + event.hold]
    if event.returns:
        corners.append(2 * event.rise + event.hold)
    if event.deceleration:  # 10 mm/s counts as standing still
        stop = (event.speed - 10.0) / event.deceleration
        corners = [*(corner for corner in corners if corner < stop), min(stop, corners[-1])]
    state = [0.0] * 4
    for start, end in pairwise(sorted(set(corners))):
        solved = solve_ivp(rates, (start, end), state, method="LSODA", rtol=1e-9, atol=1e-12)
        state = solved.y[:, -1]

    course = drive(event, linkage, WHEELBASE, ROAD)
    largest = np.abs(motion_at(linkage, event.travel).steer)
    assert course.heading == pytest.approx(state[2], rel=2e-3, abs=1e-3 * largest)
    assert course.drift == pytest.approx(state[3] * 1000, rel=2e-3, abs=0.05)


@pytest.mark.parametrize("speed", [5.0, 16.0, 25.0])
def test_the_steady_yaw_rate_is_that_of_the_handbook(speed):
    """v steer / (L + K v^2), K the understeer gradient (from memory)."""
    steer, wheelbase = 0.01, 2.8
    time = np.linspace(0.0, 6.0, 1201)
    headings = [
        single_track(part, np.full(part.size, speed), np.full(part.size, steer), wheelbase, ROAD)[1]
        for part in (time, time[:-200])
    ]
    rate = (headings[0] - headings[1]) / (time[-1] - time[-201])
    load_front, load_rear = ROAD.mass * ROAD.front_share, ROAD.mass * (1 - ROAD.front_share)
    gradient = load_front / ROAD.cornering_front - load_rear / ROAD.cornering_rear
    assert rate == pytest.approx(speed * steer / (wheelbase + gradient * speed**2), rel=1e-4)
