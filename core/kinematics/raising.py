"""Moves of a vehicle at rest: a pivot raised or lowered, or the whole frame on its springs."""

from dataclasses import replace
from typing import Any

import numpy as np

from core.kinematics.linkage import Linkage
from core.kinematics.pivots import FRAME_PIVOTS, GUIDE_PIVOTS, RIDE_HEIGHT
from core.kinematics.pose import Pose, rotation
from core.kinematics.vectors import Array, Scalars, Vector


def raised(linkage: Linkage, name: str, rise: Scalars) -> Linkage:
    """The linkage with one pivot raised, or with "ride_height" its whole frame.

    Afterwards each bar is set to its new length, so that the axle stands in the middle and the
    wheels straight. A pivot of the guide moves while the axle keeps its attitude: its arm is set
    to length too.

    Parameters
    ----------
    linkage : Linkage
    name : str
    rise : array (...)
        Up positive, mm; its shape is broadcast with that of the pivots.
    """
    if name == RIDE_HEIGHT:
        return _with_frame_raised(linkage, rise)
    if name.startswith("guide."):
        attribute = f"{name.removeprefix('guide.')}_height"
        height = getattr(linkage.guide, attribute) + rise
        return replace(linkage, guide=replace(linkage.guide, **{attribute: height}))
    return linkage.with_pivots({name: _moved(linkage.pivot(name), 0.0, rise)})


def _with_frame_raised(linkage: Linkage, rise: Scalars) -> Linkage:
    """The linkage with its frame raised: the axle goes along its guide by as much, downward.

    Stations count from the axle's middle, so the frame moves back by what the axle moves ahead.
    """
    path = linkage.guide.path(linkage.hub_height, -np.asarray(rise, dtype=float))
    middle = Vector(0.0, 0.0, linkage.hub_height)
    pose = Pose(middle, Vector(0.0, 0.0, 0.0), path.pitch, 0.0, rotation(path.pitch, 0.0, 0.0))
    pivots = {}
    for name in linkage.pivots:
        point = linkage.pivot(name)
        pivots[name] = (
            _moved(point, -path.ahead, rise)
            if name in FRAME_PIVOTS
            else pose.carried(Vector.of(point)).as_array()
        )
    values: dict[str, Any] = {}
    for name in GUIDE_PIVOTS[linkage.guide.kind]:
        attribute = name.removeprefix("guide.")
        station = getattr(linkage.guide, f"{attribute}_station")
        height = getattr(linkage.guide, f"{attribute}_height")
        if name in FRAME_PIVOTS:
            station, height = station - path.ahead, height + rise
        else:
            turned = pose.carried(Vector(station, 0.0, height))
            station, height = turned.ahead, turned.up
        values |= {f"{attribute}_station": station, f"{attribute}_height": height}
    guide = replace(linkage.guide, **values) if values else linkage.guide
    moved = linkage.with_pivots(pivots)
    return replace(moved, guide=guide, castor=linkage.castor - path.pitch)


def _moved(point: Array, ahead: Scalars, up: Scalars) -> Array:
    """Points (..., 3) moved ahead and up, mm."""
    return Vector.of(point).plus(Vector(ahead, 0.0, up)).as_array()
