"""The way of the tape for a reading, as seen from above."""

from dataclasses import dataclass

from core.kinematics.pivots import NEAR_BALL, Layout
from wizard.views.above import (
    FAR_ARM,
    FAR_KINGPIN,
    JOINT,
    NEAR_KINGPIN,
    SHAFT,
    AbovePicture,
)
from wizard.views.picture_data import Point

WORDS = {
    "station": ("along the floor, from the axle", "from the axle"),
    "steering.arm": ("kingpin line to ball", "steering arm"),
    "steering.pitman_arm": ("shaft to ball", "pitman arm"),
    "tie_rod.joint_from_far_ball": ("ball to joint", "to the joint"),
    "tie_rod.near_arm": ("kingpin line to ball", "near arm"),
}
"""Words on the way of the tape, at length and in short."""

PARTS = {
    "layout.steering": "drag link",
    "layout.arm": "steering arm",
    "layout.pitman": "pitman arm",
}
"""Parts that a question on the layout asks about."""


@dataclass(frozen=True)
class AbovePath:
    """The way of the tape for one reading in the view from above.

    Attributes
    ----------
    pivot : str
        Pivot that the tape goes to, or "".
    path : pair of Point
        The way of the tape, mm.
    words : tuple of str
        Words on the way, at length and in short; () where a part is only pointed at.
    """

    pivot: str
    path: tuple[Point, Point]
    words: tuple[str, ...]


def above_path(picture: AbovePicture, name: str) -> AbovePath | None:
    """The way of the tape for a reading; None where the view from above does not show it."""
    points = picture.points
    pivot, _, kind = name.rpartition(".")
    if kind == "station" and pivot in points:
        across, rear = points[pivot]
        return AbovePath(pivot, ((across, 0.0), (across, rear)), WORDS["station"])
    if name in PARTS and PARTS[name] in picture.lines:
        return AbovePath("", picture.lines[PARTS[name]], ())
    arm_end = FAR_ARM if picture.layout == Layout.TIE_ROD else "drag_link.axle"
    ends = {
        "steering.arm": (FAR_KINGPIN, arm_end),
        "steering.pitman_arm": (SHAFT, "drag_link.frame"),
        "tie_rod.joint_from_far_ball": ("drag_link.axle", JOINT),
        "tie_rod.near_arm": (NEAR_KINGPIN, NEAR_BALL),
    }.get(name)
    if ends is None or any(end not in points for end in ends):
        return None
    return AbovePath("", (points[ends[0]], points[ends[1]]), WORDS[name])
