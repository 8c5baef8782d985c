"""Effect of the travel on the driver: steer with the wheel held, wheel swing when let go."""

from dataclasses import dataclass

from core.kinematics.motion import motion_at, steering_wheel_angle
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
    """Steer and steering-wheel swing at the peak steer of a verdict."""
    heave, linkage = verdict.steer.at_heave, verdict.measured.linkage
    return DriverEffect(
        heave, float(motion_at(linkage, heave).steer), float(steering_wheel_angle(linkage, heave))
    )
