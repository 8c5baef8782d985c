"""The frame of a curve: its range of heave and value, and its place in dots."""

from collections.abc import Iterable
from dataclasses import dataclass

from textual.geometry import Size

from core.text.quantity import LengthUnit
from wizard.tui.pictures.drawing import ACROSS, DOWN
from wizard.views.picture_data import MM_IN, CurvePicture, Point
from wizard.views.ticks import ticks

ROOM = 1.12
"""Height of the frame as a multiple of the height of the curve."""


@dataclass(frozen=True)
class Plot:
    """A frame of dots onto heaves (mm) and values (deg).

    Attributes
    ----------
    low, high : float
        Heave on the left and on the right, mm.
    bottom, top : float
        Value below and above, deg.
    corner : pair of float
        Dot of the lowest value on the left.
    wide, tall : float
        The frame in dots.
    """

    low: float
    high: float
    bottom: float
    top: float
    corner: tuple[float, float]
    wide: float
    tall: float

    def dot(self, point: Point) -> tuple[float, float]:
        """Dot of a heave and a value."""
        return (
            self.corner[0] + self.wide * (point[0] - self.low) / (self.high - self.low),
            self.corner[1] - self.tall * (point[1] - self.bottom) / (self.top - self.bottom),
        )

    def line(self, points: Iterable[Point]) -> list[tuple[float, float]]:
        """Dots of several points."""
        return [self.dot(point) for point in points]

    def heave_ticks(self, unit: LengthUnit) -> tuple[float, ...]:
        """Round heaves for the axis, in its unit."""
        most = int(self.wide // (5 * ACROSS))
        return ticks(self.low / MM_IN[unit], self.high / MM_IN[unit], most)

    def value_ticks(self) -> tuple[float, ...]:
        """Round values for the axis, deg."""
        return ticks(self.bottom, self.top, max(5, int(self.tall // (2 * DOWN))))


def plot_of(picture: CurvePicture, size: Size) -> Plot:
    """The frame that holds curve, edges and limit, with room round it for the words."""
    heaves = [*picture.trace.heave, -picture.working[0], picture.working[1]]
    low, high = min(heaves), max(heaves)
    bottom, top = value_span(picture)
    left, above, below = GUTTER * ACROSS, DOWN, 3 * DOWN
    right = (size.width - 2) * ACROSS
    return Plot(
        low, high if high > low else low + 1.0, bottom, top,
        (float(left), size.height * DOWN - below - 1.0),
        float(right - left), float(size.height * DOWN - above - below - 1),
    )  # fmt: skip


GUTTER = 7
"""Columns left of the frame for the numbers."""


def value_span(picture: CurvePicture) -> tuple[float, float]:
    """Values at the bottom and the top of the frame, deg, with room beside the curves."""
    low, high = picture.value_range()
    room = (high - low) * (ROOM - 1)
    return low - room, high + room
