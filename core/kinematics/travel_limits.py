"""Travel limits: the heave at which a link binds, so that the axle can move no further."""

import numpy as np

from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at

HALVINGS = 40
"""Halvings of a step of the sweep; they give the limit to well under a micrometre."""


def travel_limits(linkage: Linkage, droop: float, bump: float) -> tuple[float | None, float | None]:
    """Heaves, mm, at which a link binds on the way down and on the way up; None where none does.

    Parameters
    ----------
    linkage : Linkage
        No leading axes.
    droop, bump : float
        Travel down and up from ride height, mm.
    """
    return _limit(linkage, -droop), _limit(linkage, bump)


def _limit(linkage: Linkage, end: float) -> float | None:
    heave = np.linspace(0.0, end, 81)
    bound = ~np.isfinite(motion_at(linkage, heave).steer)
    if not bound.any():
        return None
    first = int(np.argmax(bound))
    free, stuck = float(heave[first - 1]), float(heave[first])
    for _ in range(HALVINGS):
        middle = (free + stuck) / 2
        if np.isfinite(motion_at(linkage, middle).steer):
            free = middle
        else:
            stuck = middle
    return free
