"""The frame of a curve: its range of heaves and values, and its dots."""

from collections.abc import Iterable
from dataclasses import dataclass

from textual.geometry import Size

from core.text.quantity import LengthUnit
from wizard.tui.pictures.drawing import ACROSS, DOWN
from wizard.views.picture_data import MM_IN, CurvePicture, Point
from wizard.views.ticks import ticks

GUTTER = 7
"""Columns left of the frame for the numbers."""

STRETCH = 1.12
"""Height of the curves with the margin on one side, as a multiple of their height."""

TICK_COLUMNS, TICK_ROWS = 5, 2
"""Columns and rows that a number on an axis needs at least."""

FEWEST_INTERVALS = 5
"""Intervals that the axis of values may always have."""


@dataclass(frozen=True)
class Plot:
    """A frame of dots on a plane of heaves (mm) and values (deg).

    Attributes
    ----------
    low, high : float
        Heave on the left and on the right, mm.
    bottom, top : float
        Value at the lower and at the upper edge, deg.
    corner : pair of float
        Dot of the lower left corner.
    width, height : float
        Size of the frame, dots.
    """

    low: float
    high: float
    bottom: float
    top: float
    corner: tuple[float, float]
    width: float
    height: float

    def dot(self, point: Point) -> tuple[float, float]:
        """Dot of a heave and a value."""
        return (
            self.corner[0] + self.width * (point[0] - self.low) / (self.high - self.low),
            self.corner[1] - self.height * (point[1] - self.bottom) / (self.top - self.bottom),
        )

    def line(self, points: Iterable[Point]) -> list[tuple[float, float]]:
        """Dots of several points."""
        return [self.dot(point) for point in points]

    def heave_ticks(self, unit: LengthUnit) -> tuple[float, ...]:
        """Round heaves for the axis, in its unit."""
        most = int(self.width // (TICK_COLUMNS * ACROSS))
        return ticks(self.low / MM_IN[unit], self.high / MM_IN[unit], most)

    def value_ticks(self) -> tuple[float, ...]:
        """Round values for the axis, deg."""
        most = max(FEWEST_INTERVALS, int(self.height // (TICK_ROWS * DOWN)))
        return ticks(self.bottom, self.top, most)


def plot_of(picture: CurvePicture, size: Size) -> Plot:
    """The frame that holds curve, uncertainty and limit, with room for the words around it."""
    heaves = [*picture.trace.heave, -picture.working[0], picture.working[1]]
    low, high = min(heaves), max(heaves)
    bottom, top = picture.value_range()
    margin = (STRETCH - 1) * (top - bottom)
    left, above, below = GUTTER * ACROSS, DOWN, 3 * DOWN
    right = (size.width - 2) * ACROSS
    return Plot(
        low=low,
        high=high if high > low else low + 1.0,
        bottom=bottom - margin,
        top=top + margin,
        corner=(float(left), size.height * DOWN - below - 1.0),
        width=float(right - left),
        height=float(size.height * DOWN - above - below - 1),
    )
