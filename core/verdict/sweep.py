"""Motion over the full travel: 41 heaves from full droop to full bump, and roll."""

from dataclasses import dataclass

import numpy as np

from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at, steering_wheel_angle
from core.kinematics.series import derivatives
from core.kinematics.vectors import Array
from core.profiles.limits import Limits
from core.uncertainty.propagation import MeasuredLinkage
from core.verdict.curves import HEAVES
from core.verdict.model_doubt import model_uncertainty

ROLLS = np.radians(np.linspace(-8.0, 8.0, 9))
"""Rolls of the articulation map, rad."""


@dataclass(frozen=True, eq=False)
class Sweep:
    """Motion over the travel in heave; arrays (41,), nan where a link binds.

    Attributes
    ----------
    heave, axle_shift, axle_ahead : array (41,), mm
    axle_pitch : array (41,), rad
        Positive where the top of the axle goes ahead.
    steer, steer_u, toe_in_change, steering_wheel : array (41,), rad
        `steer_u` is the standard uncertainty of `steer`, by linear propagation, with the model's.
    """

    heave: Array
    axle_shift: Array
    axle_ahead: Array
    axle_pitch: Array
    steer: Array
    steer_u: Array
    toe_in_change: Array
    steering_wheel: Array


@dataclass(frozen=True, eq=False)
class Articulation:
    """Steer at combinations of roll and heave.

    Attributes
    ----------
    roll : array (9,), rad
    heave : array (3,), mm
        Full droop, ride height, full bump.
    steer, yaw : array (3, 9), rad
        Steer, and the axle turned to the left; one row for each heave.
    """

    roll: Array
    heave: Array
    steer: Array
    yaw: Array


@dataclass(frozen=True)
class Split:
    """Steer at one end of the working travel, split by its causes.

    Attributes
    ----------
    heave : float
        mm
    not_parallel : float
        Steer by the linear term of the series at ride height, rad.
    slope_and_length : float
        Remaining steer, rad.
    """

    heave: float
    not_parallel: float
    slope_and_length: float


def sweep(measured: MeasuredLinkage, droop: float, bump: float) -> Sweep:
    """Motion of a measured linkage from full droop to full bump, both in mm from ride height."""
    heave = np.linspace(-droop, bump, HEAVES)
    motion = motion_at(measured.linkage, heave)
    gradient = measured.gradient(lambda linkage: motion_at(linkage.with_heave_axis(), heave).steer)
    return Sweep(
        heave,
        motion.axle_shift,
        motion.axle_ahead,
        motion.axle_pitch,
        motion.steer,
        np.hypot(measured.standard_uncertainty(gradient), model_uncertainty(motion.steer)),
        motion.toe_in_change,
        steering_wheel_angle(measured.linkage, heave),
    )


def articulation(linkage: Linkage, droop: float, bump: float) -> Articulation:
    """Steer at each of ROLLS, at full droop, ride height and full bump (mm from ride height)."""
    heave = np.array([-droop, 0.0, bump])
    motion = motion_at(linkage, heave[:, None], ROLLS)
    return Articulation(ROLLS, heave, motion.steer, motion.axle_yaw)


def splits(linkage: Linkage, limits: Limits) -> tuple[Split, Split]:
    """Steer at both ends of the working travel, split by its causes; droop first."""
    ends = np.array([-limits.working_droop, limits.working_bump])
    linear = derivatives(linkage).gradient * ends
    remaining = motion_at(linkage, ends).steer - linear
    droop, bump = (
        Split(*values)
        for values in zip(ends.tolist(), linear.tolist(), remaining.tolist(), strict=True)
    )
    return droop, bump
