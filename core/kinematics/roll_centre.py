"""Roll-centre height of an axle held sideways by a track bar."""

from core.kinematics.linkage import Array, Linkage, front_view_difference


def roll_centre_height(linkage: Linkage) -> Array:
    """Height at which the track bar's line crosses the vehicle's centre plane, array (...), mm.

    The centre plane is y = 0, so the pivots must be placed from the wheels. T. D. Gillespie,
    Fundamentals of Vehicle Dynamics, suspensions: solid axles with a track bar (from memory).
    """
    axle = linkage.track_bar_axle
    run, rise = front_view_difference(linkage.track_bar_frame, axle)
    return axle[..., 2] - axle[..., 1] * rise / run
