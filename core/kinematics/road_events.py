"""Events on the road: a dip, a hard stop with nose dive.

The mean steer of the event drives the linear single-track model with two degrees of freedom,
sideslip and yaw rate (P. Riekert and T. E. Schunck, Zur Fahrmechanik des gummibereiften
Kraftfahrzeugs, 1940, from memory). Axes and signs follow ISO 8855:2011. The driver holds the
steering wheel still.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at
from core.kinematics.vectors import Array

STEPS = 100
"""Time steps in each part of an event; drift and heading are then good to some 1e-3."""

STANDSTILL = 10.0
"""mm/s; a vehicle that is slower has stopped."""


@dataclass(frozen=True)
class Event:
    """A passage of suspension travel on the road.

    The axle heaves by `travel` along a raised cosine in `rise` seconds, stays for `hold`
    seconds, and goes back along the same curve where the event `returns`.

    Attributes
    ----------
    name : str
    rise, hold : float
        s
    returns : bool
    travel : float
        Heave at the top of the event, mm; positive is bump (a nose that dives).
    speed : float
        Speed at the start, mm/s.
    deceleration : float
        mm/s2; the speed does not go below 0.
    windup, windup_within : float
        Pitch that the brakes add to the axle, and its half-width, rad.
    """

    name: str
    rise: float
    hold: float
    returns: bool
    travel: float
    speed: float
    deceleration: float
    windup: float = 0.0
    windup_within: float = 0.0


@dataclass(frozen=True)
class Road:
    """Handling of a vehicle on the road.

    Attributes
    ----------
    mass : float
        kg
    front_share : float
        Share of the weight on the front axle, 0 to 1.
    cornering_front, cornering_rear : float
        Cornering stiffness of an axle's tyres together, N/rad.
    """

    mass: float
    front_share: float
    cornering_front: float
    cornering_rear: float


@dataclass(frozen=True)
class Course:
    """Course of the vehicle through an event; nan where a link cannot reach the event's travel.

    Attributes
    ----------
    name : str
    drift : float
        Sideways drift at the end, to the left positive, mm.
    heading : float
        Change of heading at the end, to the left positive, rad.
    drift_within : float
        Half-width of the drift that comes from the half-width of the wind-up, mm.
    """

    name: str
    drift: float
    heading: float
    drift_within: float = 0.0


def drive(event: Event, linkage: Linkage, wheelbase: float, road: Road) -> Course:
    """Heading and sideways drift at the end of an event.

    Parameters
    ----------
    event : Event
    linkage : Linkage
        No leading axes.
    wheelbase : float
        mm
    road : Road
    """
    time = _times(event)
    heave = heave_at(event, time)
    speed = np.maximum(event.speed - event.deceleration * time, 0.0)

    def course(windup: float) -> tuple[float, float]:
        steer = motion_at(linkage, heave, windup=windup).steer
        return single_track(time, speed / 1000, steer, wheelbase / 1000, road)

    windup = event.windup if event.deceleration else 0.0
    drift, heading = course(windup)
    within = 0.0
    if event.deceleration and event.windup_within:
        within = abs(course(windup + event.windup_within)[0] - drift)
    return Course(event.name, drift * 1000, heading, within * 1000)


def _times(event: Event) -> Array:
    """Times of an event's steps, s, from its start until its end or the vehicle's stop."""
    ends = np.cumsum([0.0, event.rise, event.hold, *([event.rise] if event.returns else [])])
    if event.deceleration:
        ends = np.minimum(ends, (event.speed - STANDSTILL) / event.deceleration)
    parts = [
        np.linspace(start, end, STEPS, endpoint=False)
        for start, end in pairwise(ends)
        if end > start
    ]
    return np.append(np.concatenate(parts), ends[-1]) if parts else np.zeros(1)


def heave_at(event: Event, time: Array) -> Array:
    """Heave at some times of an event, mm."""
    back = event.rise + event.hold
    up = np.clip(time / event.rise, 0.0, 1.0)
    down = np.clip((time - back) / event.rise, 0.0, 1.0) if event.returns else 0.0
    return np.asarray(event.travel / 2 * (np.cos(np.pi * down) - np.cos(np.pi * up)))


def single_track(
    time: Array, speed: Array, steer: Array, wheelbase: float, road: Road
) -> tuple[float, float]:
    """Drift (m) and heading (rad) of the single-track model at the end of a manoeuvre.

    The trapezoidal rule for sideways speed and yaw rate: it stays stable as the speed falls.

    Parameters
    ----------
    time, speed, steer : array (n,)
        s, m/s above zero, rad.
    wheelbase : float
        m
    road : Road
    """
    front = wheelbase * (1 - road.front_share)  # from the centre of gravity to the front axle
    rear = wheelbase * road.front_share
    inertia = road.mass * front * rear
    stiff_f, stiff_r = road.cornering_front, road.cornering_rear
    sideways = yaw_rate = heading = drift = 0.0
    rates = np.array(
        [
            -(stiff_f + stiff_r) / road.mass / speed,
            (rear * stiff_r - front * stiff_f) / road.mass / speed - speed,
            (rear * stiff_r - front * stiff_f) / inertia / speed,
            -(front**2 * stiff_f + rear**2 * stiff_r) / inertia / speed,
            stiff_f / road.mass * steer,
            front * stiff_f / inertia * steer,
        ]
    ).T.tolist()
    steps, speeds = np.diff(time).tolist(), speed.tolist()
    a, b, c, d, e, f = rates[0]
    for step, (a_, b_, c_, d_, e_, f_), v, v_ in zip(
        steps, rates[1:], speeds[:-1], speeds[1:], strict=True
    ):
        half = step / 2
        right_1 = sideways + half * (a * sideways + b * yaw_rate + e + e_)
        right_2 = yaw_rate + half * (c * sideways + d * yaw_rate + f + f_)
        m11, m12, m21, m22 = 1 - half * a_, -half * b_, -half * c_, 1 - half * d_
        determinant = m11 * m22 - m12 * m21
        sideways_ = (right_1 * m22 - m12 * right_2) / determinant
        yaw_rate_ = (m11 * right_2 - m21 * right_1) / determinant
        heading_ = heading + half * (yaw_rate + yaw_rate_)
        drift += half * (v * heading + v_ * heading_ + sideways + sideways_)
        sideways, yaw_rate, heading = sideways_, yaw_rate_, heading_
        a, b, c, d, e, f = a_, b_, c_, d_, e_, f_
    return drift, heading
