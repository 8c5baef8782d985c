"""The three rules of a track bar and a drag link: parallel, near to flat, near in length.

What decides is the effective angle: how far the drag link is from square to the path of its ball.
Without arms that pitch the axle it is the angle between the two links.
"""

from dataclasses import dataclass

import numpy as np

from core.kinematics.ball_path import effective_angle
from core.kinematics.linkage import Linkage, centre_distance, slope
from core.kinematics.pivots import Layout
from core.kinematics.vectors import Array
from core.profiles.limits import Limits
from core.statistics.conformity import (
    Conformity,
    Ruling,
    combined_decision,
    magnitude_ruling,
    probability_between,
)
from core.uncertainty.propagation import MeasuredLinkage


@dataclass(frozen=True)
class Rules:
    """Rulings on the three rules: parallel, near to flat, near to each other in length.

    Attributes
    ----------
    effective : Ruling
        Angle of the drag link out of square to its ball's path, rad. It decides.
    parallel : Ruling or None
        Slope of the drag link less slope of the track bar, rad. None without a track bar, and
        where the drag link runs fore and aft.
    flat_track_bar, flat_drag_link : Ruling or None
        Slopes, rad. None for a track bar that is not there, and for a drag link that runs fore
        and aft.
    length : Ruling or None
        Ratio of the shorter link to the longer link; None where `parallel` is None.
    """

    effective: Ruling
    parallel: Ruling | None
    flat_track_bar: Ruling | None
    flat_drag_link: Ruling | None
    length: Ruling | None

    @property
    def flat(self) -> Conformity | None:
        """Verdict on the slopes of the links together; None where no slope counts."""
        slopes = [each for each in (self.flat_track_bar, self.flat_drag_link) if each]
        return combined_decision([each.verdict for each in slopes]) if slopes else None


def compares_links(linkage: Linkage) -> bool:
    """True if both links run across, so that their slopes and lengths can be compared."""
    return linkage.has_track_bar and linkage.layout != Layout.FORE_AFT


def parallel_angle(linkage: Linkage) -> Array:
    """Slope of the drag link less slope of the track bar, array (...), rad."""
    both = slopes(linkage)
    return np.asarray(both[..., 1] - both[..., 0])


def slopes(linkage: Linkage) -> Array:
    """Slopes of track bar and drag link in the front view, array (..., 2), rad.

    The slope of a track bar that is not there is nan. A drag link that runs fore and aft has its
    slope in the side view, positive where its frame end is the higher one.
    """
    if linkage.layout == Layout.FORE_AFT:
        drag_link = _side_slope(linkage.drag_link_frame, linkage.drag_link_axle)
    else:
        drag_link = slope(linkage.drag_link_frame, linkage.drag_link_axle)
    if linkage.track_bar_frame is None or linkage.track_bar_axle is None:
        return _side_by_side(np.full(drag_link.shape, np.nan), drag_link)
    return _side_by_side(slope(linkage.track_bar_frame, linkage.track_bar_axle), drag_link)


def _side_slope(frame: Array, axle: Array) -> Array:
    """Slope of a link in the side view, rad; positive where the frame end is higher."""
    run, rise = np.abs(frame[..., 0] - axle[..., 0]), frame[..., 2] - axle[..., 2]
    return np.asarray(np.arctan2(rise, run))


def lengths(linkage: Linkage) -> Array:
    """Centre-to-centre lengths of track bar and drag link, array (..., 2), mm.

    The length of a track bar that is not there is nan.
    """
    drag_link = centre_distance(linkage.drag_link_frame, linkage.drag_link_axle)
    if linkage.track_bar_frame is None or linkage.track_bar_axle is None:
        return _side_by_side(np.full(drag_link.shape, np.nan), drag_link)
    return _side_by_side(
        centre_distance(linkage.track_bar_frame, linkage.track_bar_axle), drag_link
    )


def _side_by_side(track_bar: Array, drag_link: Array) -> Array:
    """Values of both links along a last axis (..., 2), after broadcasting them."""
    both = np.empty((*np.broadcast_shapes(track_bar.shape, drag_link.shape), 2))
    both[..., 0], both[..., 1] = track_bar, drag_link
    return both


def length_ratio(linkage: Linkage) -> Array:
    """Ratio of the shorter link to the longer link, array (...)."""
    both = lengths(linkage)
    return np.asarray(both.min(axis=-1) / both.max(axis=-1))


def rules_of(measured: MeasuredLinkage, limits: Limits) -> Rules:
    """Rulings on a measured linkage, by linear propagation."""

    def values(linkage: Linkage) -> Array:
        both = lengths(linkage)
        angles = np.stack([parallel_angle(linkage), effective_angle(linkage)], axis=-1)
        return np.concatenate([slopes(linkage), angles, both[..., :1] / both[..., 1:]], -1)

    track_bar, drag_link, parallel, effective, quotient = values(measured.linkage).tolist()
    uncertainties = measured.standard_uncertainty(measured.gradient(values)).tolist()
    u_track_bar, u_drag_link, u_parallel, u_effective, u_quotient = uncertainties
    linkage = measured.linkage
    both = compares_links(linkage)
    runs_across = linkage.layout != Layout.FORE_AFT
    return Rules(
        effective=magnitude_ruling(effective, u_effective, limits.parallel),
        parallel=magnitude_ruling(parallel, u_parallel, limits.parallel) if both else None,
        flat_track_bar=magnitude_ruling(track_bar, u_track_bar, limits.flat)
        if linkage.has_track_bar
        else None,
        flat_drag_link=magnitude_ruling(drag_link, u_drag_link, limits.flat)
        if runs_across
        else None,
        length=_length_ruling(quotient, u_quotient, limits.length_ratio) if both else None,
    )


def _length_ruling(quotient: float, u: float, limit: float) -> Ruling:
    """Ruling on the ratio of the shorter link to the longer link.

    The ratio never exceeds 1, so near 1 its distribution is not normal. The quotient of track bar
    and drag link has no such bound. It is within between the limit and the inverse of the limit.

    Parameters
    ----------
    quotient : float
        Length of the track bar divided by the length of the drag link.
    u : float
        Standard uncertainty of the quotient.
    limit : float
        Smallest ratio of the shorter link to the longer link.
    """
    p = probability_between(quotient, u, limit, 1 / limit)
    if quotient <= 1:
        return Ruling(quotient, limit, u, p)
    return Ruling(1 / quotient, limit, u / quotient**2, p)
