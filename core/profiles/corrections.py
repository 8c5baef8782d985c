"""Corrections: rises of one pivot that a workshop can make."""

from dataclasses import dataclass

from core.kinematics.pivots import PIVOTS, RIDE_HEIGHT

MOVABLE = (*PIVOTS, RIDE_HEIGHT)
"""Every pivot that a correction can move, and the ride height."""


@dataclass(frozen=True)
class Correction:
    """A way to move one pivot, with the rises on offer.

    Attributes
    ----------
    name : str
    pivot : str
        "track_bar.frame", "track_bar.axle", "drag_link.frame", "drag_link.axle", or
        "ride_height", which moves both frame ends.
    rises : tuple of float
        Rises on offer, from the pivot's present height, up positive, mm.
    caution : str
        Printed with every plan that uses the correction.
    not_with : tuple of str
        Names of the corrections that exclude this one.
    """

    name: str
    pivot: str
    rises: tuple[float, ...]
    caution: str = ""
    not_with: tuple[str, ...] = ()
