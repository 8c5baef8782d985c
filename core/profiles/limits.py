"""Limits that a verdict compares with. They belong to the profile; a record keeps a copy."""

from dataclasses import dataclass

from core.documents.entries import EntryError
from core.text.quantity import parse_angle, parse_length

LARGEST_ANGLE = parse_angle("45 deg")
"""rad; a limit beyond it would let every axle pass."""

LARGEST_WORKING_TRAVEL = parse_length("24 in")
"""mm; no axle travels further in ordinary driving."""


@dataclass(frozen=True)
class Limits:
    """Limits of one kind of vehicle.

    Attributes
    ----------
    parallel : float
        Largest angle between the two links, rad.
    flat : float
        Largest slope of either link, rad.
    length_ratio : float
        Smallest ratio of the shorter link to the longer one.
    steer : float
        Largest steer over the working travel with the steering wheel held, rad.
    toe_change : float
        Largest total toe-in change over the working travel, rad.
    working_bump, working_droop : float
        The travel that ordinary driving uses, from ride height, mm.
    """

    parallel: float
    flat: float
    length_ratio: float
    steer: float
    toe_change: float
    working_bump: float
    working_droop: float


def refuse_impossible_limits(limits: Limits) -> None:
    """Raise EntryError for the first limit that is too large to be one."""
    refuse_impossible_length_ratio(limits.length_ratio)
    for key in ("parallel", "flat", "steer", "toe_change"):
        if getattr(limits, key) > LARGEST_ANGLE:
            raise EntryError(f"limits.{key}", 'should be at most 45 deg, such as "1.5 deg"')
    for direction in ("bump", "droop"):
        if getattr(limits, f"working_{direction}") > LARGEST_WORKING_TRAVEL:
            path = f"limits.working_travel.{direction}"
            raise EntryError(path, 'should be at most 24 in, such as "2 in"')


def refuse_impossible_length_ratio(limit: float) -> None:
    """Raise EntryError for a limit above 1: the ratio is of the shorter link to the longer one."""
    if limit > 1:
        raise EntryError(
            "limits.length_ratio",
            "should be at most 1: it is the ratio of the shorter link to the longer one",
        )
