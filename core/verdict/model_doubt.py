"""The model's own uncertainty: bushes give, a tie rod is not quite a parallelogram.

The left and the right side of an axle are no mirror images either. Steer results carry 5 % of
their value and 0.02 deg in quadrature for it. The tests hold that figure to an independent model of
the full axle with its bushes.
"""

from math import radians

import numpy as np

from core.kinematics.vectors import Array, Scalars

SHARE = 0.05
"""Part of a steer result that the model leaves open, as a standard uncertainty."""

FLOOR = radians(0.02)
"""Standard uncertainty of every steer result, rad."""


def model_uncertainty(steer: Scalars) -> Array:
    """Standard uncertainty of a steer result that comes from the model, rad."""
    return np.asarray(np.hypot(SHARE * np.abs(steer), FLOOR))
