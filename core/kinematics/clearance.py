"""Clearance between the track bar and the drag link through the travel."""

from typing import NamedTuple

import numpy as np

from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at
from core.kinematics.places import places_in
from core.kinematics.vectors import Array


class Clearance(NamedTuple):
    """Smallest distance between the centre lines of two links, and its heave; mm."""

    smallest: float
    at_heave: float


def clearance(linkage: Linkage, heaves: Array) -> Clearance | None:
    """Smallest distance between the centre lines of track bar and drag link over some heaves.

    Both count as straight between their pivot centres.

    Parameters
    ----------
    linkage : Linkage
        No leading axes.
    heaves : array (n,)
        mm

    Returns
    -------
    Clearance or None
        None without a track bar, and where a link binds at every heave.
    """
    if linkage.track_bar_frame is None:
        return None
    places = places_in(linkage, motion_at(linkage, heaves), heaves)
    distance = segment_distance(
        linkage.track_bar_frame,
        places["track_bar.axle"],
        linkage.drag_link_frame,
        places["drag_link.axle"],
    )
    if np.isnan(distance).all():
        return None
    least = int(np.nanargmin(distance))
    return Clearance(float(distance[least]), float(heaves[least]))


def segment_distance(start: Array, end: Array, other_start: Array, other_end: Array) -> Array:
    """Distance between two segments, array (...), of end points (..., 3).

    Either the inner points of both lines are nearest, or the end of one segment and the other.
    """
    ends = [
        _point_distance(start, other_start, other_end),
        _point_distance(end, other_start, other_end),
        _point_distance(other_start, start, end),
        _point_distance(other_end, start, end),
    ]
    first, second, gap = end - start, other_end - other_start, start - other_start
    a, b, c = _dot(first, first), _dot(first, second), _dot(second, second)
    d, e = _dot(first, gap), _dot(second, gap)
    determinant = a * c - b * b
    with np.errstate(divide="ignore", invalid="ignore"):
        along = (b * e - c * d) / determinant
        along_other = (a * e - b * d) / determinant
        nearest = gap + along[..., None] * first - along_other[..., None] * second
        inside = (along >= 0) & (along <= 1) & (along_other >= 0) & (along_other <= 1)
        across = np.where(inside, np.sqrt(_dot(nearest, nearest)), np.inf)
    return np.asarray(np.minimum(np.min(ends, axis=0), across))


def _point_distance(point: Array, start: Array, end: Array) -> Array:
    """Distance between points and segments, array (...)."""
    segment, gap = end - start, point - start
    along = np.clip(_dot(gap, segment) / _dot(segment, segment), 0.0, 1.0)
    nearest = gap - along[..., None] * segment
    return np.asarray(np.sqrt(_dot(nearest, nearest)))


def _dot(first: Array, second: Array) -> Array:
    return np.asarray((first * second).sum(axis=-1))
