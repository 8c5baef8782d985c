"""The view of a plane: mm to dots, to scale."""

from collections.abc import Iterable
from dataclasses import dataclass

from wizard.views.picture_data import Point


@dataclass(frozen=True)
class View:
    """A plane of mm on a frame of dots, with one scale for both directions.

    Attributes
    ----------
    scale : float
        Dots in one mm.
    left, top : float
        Dot of the plane's origin.
    """

    scale: float
    left: float
    top: float

    def dot(self, point: Point) -> tuple[float, float]:
        """Dot (to the right, down) of a point (across, up)."""
        return self.left + point[0] * self.scale, self.top - point[1] * self.scale

    def line(self, points: Iterable[Point]) -> list[tuple[float, float]]:
        """Dots of several points."""
        return [self.dot(point) for point in points]


def fit(points: Iterable[Point], left: float, top: float, right: float, bottom: float) -> View:
    """The largest view that has all points between these dots.

    The points stand in the middle across, and the lowest one at the bottom.

    Parameters
    ----------
    points : iterable of Point
        mm.
    left, top, right, bottom : float
        Dots of the frame.
    """
    across, up = zip(*points, strict=True)
    width, height = max(across) - min(across), max(up) - min(up)
    scale = min(
        (right - left) / width if width else 1.0,
        (bottom - top) / height if height else 1.0,
    )
    middle = (max(across) + min(across)) / 2
    return View(scale, (left + right) / 2 - middle * scale, bottom + min(up) * scale)
