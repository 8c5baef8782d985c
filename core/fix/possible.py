"""Corrections that a measured vehicle can have, and the travel that a change of height leaves."""

from collections.abc import Iterable
from dataclasses import replace

from core.kinematics.pivots import RIDE_HEIGHT
from core.profiles.corrections import Correction
from core.sessions.session import Session


def possible_corrections(
    session: Session, corrections: Iterable[Correction]
) -> tuple[Correction, ...]:
    """Corrections of pivots that a vehicle has, without changes of height that spoil its travel."""
    possible = []
    for correction in corrections:
        if not correction.applies_to(session.guide, session.has_track_bar, session.layout):
            continue
        rises = tuple(
            rise
            for rise in correction.rises_tried
            if correction.pivot != RIDE_HEIGHT or leaves_working_travel(session, rise)
        )
        if rises:
            possible.append(replace(correction, rises=rises))
    return tuple(possible)


def travel_after(session: Session, rise: float) -> tuple[float, float]:
    """Bump and droop travel that are left where the frame rises, mm.

    The axle keeps its stops, so a frame that rises adds to the bump and takes from the droop.
    """
    return session.bump + rise, session.droop - rise


def leaves_working_travel(session: Session, rise: float) -> bool:
    """True if the travel that is left where the frame rises covers the working travel."""
    bump, droop = travel_after(session, rise)
    return bump >= session.limits.working_bump and droop >= session.limits.working_droop
