"""Road events checked against scipy's solve_ivp.

heading' = v tan(mean steer) / wheelbase, drift' = v sin(heading). The raised cosine of the heave
and the steady loss of speed are written here as functions of time.
"""

from itertools import pairwise
from math import cos, pi, sin, tan

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from core.kinematics.motion import motion_at
from core.kinematics.road_events import Event, drive
from tests.geometries import LAYOUTS, random_linkage

WHEELBASE = 2800.0
EVENTS = [
    Event("dip", 0.25, 0.1, True, 50.8, 60e3 / 3.6, 0.0),
    Event("hump", 0.2, 0.0, True, -60.0, 20e3, 1000.0),
    Event("hard stop", 0.5, 1.5, False, 38.1, 80e3 / 3.6, 7000.0),
    Event("a stop before the nose is down", 1.0, 0.5, True, 70.0, 5e3, 6000.0),
]


@pytest.mark.parametrize("event", EVENTS, ids=lambda event: event.name)
@pytest.mark.parametrize("layout", LAYOUTS)
def test_drift_and_heading(event, layout):
    linkage = random_linkage(np.random.default_rng(7), layout)

    def heave(t):
        if t < event.rise:
            return event.travel * (1 - cos(pi * t / event.rise)) / 2
        if t < event.rise + event.hold:
            return event.travel
        left = 2 * event.rise + event.hold - t
        return event.travel * (1 - cos(pi * left / event.rise)) / 2

    def rates(t, state):
        speed = max(event.speed - event.deceleration * t, 0.0)
        steer = float(motion_at(linkage, heave(t)).steer)
        return [speed * tan(steer) / WHEELBASE, speed * sin(state[0])]

    # The solver goes from corner to corner, so that no step contains a kink.
    corners = [0.0, event.rise, event.rise + event.hold]
    if event.returns:
        corners.append(2 * event.rise + event.hold)
    if event.deceleration:
        corners.append(min(event.speed / event.deceleration, corners[-1]))
    corners = sorted(set(corners))
    state = [0.0, 0.0]
    for start, end in pairwise(corners):
        state = solve_ivp(rates, (start, end), state, rtol=1e-11, atol=1e-12).y[:, -1]

    course = drive(event, linkage, WHEELBASE)
    assert course.heading == pytest.approx(state[0], rel=2e-7)
    assert course.drift == pytest.approx(state[1], rel=2e-7)
