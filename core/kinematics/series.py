"""Derivatives of the motion at ride height: the three rules are its first and second order.

With an upright kingpin, no pitch and both ends of each link at the same station they are

- d(axle shift)/dz = -tan(slope_T): a flat track bar does not walk sideways;
- d(steer)/dz = (tan(slope_T) - tan(slope_D)) / (e a): parallel links do not steer;
- d2(axle shift)/dz2 = 1 / (D_T cos^2 slope_T), D the lateral run y_f - y_a: the arc;
- d2(steer)/dz2 = (1/(D_D cos^2 slope_D) - 1/(D_T cos^2 slope_T)) / (e a): equal runs and slopes
  cancel it, frame ends on opposite sides add up.

All guides and layouts take differences of the exact model at seven places. Their error is some
1e-12 of the derivative.
"""

from dataclasses import dataclass

import numpy as np

from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at
from core.kinematics.vectors import Array

HEAVE_STEP = 4.0
"""mm between the heaves of a derivative."""

ROLL_STEP = 0.005
"""rad between the rolls of a derivative."""

PLACES = np.arange(-3.0, 4.0)
"""Places of the seven values, in steps from ride height."""

_FIRST = np.array([-1, 9, -45, 0, 45, -9, 1]) / 60
_SECOND = np.array([2, -27, 270, -490, 270, -27, 2]) / 180


@dataclass(frozen=True, eq=False)
class Derivatives:
    """Arrays (...) of the linkage's leading shape.

    Attributes
    ----------
    axle_walk : mm/mm
    axle_arc : mm/mm2
    gradient : mean steer, rad/mm
    curvature : mean steer, rad/mm2
    """

    axle_walk: Array
    axle_arc: Array
    gradient: Array
    curvature: Array


def derivatives(linkage: Linkage) -> Derivatives:
    """First and second derivative of axle shift and mean steer by heave, at ride height."""
    motion = motion_at(linkage.with_heave_axis(), HEAVE_STEP * PLACES)
    walk, arc = by_heave(motion.axle_shift)
    gradient, curvature = by_heave(motion.steer)
    return Derivatives(walk, arc, gradient, curvature)


def roll_steer(linkage: Linkage) -> Array:
    """Derivative of the mean steer by roll at ride height, array (...), rad/rad."""
    motion = motion_at(linkage.with_heave_axis(), 0.0, ROLL_STEP * PLACES)
    return np.asarray(motion.steer @ _FIRST / ROLL_STEP)


def by_heave(values: Array) -> tuple[Array, Array]:
    """First and second derivative by heave of values (..., 7) at HEAVE_STEP * PLACES."""
    return values @ _FIRST / HEAVE_STEP, values @ _SECOND / HEAVE_STEP**2
