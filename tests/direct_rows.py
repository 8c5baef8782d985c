"""Direct checks of known steer, as their documents would give them."""

import numpy as np

from core.kinematics.motion import LEFT, motion_at
from core.readings.direct import DirectCheck, DirectRow
from core.text.quantity import INCH

BOARD = 36 * INCH
RIDE = 30 * INCH
AT = np.array([0.0, 1.0, 2.0, 3.0, -1.0, -2.0, -3.0, 0.0]) * INCH
"""Heaves of the rows, ride height first and last, mm."""

GOING = ("", "up", "up", "up", "down", "down", "down", "")


def board_check(steer, heave=AT, going=None, sides=("left",), line="left"):
    """A board check of some steer.

    Parameters
    ----------
    steer : array (n,) or callable
        Steer, rad, or a function of heave.
    """
    steer = steer(np.asarray(heave)) if callable(steer) else steer
    going = going or ("",) * len(heave)
    towards = 1 if line == "left" else -1
    rows = tuple(
        DirectRow(
            side=side,
            height=(RIDE - float(place),),
            front=(12 * INCH - towards * BOARD / 2 * float(np.tan(turn)),),
            rear=(12 * INCH + towards * BOARD / 2 * float(np.tan(turn)),),
            going=way,
        )
        for place, turn, way in zip(heave, steer, going, strict=True)
        for side in sides
    )
    return DirectCheck("board", BOARD, line, rows)


def steer_of_left(linkage):
    """Steer of the left wheel by the pivots, a function of heave."""

    def steer(heave):
        motion = motion_at(linkage, heave)
        return motion.far_steer if linkage.far_side == LEFT else motion.near_steer

    return steer
