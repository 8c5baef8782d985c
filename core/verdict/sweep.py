"""The sweep over the whole travel at 41 heaves, and the articulation over heave and roll."""

from dataclasses import dataclass

import numpy as np

from core.kinematics.linkage import Array, Linkage
from core.kinematics.motion import motion_at, steering_wheel_angle
from core.kinematics.series import derivatives
from core.profiles.limits import Limits
from core.uncertainty.propagation import MeasuredLinkage
from core.verdict.curves import HEAVES

ROLLS = np.radians(np.linspace(-8.0, 8.0, 9))
"""Rolls of the articulation map, rad."""


@dataclass(frozen=True, eq=False)
class Sweep:
    """Motion over the travel in heave; arrays (41,), nan where a link cannot reach.

    Attributes
    ----------
    heave, axle_shift : mm
    steer, steer_u, toe_in_change, steering_wheel : rad
        `steer_u` is the standard uncertainty of `steer`, by linear propagation.
    """

    heave: Array
    axle_shift: Array
    steer: Array
    steer_u: Array
    toe_in_change: Array
    steering_wheel: Array


@dataclass(frozen=True, eq=False)
class Articulation:
    """Steer over roll and heave.

    Attributes
    ----------
    roll : array (9,), rad
    heave : array (3,), mm
        Full droop, ride height, full bump.
    steer : array (3, 9), rad
        Rows by heave.
    """

    roll: Array
    heave: Array
    steer: Array


@dataclass(frozen=True)
class Split:
    """The steer at one end of the working travel, parted by cause, rad.

    Attributes
    ----------
    heave : float
        mm
    not_parallel : float
        The linear term of the series at ride height.
    slope_and_length : float
        The rest of the steer.
    """

    heave: float
    not_parallel: float
    slope_and_length: float


def sweep(measured: MeasuredLinkage, droop: float, bump: float) -> Sweep:
    """The motion of a measured linkage from full droop to full bump."""
    heave = np.linspace(-droop, bump, HEAVES)
    motion = motion_at(measured.linkage, heave)
    gradient = measured.gradient(lambda linkage: motion_at(linkage.with_heave_axis(), heave).steer)
    return Sweep(
        heave,
        motion.axle_shift,
        motion.steer,
        measured.u(gradient),
        motion.toe_in_change,
        steering_wheel_angle(measured.linkage, heave),
    )


def articulation(linkage: Linkage, droop: float, bump: float) -> Articulation:
    """Steer over the rolls of the map at full droop, ride height and full bump."""
    heave = np.array([-droop, 0.0, bump])
    return Articulation(ROLLS, heave, motion_at(linkage, heave[:, None], ROLLS).steer)


def splits(linkage: Linkage, limits: Limits) -> tuple[Split, Split]:
    """Splits at both ends of the working travel, droop first."""
    ends = np.array([-limits.working_droop, limits.working_bump])
    linear = derivatives(linkage).gradient * ends
    rest = motion_at(linkage, ends).steer - linear
    first, second = (
        Split(float(heave), float(one), float(other))
        for heave, one, other in zip(ends, linear, rest, strict=True)
    )
    return first, second
