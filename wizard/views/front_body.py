"""Parts of the vehicle that nobody measures, for the front view: frame rails, brackets, an arm.

Their sizes and places are invented. They hang on what was measured, so that a person sees what the
links are bolted to.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

from wizard.views.above import KINGPIN_INSET
from wizard.views.picture_data import LINK_ENDS, FrontPicture, Point, Wheels

RAIL_WIDTH, RAIL_HEIGHT, ABOVE_PIVOTS = 90.0, 170.0, 70.0
"""mm: a frame rail across and up, and its distance above the highest frame end."""

LONGEST_ARM = 350.0
"""mm; a ball farther from the kingpin, seen from the front, is on no steering arm."""


@dataclass(frozen=True)
class FrontBody:
    """Parts that are not measured; each a line of points (across, up), mm.

    Attributes
    ----------
    rails : tuple of lines
        Outlines of the frame rails, closed.
    brackets : tuple of lines
        From each frame end up to the rail: the track bar's bracket, the pitman arm.
    arms : tuple of lines
        Steering arm from the kingpin to its ball.
    """

    rails: tuple[tuple[Point, ...], ...] = ()
    brackets: tuple[tuple[Point, ...], ...] = ()
    arms: tuple[tuple[Point, ...], ...] = ()

    @property
    def lines(self) -> tuple[tuple[Point, ...], ...]:
        """All lines."""
        return (*self.rails, *self.brackets, *self.arms)


def front_body(picture: FrontPicture) -> FrontBody:
    """Parts about the measured pivots; none before both wheels and both frame ends are known."""
    wheels = picture.wheels
    frame_ends = [
        picture.pivots[frame] for frame, _ in LINK_ENDS.values() if frame in picture.pivots
    ]
    if not frame_ends or not (wheels.left and wheels.right):
        return FrontBody()
    middle = (wheels.left[0] + wheels.right[0]) / 2
    beside = sum(across for across, _ in frame_ends) / len(frame_ends)
    bottom = max(up for _, up in frame_ends) + ABOVE_PIVOTS
    return FrontBody(
        rails=(_rail(beside, bottom), _rail(2 * middle - beside, bottom)),
        brackets=tuple(((across, up), (across, bottom)) for across, up in frame_ends),
        arms=_arms(picture, wheels),
    )


def _rail(across: float, bottom: float) -> tuple[Point, ...]:
    """Outline of a frame rail."""
    left, right, top = across - RAIL_WIDTH / 2, across + RAIL_WIDTH / 2, bottom + RAIL_HEIGHT
    return ((left, bottom), (right, bottom), (right, top), (left, top), (left, bottom))


def _arms(picture: FrontPicture, wheels: Wheels) -> tuple[tuple[Point, ...], ...]:
    """The steering arm, where the drag link's ball is near a kingpin."""
    ball = picture.pivots.get(LINK_ENDS["drag_link"][1])
    if ball is None or not (wheels.left and wheels.right):
        return ()
    (left, left_up), (right, right_up) = wheels.left, wheels.right
    inward = 1.0 if left < right else -1.0
    kingpins: Sequence[Point] = (
        (left + inward * KINGPIN_INSET, left_up),
        (right - inward * KINGPIN_INSET, right_up),
    )
    near = min(kingpins, key=lambda kingpin: hypot(kingpin[0] - ball[0], kingpin[1] - ball[1]))
    far = hypot(near[0] - ball[0], near[1] - ball[1])
    return ((near, ball),) if far <= LONGEST_ARM else ()
