"""Effect on the driver: steer with the steering wheel held, and its swing when let go."""

from dataclasses import dataclass

from core.kinematics.motion import motion_at, steering_wheel_angle
from core.verdict.verdict import Verdict


@dataclass(frozen=True)
class DriverEffect:
    """Steer and swing of the steering wheel at the heave of the peak steer.

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
    """Effect of a vehicle with this verdict on its driver."""
    heave, linkage = verdict.steer.at_heave, verdict.measured.linkage
    return DriverEffect(
        heave, float(motion_at(linkage, heave).steer), float(steering_wheel_angle(linkage, heave))
    )
