"""A true vehicle at ride height: the centres of its pivots, its kingpins and its bushes.

The arrays of a Vehicle have one leading axis (N,), so that it holds N vehicles of one kind.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from tests.full_axle.rotations import Array

GuideKind = Literal["radius-arms", "two-arms", "vertical"]
LayoutName = Literal["knuckle", "tie-rod"]

SIDES = ("left", "right")
KNUCKLES = ("far", "near")
ARMS = ("lower", "upper")

GUIDE_POINTS: dict[GuideKind, tuple[str, ...]] = {
    "radius-arms": ("frame",),
    "two-arms": ("lower_frame", "lower_axle", "upper_frame", "upper_axle"),
    "vertical": (),
}
"""Pivots of each guide on one side. A point "guide.frame" is "guide.frame.left" in a vehicle."""


@dataclass(frozen=True, eq=False)
class Vehicle:
    """N vehicles of one guide and one layout, at rest with every bush at ease; mm and rad.

    Attributes
    ----------
    guide : "radius-arms", "two-arms" or "vertical"
        A vertical guide lets the axle go straight up and down: there is none such on the road.
    layout : "knuckle" or "tie-rod"
        The drag link's axle end is a ball of the far knuckle, or of the tie rod.
    far_side, arm_side, pitman_side : array (N,)
        +1 left, ahead; -1 right, behind.
    points : mapping of array (N, 3)
        "track_bar.frame", "track_bar.axle", "drag_link.frame", "drag_link.axle"; "kingpin.far",
        "kingpin.near" (any point of each kingpin); "tie_rod.far", "tie_rod.near" (its balls);
        "guide.lower_frame.left" and so on. Points with "frame" in their name are on the frame.
    kingpins : mapping of array (N, 3)
        Directions of "far" and "near", upward, of length 1.
    stiffness : mapping of array (N,)
        Of each arm, "lower.left", relative to each other; of radius arms "sideways" relative to
        lengthwise and up.
    hub_height, pitman_arm, tread : array (N,)
        mm
    """

    guide: GuideKind
    layout: LayoutName
    far_side: Array
    arm_side: Array
    pitman_side: Array
    points: Mapping[str, Array]
    kingpins: Mapping[str, Array]
    stiffness: Mapping[str, Array]
    hub_height: Array
    pitman_arm: Array
    tread: Array

    @property
    def count(self) -> int:
        """Number of vehicles."""
        return len(self.hub_height)

    @property
    def middle(self) -> Array:
        """Middle of the axle at hub height, array (N, 3)."""
        zero = np.zeros(self.count)
        return np.stack([zero, zero, self.hub_height], axis=-1)

    def at(self, index: int) -> "Vehicle":
        """A single vehicle, with a leading axis of 1."""
        alone = slice(index, index + 1)
        parts = {
            name: {key: array[alone] for key, array in getattr(self, name).items()}
            for name in ("points", "kingpins", "stiffness")
        }
        scalars = ("far_side", "arm_side", "pitman_side", "hub_height", "pitman_arm", "tread")
        return replace(self, **parts, **{name: getattr(self, name)[alone] for name in scalars})

    def with_points(self, points: Mapping[str, Array]) -> "Vehicle":
        """The vehicles with some points elsewhere, every link set to its new length."""
        return replace(self, points={**self.points, **points})


def is_on_frame(point: str) -> bool:
    """True if a point of this name is on the frame."""
    return "frame" in point


def on_kingpin(vehicle: Vehicle, knuckle: str, height: Array) -> Array:
    """Points of the kingpins of one knuckle at some heights, array (N, 3)."""
    foot, axis = vehicle.points[f"kingpin.{knuckle}"], vehicle.kingpins[knuckle]
    return foot + axis * ((height - foot[:, 2]) / axis[:, 2])[:, None]
