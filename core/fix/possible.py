"""Changes that a measured vehicle can have, and the travel that a change of height leaves."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from core.fix.moves import CorrectionSet, correction_sets
from core.kinematics.pivots import RIDE_HEIGHT, Layout
from core.profiles.conversions import Change, Conversion
from core.profiles.corrections import Correction
from core.sessions.session import Session
from core.uncertainty.measured_linkage import has_centre_plane


def possible_sets(session: Session, changes: Sequence[Change]) -> tuple[CorrectionSet, ...]:
    """Every set of changes that a vehicle can have together, smallest sets first.

    A conversion stands alone, and with up to two corrections of the layout that it leads to.
    """
    corrections = [change for change in changes if isinstance(change, Correction)]
    sets = [*correction_sets(possible_corrections(session, corrections, session.layout))]
    for conversion in possible_conversions(session, changes):
        layout = conversion.steering or session.layout
        others = possible_corrections(session, corrections, layout)
        sets += correction_sets(others, conversion=conversion)
    return tuple(sorted(sets, key=lambda correction_set: len(correction_set.corrections)))


def possible_corrections(
    session: Session, corrections: Iterable[Correction], layout: Layout
) -> tuple[Correction, ...]:
    """Corrections of pivots that a vehicle has, without changes of height that spoil its travel."""
    possible = []
    for correction in corrections:
        if not correction.applies_to(session.guide, session.has_track_bar, layout):
            continue
        rises = tuple(
            rise
            for rise in correction.rises_tried
            if correction.pivot != RIDE_HEIGHT or leaves_working_travel(session, rise)
        )
        if rises:
            possible.append(replace(correction, rises=rises))
    return tuple(possible)


def possible_conversions(session: Session, changes: Iterable[Change]) -> tuple[Conversion, ...]:
    """Conversions that a vehicle can have, with their offsets placed in its linkage."""
    return tuple(
        conversion_of(session, change)
        for change in changes
        if isinstance(change, Conversion) and can_convert(session, change)
    )


def can_convert(session: Session, conversion: Conversion) -> bool:
    """True if a vehicle can have a conversion.

    A drag link lengthwise needs the centre plane: it shows which wheel the link reaches.
    """
    if not conversion.fits(
        session.layout, session.arm, session.pitman, session.guide, session.has_track_bar
    ):
        return False
    rise = sum(step.rise for step in conversion.moves if step.pivot == RIDE_HEIGHT)
    is_placed = conversion.steering != Layout.FORE_AFT or has_centre_plane(session)
    return is_placed and (not rise or leaves_working_travel(session, rise))


def conversion_of(session: Session, conversion: Conversion) -> Conversion:
    """The conversion with its offsets placed in the vehicle's linkage."""
    if not has_centre_plane(session):
        return conversion
    left, right = (session.wheels[f"{side}_offset"].value for side in ("left", "right"))
    return replace(conversion, middle=(left + right) / 2)


def travel_after(session: Session, rise: float) -> tuple[float, float]:
    """Bump and droop travel that are left where the frame rises, mm.

    The axle keeps its stops, so a frame that rises adds to the bump and takes from the droop.
    """
    return session.bump + rise, session.droop - rise


def leaves_working_travel(session: Session, rise: float) -> bool:
    """True if the travel that is left where the frame rises covers the working travel."""
    bump, droop = travel_after(session, rise)
    return bump >= session.limits.working_bump and droop >= session.limits.working_droop
