"""The measured linkage: adjusted pivots and arms, with their covariance."""

import numpy as np

from core.adjustment.least_squares import Adjustment
from core.kinematics.linkage import Array, Linkage
from core.kinematics.pivots import NEAR_BALL
from core.readings.reading import standard_uncertainty
from core.sessions.session import LENGTHS, Session
from core.uncertainty.propagation import SCALARS, MeasuredLinkage


def measured_linkage(session: Session, adjustment: Adjustment) -> MeasuredLinkage:
    """The linkage of a session with the covariance of its parameters.

    With wheel offsets the middle between the wheels is y = 0; without them the datum line is.
    An assumed length has no uncertainty of its own; the verdict names it as assumed.
    """
    centre = np.zeros(3)
    if has_centre_plane(session):
        centre[1] = (session.wheels["left_offset"].value + session.wheels["right_offset"].value) / 2
    points = dict(zip(adjustment.pivots, adjustment.points + centre, strict=True))
    value = {name: reading.value for name, reading in session.lengths.items()}
    linkage = Linkage(
        layout=session.layout,
        track_bar_frame=points["track_bar.frame"],
        track_bar_axle=points["track_bar.axle"],
        drag_link_frame=points["drag_link.frame"],
        drag_link_axle=points["drag_link.axle"],
        arm=value["arm"],
        arm_side=session.arm_side,
        pitman_arm=value["pitman_arm"],
        pitman_side=session.pitman_side,
        ratio=session.ratio,
        hub_height=value.get("hub_height", 0.0),
        near_ball=points.get(NEAR_BALL),
        near_arm=value.get("near_arm", 0.0),
        joint_from_far_ball=value.get("joint_from_far_ball", 0.0),
    )
    pivots = len(adjustment.covariance)
    covariance = np.zeros((pivots + len(SCALARS),) * 2)
    covariance[:pivots, :pivots] = adjustment.covariance
    for i, name in enumerate(SCALARS, start=pivots):
        if name in session.lengths and LENGTHS[name] not in session.assumed:
            covariance[i, i] = standard_uncertainty(session.lengths[name], session.instruments) ** 2
    return MeasuredLinkage(linkage, covariance)


def has_centre_plane(session: Session) -> bool:
    """True if both wheels were measured, which places the vehicle's centre plane."""
    return {"left_offset", "right_offset"} <= session.wheels.keys()


def hub_centres(session: Session, linkage: Linkage) -> dict[str, Array]:
    """Hub centres at ride height, arrays (3,), mm; {} without both wheel offsets.

    Their names are "wheels.left" and "wheels.right".
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
