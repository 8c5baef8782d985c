"""Effect of the travel on the driver: steer with the wheel held, wheel swing when let go."""

from dataclasses import dataclass

import numpy as np

from core.kinematics.motion import motion_at, steering_wheel_angle
from core.verdict.direct_check import wheel_per_steer
from core.verdict.verdict import Verdict


@dataclass(frozen=True)
class DriverEffect:
    """Steer and steering-wheel swing at the heave of the largest steer in the working travel.

    Attributes
    ----------
    heave : float
        mm, bump positive.
    steer : float
        Mean steer of both wheels with the steering wheel held, to the left positive, rad.
    steering_wheel : float
        Swing of the steering wheel with the road wheels straight, to the left positive, rad.
    """

    heave: float
    steer: float
    steering_wheel: float


def driver_effect(verdict: Verdict) -> DriverEffect:
    """Steer and steering-wheel swing at the peak steer of a verdict.

    Where the steer was measured, the measured steer counts, and the swing follows it.
    """
    heave, linkage = verdict.steer.at_heave, verdict.measured.linkage
    steer = float(motion_at(linkage, heave).steer)
    swing = float(steering_wheel_angle(linkage, heave))
    if verdict.direct is None:
        return DriverEffect(heave, steer, swing)
    curve = verdict.direct.curve
    measured = float(curve[np.argmax(np.abs(curve))])
    return DriverEffect(heave, measured, swing - (measured - steer) * wheel_per_steer(linkage))
