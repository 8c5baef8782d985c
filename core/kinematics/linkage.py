"""The steering linkage and the track bar as straight lines between pivot centres.

Only the pivot centres matter: a bend in a bar does not change the motion (common
practice, no source). Axes follow ISO 8855:2011: x ahead, y to the left, z up.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from core.kinematics.pivots import NEAR_BALL, Layout, pivots_of, pivots_raised

Array = np.ndarray[tuple[Any, ...], np.dtype[np.float64]]


@dataclass(frozen=True, eq=False)
class Linkage:
    """A track bar and a steering linkage at ride height.

    All arrays broadcast on their leading axes, so that one Linkage can hold thousands of drawn
    or moved geometries.

    Attributes
    ----------
    layout : Layout
    track_bar_frame, track_bar_axle, drag_link_frame, drag_link_axle : array (..., 3)
        Pivot centres, mm.
    arm : array (...)
        Steering arm (or tie-rod arm) length in plan, kingpin to ball, mm.
    arm_side : int
        +1 where the arm points ahead, -1 where it points behind.
    pitman_arm : array (...)
        Pitman arm length, sector shaft to ball, mm.
    pitman_side : int
        +1 where the pitman arm points ahead, -1 where it points behind.
    ratio : float
        Steering-wheel angle to pitman arm angle.
    hub_height : array (...)
        Height of the middle of the axle, about which it rolls, mm.
    near_ball : array (..., 3) or None
        Ball of the near knuckle, inverted-Y only, mm.
    near_arm : array (...)
        Steering arm length of the near knuckle, mm.
    joint_from_far_ball : array (...)
        The tie rod's joint on the drag link, from its axle end along the link, mm.
    """

    layout: Layout
    track_bar_frame: Array
    track_bar_axle: Array
    drag_link_frame: Array
    drag_link_axle: Array
    arm: Array | float
    arm_side: int
    pitman_arm: Array | float
    pitman_side: int
    ratio: float
    hub_height: Array | float = 0.0
    near_ball: Array | None = None
    near_arm: Array | float = 0.0
    joint_from_far_ball: Array | float = 0.0

    def pivot(self, name: str) -> Array:
        """Centre of the pivot with this name, array (..., 3), mm."""
        return getattr(self, _FIELD[name])  # type: ignore[no-any-return]

    def with_pivots(self, pivots: Mapping[str, Array]) -> "Linkage":
        """The linkage with some pivots, by name, elsewhere and the bars set to the new distances.

        After any move the axle is re-centred and the wheels set straight, so the lengths become
        the new centre-to-centre distances: a Linkage has no lengths of its own to adjust.
        """
        moved = {_FIELD[name]: centre for name, centre in pivots.items()}
        return replace(self, **moved)  # type: ignore[arg-type]

    def raised(self, pivot: str, rise: Array | float) -> "Linkage":
        """The linkage with one pivot, or with "ride_height" both frame ends, raised.

        Parameters
        ----------
        pivot : str
        rise : array (...)
            Up positive, mm; its shape is broadcast with that of the pivots.
        """
        up = np.asarray(rise, dtype=float)[..., None] * np.array([0.0, 0.0, 1.0])
        return self.with_pivots({name: self.pivot(name) + up for name in pivots_raised(pivot)})

    def with_heave_axis(self) -> "Linkage":
        """The linkage with one more axis at the end of every array, for an array of heaves."""
        points = {name: self.pivot(name)[..., None, :] for name in pivots_of(self.layout)}
        return replace(
            self.with_pivots(points),
            arm=np.asarray(self.arm)[..., None],
            pitman_arm=np.asarray(self.pitman_arm)[..., None],
            hub_height=np.asarray(self.hub_height)[..., None],
            near_arm=np.asarray(self.near_arm)[..., None],
            joint_from_far_ball=np.asarray(self.joint_from_far_ball)[..., None],
        )


def joint_part(linkage: Linkage) -> Array:
    """Place of the tie rod's joint along the drag link: 0 at its axle end, 1 at its frame end."""
    whole = centre_distance(linkage.drag_link_frame, linkage.drag_link_axle)
    return np.asarray(linkage.joint_from_far_ball / whole)


_FIELD = {
    "track_bar.frame": "track_bar_frame",
    "track_bar.axle": "track_bar_axle",
    "drag_link.frame": "drag_link_frame",
    "drag_link.axle": "drag_link_axle",
    NEAR_BALL: "near_ball",
}


def difference(end: Array, start: Array) -> tuple[Array, Array, Array]:
    """Vector from `start` to `end` as its components ahead, across and up, mm.

    A link's vector is `difference(frame, axle)` everywhere: it leads to the frame end.

    Parameters
    ----------
    end, start : array (..., 3)
        mm; their leading axes broadcast.
    """
    return end[..., 0] - start[..., 0], end[..., 1] - start[..., 1], end[..., 2] - start[..., 2]


def front_view_difference(end: Array, start: Array) -> tuple[Array, Array]:
    """`difference` as it appears in the front view: across and up, mm."""
    return end[..., 1] - start[..., 1], end[..., 2] - start[..., 2]


def centre_distance(frame: Array, axle: Array) -> Array:
    """Centre-to-centre length, mm, of arrays (..., 3)."""
    ahead, across, up = difference(frame, axle)
    return np.asarray(np.sqrt(ahead * ahead + across * across + up * up))


def slope(frame: Array, axle: Array) -> Array:
    """Slope of a link as a line in the front view, rad in (-pi/2, pi/2), of arrays (..., 3).

    Positive where the end that lies further to the left is the higher one.
    """
    run, rise = front_view_difference(frame, axle)
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.asarray(np.arctan(rise / run))


def angle_finder_reading(frame: Array, axle: Array) -> Array:
    """Reading of an angle finder laid on the straight bar, rad; frame end higher is positive."""
    ahead, across, up = difference(frame, axle)
    return np.asarray(np.arctan2(up, np.hypot(across, ahead)))
