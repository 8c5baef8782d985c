"""Limits of the verdict. They belong to the profile and are copied into the record."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Limits:
    """Limits of the rules and of the working travel.

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
        Travel of ordinary driving, from ride height, mm.
    """

    parallel: float
    flat: float
    length_ratio: float
    steer: float
    toe_change: float
    working_bump: float
    working_droop: float
