"""Names of the readings in a message, and how a reading of each kind is taken."""

from core.readings.survey import COORDINATES

PLACES = {
    "track_bar": "track bar",
    "drag_link": "drag link",
    "track_bar.frame": "track bar's frame end",
    "track_bar.axle": "track bar's axle end",
    "drag_link.frame": "drag link's frame end",
    "drag_link.axle": "drag link's axle end",
    "tie_rod.near": "tie rod's near ball",
    "guide.frame": "arms' frame pivot",
    "guide.lower_frame": "lower arm's frame end",
    "guide.lower_axle": "lower arm's axle end",
    "guide.upper_frame": "upper arm's frame end",
    "guide.upper_axle": "upper arm's axle end",
    "guide.eye": "spring's fixed eye",
    "guide.seat": "spring's seat",
}
"""Links and pivots."""

_READINGS = {
    "braces.frame_ends": "distance between the two frame ends",
    "braces.axle_ends": "distance between the two axle ends",
    "braces.frame_to_axle": "distance from the track bar's frame end to the drag link's axle end",
    "tie_rod.joint_from_far_ball": "distance of the joint from the far ball",
    "tie_rod.near_arm": "near steering arm",
    "wheels.hub_height": "hub height",
    "wheels.track": "track",
    "wheels.left_offset": "offset of the left wheel",
    "wheels.right_offset": "offset of the right wheel",
    "steering.arm": "steering arm",
    "steering.pitman_arm": "pitman arm",
    "steering.ratio": "steering ratio",
    "travel.bump": "bump travel",
    "travel.droop": "droop travel",
    "wheelbase": "wheelbase",
    "ride_height": "ride height",
    "guide.span": "distance between the arms or springs",
    "guide.castor": "castor at two heights",
    "guide.pitch_gain": "pitch of the axle with travel",
    "guide.fore_aft_gain": "movement of the axle ahead with travel",
    "guide.effective_length": "effective length of the spring",
    "kingpin.castor": "castor of the kingpin",
    "kingpin.inclination": "inclination of the kingpin",
}

_HOW_TAKEN = {
    "height": "tape upright from the floor to the pivot's centre, not to the edge of the bolt",
    "offset": "square across from the datum line. Right of it counts plus, left of it minus",
    "station": "lengthwise from the line under the axle. Ahead counts plus, behind minus",
    "length": "straight tape from centre to centre",
    "brace": "straight tape from centre to centre, through the air",
    "angle": "read it twice, with the angle finder taken off between",
    "slope": "zero the angle finder on this floor first. Frame end higher counts plus",
}


def reading_name(name: str) -> str:
    """Name of a reading in words: "height of the track bar's frame end".

    Parameters
    ----------
    name : str
        Name of the reading, "track_bar.frame.height".

    Raises
    ------
    KeyError
        The name ends like a reading of a pivot or a link, and no such pivot or link exists.
    """
    place, _, kind = name.rpartition(".")
    if name in _READINGS:
        return _READINGS[name]
    if kind in COORDINATES or kind in ("length", "slope"):
        return f"{kind} of the {PLACES[place]}"
    return kind.replace("_", " ")


def look_again(kind: str) -> str:
    """Request to take a reading of this kind again, with how it is taken."""
    return f"Take it again: {_HOW_TAKEN[kind]}."
