"""From millimetres and degrees to dots."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil, floor, log10

from wizard.views.picture_data import Point


@dataclass(frozen=True)
class View:
    """A frame of dots onto a plane of mm, the same scale both ways.

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
    """The view that shows all points as large as possible between these dots.

    They stand in the middle across and on the bottom.
    """
    across, up = zip(*points, strict=True)
    wide, high = max(across) - min(across), max(up) - min(up)
    scale = min(
        (right - left) / wide if wide else 1.0,
        (bottom - top) / high if high else 1.0,
    )
    middle = (max(across) + min(across)) / 2
    return View(scale, (left + right) / 2 - middle * scale, bottom + min(up) * scale)


def round_step(span: float, most: int) -> float:
    """Smallest step of 1, 2 or 5 times a power of ten that divides a span into `most` or fewer."""
    rough = span / max(most, 1)
    power = 10.0 ** floor(log10(rough))
    return next(times * power for times in (1, 2, 5, 10) if times * power >= rough * (1 - 1e-9))


def ticks(low: float, high: float, most: int) -> tuple[float, ...]:
    """Round numbers from low to high, `most` intervals or fewer."""
    step = round_step(high - low, most)
    first, last = ceil(low / step - 1e-9), floor(high / step + 1e-9)
    return tuple(step * number for number in range(first, last + 1))
