"""Events on the road: a dip, a hard stop with nose dive.

The result is a kinematic estimate: the wheels go where they point (no tyre slip), no part gives
(no compliance), and the driver holds the steering wheel still.
"""

from dataclasses import dataclass

import numpy as np

from core.kinematics.linkage import Array, Linkage
from core.kinematics.motion import motion_at

STEPS = 100
"""Time steps in each part of an event, an even number; drift and heading are then good to some
1e-7 of themselves."""


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
    """

    name: str
    drift: float
    heading: float


def drive(event: Event, linkage: Linkage, wheelbase: float) -> Course:
    """Heading and sideways drift at the end of an event.

    heading' = v tan(mean steer) / wheelbase and drift' = v sin(heading), from a heave that rises
    and falls as a raised cosine and a speed that falls steadily; by Simpson's rule.
    """
    ends = np.cumsum([0.0, event.rise, event.hold, *([event.rise] if event.returns else [])])
    if event.deceleration:  # the time after the vehicle has stopped is a part of its own
        ends = np.sort([*ends, min(event.speed / event.deceleration, ends[-1])])
    time = np.linspace(ends[:-1], ends[1:], STEPS + 1, axis=-1)
    steer = motion_at(linkage, heave_at(event, time)).steer
    speed = np.maximum(event.speed - event.deceleration * time, 0.0)
    heading = _integral(speed * np.tan(steer) / wheelbase, time)
    drift = _integral(speed * np.sin(heading), time)
    return Course(event.name, float(drift[-1, -1]), float(heading[-1, -1]))


def heave_at(event: Event, time: Array) -> Array:
    """Heave at some times of an event, mm."""
    back = event.rise + event.hold
    up = np.clip(time / event.rise, 0.0, 1.0)
    down = np.clip((time - back) / event.rise, 0.0, 1.0) if event.returns else 0.0
    return np.asarray(event.travel / 2 * (np.cos(np.pi * down) - np.cos(np.pi * up)))


def _integral(rate: Array, time: Array) -> Array:
    """Integral of a rate up to each time; arrays (parts, STEPS + 1) of equal steps."""
    step = np.diff(time[:, :2])
    first, middle, last = rate[:, :-2:2], rate[:, 1::2], rate[:, 2::2]
    strips = np.empty((len(time), STEPS))
    # The parabola through three rates, over the first half of its span and over the second.
    strips[:, ::2] = step / 12 * (5 * first + 8 * middle - last)
    strips[:, 1::2] = step / 12 * (5 * last + 8 * middle - first)
    added = np.cumsum(strips, axis=-1)
    before = np.cumsum(added[:, -1]) - added[:, -1]
    return np.asarray(before[:, None] + np.concatenate([np.zeros((len(time), 1)), added], axis=-1))
