"""Roll-centre height of an axle held sideways by a track bar."""

from core.kinematics.linkage import Linkage, front_view_difference
from core.kinematics.vectors import Array


def roll_centre_height(linkage: Linkage) -> Array | None:
    """Height at which the track bar's line crosses the vehicle's centre plane, array (...), mm.

    The centre plane is y = 0, so the pivots must be placed from the wheels. T. D. Gillespie,
    Fundamentals of Vehicle Dynamics, suspensions: solid axles with a track bar (from memory).
    None without a track bar.
    """
    if linkage.track_bar_frame is None or linkage.track_bar_axle is None:
        return None
    axle = linkage.track_bar_axle
    run, rise = front_view_difference(linkage.track_bar_frame, axle)
    height: Array = axle[..., 2] - axle[..., 1] * rise / run
    return height
