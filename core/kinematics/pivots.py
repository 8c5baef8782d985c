"""Names of the pivots, the layouts that have them, and the sides an arm can point to."""

from enum import StrEnum

PIVOTS = ("track_bar.frame", "track_bar.axle", "drag_link.frame", "drag_link.axle")
"""The pivots every layout has."""

NEAR_BALL = "tie_rod.near"
"""The ball at the near knuckle, which only the inverted-Y layout has."""

RIDE_HEIGHT = "ride_height"
"""Stands for both frame ends where they rise together."""


class Layout(StrEnum):
    """Connection of the drag link to the axle."""

    KNUCKLE = "knuckle"
    TIE_ROD = "tie-rod"
    INVERTED_Y = "inverted-y"


class Side(StrEnum):
    """Direction of an arm from its shaft or kingpin."""

    AHEAD = "ahead"
    BEHIND = "behind"

    @property
    def sign(self) -> int:
        """+1 ahead, -1 behind: along the x axis of ISO 8855:2011."""
        return 1 if self is Side.AHEAD else -1


def pivots_raised(name: str) -> tuple[str, ...]:
    """Pivots that rise with a pivot: itself, or both frame ends with the ride height."""
    return ("track_bar.frame", "drag_link.frame") if name == RIDE_HEIGHT else (name,)


def pivots_of(layout: Layout) -> tuple[str, ...]:
    """Names of the pivots that a layout has, frame ends and axle ends in turn."""
    return (*PIVOTS, NEAR_BALL) if layout == Layout.INVERTED_Y else PIVOTS
