"""Limits that a verdict compares with. They belong to the profile; a record keeps a copy."""

from dataclasses import dataclass

from core.documents.entries import EntryError


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


def refuse_impossible_length_ratio(limit: float) -> None:
    """Raise EntryError for a limit above 1: the ratio is of the shorter link to the longer one."""
    if limit > 1:
        raise EntryError(
            "limits.length_ratio",
            "should be at most 1: it is the ratio of the shorter link to the longer one",
        )
