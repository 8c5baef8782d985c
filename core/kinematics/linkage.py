"""The steering linkage, the track bar and the guide of an axle, by their pivot centres.

Only the pivot centres matter: a bend in a bar does not change the motion (common
practice, no source). Axes follow ISO 8855:2011: x ahead, y to the left, z up.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np

from core.kinematics.guide import Gains, Guide, guide_values, with_guide_values
from core.kinematics.pivots import (
    NEAR_BALL,
    Direction,
    Layout,
    pivots_of,
)
from core.kinematics.vectors import Array, Scalars


@dataclass(frozen=True, eq=False)
class Linkage:
    """An axle with its links, its guide and its kingpins at ride height.

    All arrays broadcast on their leading axes, so that one Linkage can hold thousands of drawn
    or moved geometries.

    Attributes
    ----------
    layout : Layout
    track_bar_frame, track_bar_axle : array (..., 3) or None
        Pivot centres, mm; None where leaf springs hold the axle sideways.
    drag_link_frame, drag_link_axle : array (..., 3)
        Pivot centres, mm.
    arm : array (...)
        Steering arm (or tie-rod arm) length in plan, kingpin to ball, mm.
    arm_direction : Direction
    pitman_arm : array (...)
        Pitman arm length, sector shaft to ball, mm.
    pitman_direction : Direction
    ratio : array (...)
        Steering-wheel angle to pitman arm angle.
    far_side : int
        Side of the wheel that the drag link reaches: +1 left, -1 right.
    hub_height : array (...)
        Height of the middle of the axle, about which it rolls and pitches, mm.
    guide : Guide
    span : array (...)
        Distance across between the middles of the left and the right arms or springs, mm.
    castor, inclination : array (...)
        Kingpin: top leans back, top leans inboard; rad.
    near_ball : array (..., 3) or None
        Ball of the near knuckle, inverted-Y only, mm.
    near_arm : array (...)
        Steering arm length of the near knuckle, mm.
    joint_from_far_ball : array (...)
        The tie rod's joint on the drag link, from its axle end along the link, mm.
    """

    layout: Layout
    track_bar_frame: Array | None
    track_bar_axle: Array | None
    drag_link_frame: Array
    drag_link_axle: Array
    arm: Scalars
    arm_direction: Direction
    pitman_arm: Scalars
    pitman_direction: Direction
    ratio: Scalars
    far_side: int
    hub_height: Scalars = 0.0
    guide: Guide = field(default_factory=Gains)
    span: Scalars = 1.0
    castor: Scalars = 0.0
    inclination: Scalars = 0.0
    near_ball: Array | None = None
    near_arm: Scalars = 0.0
    joint_from_far_ball: Scalars = 0.0

    @property
    def has_track_bar(self) -> bool:
        """True if a track bar holds the axle sideways."""
        return self.track_bar_frame is not None

    @property
    def pivots(self) -> tuple[str, ...]:
        """Names of the pivots."""
        return pivots_of(self.layout, self.has_track_bar)

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

    def with_heave_axis(self) -> "Linkage":
        """The linkage with one more axis at the end of every array, for an array of heaves."""
        points = {name: self.pivot(name)[..., None, :] for name in self.pivots}
        values = {name: np.asarray(value)[..., None] for name, value in scalars_of(self).items()}
        return with_scalars(self.with_pivots(points), values)


_SCALARS = {
    "steering.arm": "arm",
    "steering.pitman_arm": "pitman_arm",
    "steering.ratio": "ratio",
    "wheels.hub_height": "hub_height",
    "kingpin.castor": "castor",
    "kingpin.inclination": "inclination",
    "guide.span": "span",
}
_OF_INVERTED_Y = {
    "tie_rod.near_arm": "near_arm",
    "tie_rod.joint_from_far_ball": "joint_from_far_ball",
}


def scalars_of(linkage: Linkage) -> dict[str, Scalars]:
    """Every dimension beside the pivots by the name of its reading; mm, rad or plain numbers."""
    attributes = {**_SCALARS, **(_OF_INVERTED_Y if linkage.near_ball is not None else {})}
    own = {name: getattr(linkage, attribute) for name, attribute in attributes.items()}
    return own | guide_values(linkage.guide)


def with_scalars(linkage: Linkage, values: Mapping[str, Scalars]) -> Linkage:
    """The linkage with other dimensions, by the names of their readings."""
    attributes = _SCALARS | _OF_INVERTED_Y
    own = {attributes[name]: value for name, value in values.items() if name in attributes}
    of_guide = {name: value for name, value in values.items() if name not in attributes}
    guide = with_guide_values(linkage.guide, of_guide)
    return replace(linkage, guide=guide, **own)  # type: ignore[arg-type]


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
