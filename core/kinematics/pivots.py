"""Names of the pivots, the layouts that have them, the guides, and the directions of an arm."""

from enum import StrEnum

TRACK_BAR_ENDS = ("track_bar.frame", "track_bar.axle")
DRAG_LINK_ENDS = ("drag_link.frame", "drag_link.axle")

PIVOTS = (*TRACK_BAR_ENDS, *DRAG_LINK_ENDS)
"""The pivots of both links."""

NEAR_BALL = "tie_rod.near"
"""The ball at the near knuckle, which only the inverted-Y layout has."""

RIDE_HEIGHT = "ride_height"
"""Stands for the whole frame where it rises."""


class Layout(StrEnum):
    """Connection of the drag link to the axle."""

    KNUCKLE = "knuckle"
    TIE_ROD = "tie-rod"
    INVERTED_Y = "inverted-y"
    FORE_AFT = "fore-aft"


class GuideKind(StrEnum):
    """Arms or springs that guide the axle lengthwise."""

    UNMEASURED = "unmeasured"
    RADIUS_ARMS = "radius-arms"
    TWO_ARMS = "two-arms"
    LEAF = "leaf"


class Direction(StrEnum):
    """Direction of an arm from its shaft or kingpin."""

    AHEAD = "ahead"
    BEHIND = "behind"
    INBOARD = "inboard"
    OUTBOARD = "outboard"
    DOWN = "down"
    UP = "up"

    @property
    def sign(self) -> int:
        """+1 ahead, outboard or up; -1 behind, inboard or down."""
        return 1 if self in (Direction.AHEAD, Direction.OUTBOARD, Direction.UP) else -1


_ALONG = (Direction.AHEAD, Direction.BEHIND)

ARM_DIRECTIONS: dict[Layout, tuple[Direction, ...]] = {
    layout: (Direction.INBOARD, Direction.OUTBOARD) if layout == Layout.FORE_AFT else _ALONG
    for layout in Layout
}
"""Directions that the steering arm can point to, by layout."""

PITMAN_DIRECTIONS: dict[Layout, tuple[Direction, ...]] = {
    layout: (Direction.DOWN, Direction.UP) if layout == Layout.FORE_AFT else _ALONG
    for layout in Layout
}
"""Directions that the pitman arm can point to, by layout."""

GUIDE_PIVOTS: dict[GuideKind, tuple[str, ...]] = {
    GuideKind.UNMEASURED: (),
    GuideKind.RADIUS_ARMS: ("guide.frame",),
    GuideKind.TWO_ARMS: (
        "guide.lower_frame",
        "guide.lower_axle",
        "guide.upper_frame",
        "guide.upper_axle",
    ),
    GuideKind.LEAF: ("guide.eye", "guide.seat"),
}
"""Pivots of each guide in the side view, by the names of their readings."""

FRAME_PIVOTS = (
    "track_bar.frame",
    "drag_link.frame",
    "guide.frame",
    "guide.lower_frame",
    "guide.upper_frame",
    "guide.eye",
)
"""Pivots that rise with the frame."""


def pivots_raised(name: str) -> tuple[str, ...]:
    """Pivots of the links that rise with a pivot: itself, or both frame ends."""
    return ("track_bar.frame", "drag_link.frame") if name == RIDE_HEIGHT else (name,)


def pivots_of(layout: Layout, has_track_bar: bool = True) -> tuple[str, ...]:
    """Names of the pivots that a vehicle has, frame ends and axle ends in turn."""
    links = PIVOTS if has_track_bar else DRAG_LINK_ENDS
    return (*links, NEAR_BALL) if layout == Layout.INVERTED_Y else links
