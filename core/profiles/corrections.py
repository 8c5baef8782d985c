"""Corrections: rises of one pivot that a workshop can make."""

from dataclasses import dataclass

from core.kinematics.pivots import PIVOTS, RIDE_HEIGHT

MOVABLE = (*PIVOTS, RIDE_HEIGHT)
"""Everything that a correction can move."""


@dataclass(frozen=True)
class Correction:
    """A correction that a workshop can make.

    Attributes
    ----------
    name : str
    pivot : str
        "track_bar.frame", "track_bar.axle", "drag_link.frame", "drag_link.axle", or
        "ride_height", which moves both frame ends.
    rises : tuple of float
        Rises on offer, relative to where the pivot is now, up positive, mm.
    caution : str
        Said with every plan that uses it.
    not_with : tuple of str
        Names of corrections it cannot be combined with.
    """

    name: str
    pivot: str
    rises: tuple[float, ...]
    caution: str = ""
    not_with: tuple[str, ...] = ()
