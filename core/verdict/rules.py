"""The three rules of a track bar and a drag link: parallel, flat, near in length."""

from dataclasses import dataclass

import numpy as np

from core.kinematics.linkage import Array, Linkage, centre_distance, slope
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
    parallel : Ruling
        Slope of the drag link less slope of the track bar, rad.
    flat_track_bar, flat_drag_link : Ruling
        Slopes, rad.
    length : Ruling
        Ratio of the shorter link to the longer link.
    """

    parallel: Ruling
    flat_track_bar: Ruling
    flat_drag_link: Ruling
    length: Ruling

    @property
    def flat(self) -> Conformity:
        """Verdict on the slopes of both links together."""
        return combined_decision([self.flat_track_bar.verdict, self.flat_drag_link.verdict])


def parallel_angle(linkage: Linkage) -> Array:
    """Slope of the drag link less slope of the track bar, array (...), rad."""
    both = slopes(linkage)
    return np.asarray(both[..., 1] - both[..., 0])


def slopes(linkage: Linkage) -> Array:
    """Slopes of track bar and drag link, array (..., 2), rad."""
    return _side_by_side(
        slope(linkage.track_bar_frame, linkage.track_bar_axle),
        slope(linkage.drag_link_frame, linkage.drag_link_axle),
    )


def lengths(linkage: Linkage) -> Array:
    """Centre-to-centre lengths of track bar and drag link, array (..., 2), mm."""
    return _side_by_side(
        centre_distance(linkage.track_bar_frame, linkage.track_bar_axle),
        centre_distance(linkage.drag_link_frame, linkage.drag_link_axle),
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
        return np.concatenate(
            [slopes(linkage), parallel_angle(linkage)[..., None], both[..., :1] / both[..., 1:]], -1
        )

    track_bar, drag_link, parallel, quotient = values(measured.linkage).tolist()
    uncertainties = measured.standard_uncertainty(measured.gradient(values))
    u_track_bar, u_drag_link, u_parallel, u_quotient = uncertainties.tolist()
    return Rules(
        parallel=magnitude_ruling(parallel, u_parallel, limits.parallel),
        flat_track_bar=magnitude_ruling(track_bar, u_track_bar, limits.flat),
        flat_drag_link=magnitude_ruling(drag_link, u_drag_link, limits.flat),
        length=_length_ruling(quotient, u_quotient, limits.length_ratio),
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
