"""The measured linkage of a session: adjusted pivots and arms, with their covariance."""

import numpy as np

from core.adjustment.least_squares import Adjustment, adjust
from core.adjustment.prior import station_priors
from core.kinematics.linkage import Array, Linkage
from core.kinematics.pivots import NEAR_BALL, pivots_of
from core.readings.reading import Reading, standard_uncertainty
from core.sessions.session import LENGTHS, Session
from core.uncertainty.propagation import SCALARS, MeasuredLinkage


def adjusted(session: Session, readings: tuple[Reading, ...] | None = None) -> Adjustment:
    """The pivots of a session, adjusted to its readings or to other readings of its vehicle.

    Stations that were not taken, or are set aside, are unknowns that stand about their usual
    places.

    Parameters
    ----------
    session : Session
    readings : tuple of Reading
        Readings in place of those of the session.

    Raises
    ------
    core.adjustment.least_squares.MissingReading
        A pivot has no place.
    core.adjustment.least_squares.NoSolution
        The readings do not settle on one set of pivots.
    """
    readings = session.readings if readings is None else readings
    pivots = pivots_of(session.layout)
    priors = station_priors(
        {reading.name for reading in readings if reading.counts},
        has_track_bar=True,
        ball=session.arm_side * session.lengths["arm"].value,
        has_near_ball=NEAR_BALL in pivots,
        fore_aft=False,
    )
    return adjust(readings, session.instruments, pivots, priors)


def measured_linkage(session: Session, adjustment: Adjustment) -> MeasuredLinkage:
    """The linkage of a session with the covariance of its parameters.

    With both wheel offsets y = 0 lies midway between the wheels. Without them it lies on the
    datum line. An assumed length has no uncertainty; the verdict names it as assumed.

    Parameters
    ----------
    session : Session
    adjustment : Adjustment
        The adjusted pivots of the session's readings.
    """
    centre = np.zeros(3)
    if has_centre_plane(session):
        centre[1] = (session.wheels["left_offset"].value + session.wheels["right_offset"].value) / 2
    points = dict(zip(adjustment.pivots, adjustment.points + centre, strict=True))
    length = {name: reading.value for name, reading in session.lengths.items()}
    linkage = Linkage(
        layout=session.layout,
        track_bar_frame=points["track_bar.frame"],
        track_bar_axle=points["track_bar.axle"],
        drag_link_frame=points["drag_link.frame"],
        drag_link_axle=points["drag_link.axle"],
        arm=length["arm"],
        arm_side=session.arm_side,
        pitman_arm=length["pitman_arm"],
        pitman_side=session.pitman_side,
        ratio=session.ratio,
        hub_height=length.get("hub_height", 0.0),
        near_ball=points.get(NEAR_BALL),
        near_arm=length.get("near_arm", 0.0),
        joint_from_far_ball=length.get("joint_from_far_ball", 0.0),
    )
    coordinates = len(adjustment.covariance)
    covariance = np.zeros((coordinates + len(SCALARS),) * 2)
    covariance[:coordinates, :coordinates] = adjustment.covariance
    for i, name in enumerate(SCALARS, start=coordinates):
        if name in session.lengths and LENGTHS[name] not in session.assumed:
            covariance[i, i] = standard_uncertainty(session.lengths[name], session.instruments) ** 2
    return MeasuredLinkage(linkage, covariance)


def has_centre_plane(session: Session) -> bool:
    """True if both wheel offsets were measured, which places the vehicle's centre plane."""
    return {"left_offset", "right_offset"} <= session.wheels.keys()


def hub_centres(session: Session, linkage: Linkage) -> dict[str, Array]:
    """Hub centres at ride height by name, arrays (3,), mm; empty without both wheel offsets.

    The names are "wheels.left" and "wheels.right".
    """
    if not has_centre_plane(session):
        return {}
    left, right = (session.wheels[f"{side}_offset"].value for side in ("left", "right"))
    half_track = (right - left) / 2
    height = float(linkage.hub_height)
    return {
        "wheels.left": np.array([0.0, half_track, height]),
        "wheels.right": np.array([0.0, -half_track, height]),
    }
