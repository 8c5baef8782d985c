"""A photograph in view: the part that is shown, and the lines through the joint centres."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Self

from core.kinematics.pivots import DRAG_LINK_ENDS, TRACK_BAR_ENDS

Place = tuple[float, float]
"""Pixels across and down."""

LINKS = {"track_bar": TRACK_BAR_ENDS, "drag_link": DRAG_LINK_ENDS}

CLOSEST = 8.0
"""Half-blocks of one picture pixel at most."""


@dataclass(frozen=True)
class Window:
    """The part of a picture that is in view.

    Attributes
    ----------
    size : (int, int)
        Of the picture, pixels.
    view : (int, int)
        Of the view, pixels of the screen.
    middle : (float, float)
        Place of the picture in the middle of the view.
    scale : float
        View pixels of one picture pixel.
    grain : int
        View pixels that lie side by side in a cell: 1 for half-blocks.
    """

    size: tuple[int, int]
    view: tuple[int, int]
    middle: Place
    scale: float
    grain: int = 1

    @classmethod
    def whole(cls, size: tuple[int, int], view: tuple[int, int], grain: int = 1) -> Self:
        """A view of the whole picture."""
        middle = size[0] / 2, size[1] / 2
        return cls(size, view, middle, cls.least_scale(size, view), grain)

    @staticmethod
    def least_scale(size: tuple[int, int], view: tuple[int, int]) -> float:
        """Scale at which the whole picture is in view."""
        return min(view[0] / size[0], view[1] / size[1])

    def zoomed(self, factor: float, about: Place) -> Self:
        """A closer or a wider view, with a place kept in view."""
        least = self.least_scale(self.size, self.view)
        scale = min(max(self.scale * factor, least), max(CLOSEST * self.grain, least))
        if scale <= least:
            return self.whole(self.size, self.view, self.grain)
        return replace(self, scale=scale, middle=about)

    def showing(self, place: Place) -> Self:
        """The window, moved so that a place is in view."""
        across, down = self.to_view(place)
        inside = 0 <= across < self.view[0] and 0 <= down < self.view[1]
        return self if inside else replace(self, middle=place)

    def to_view(self, place: Place) -> Place:
        """Place in the view of a place in the picture."""
        return (
            self.view[0] / 2 + (place[0] - self.middle[0]) * self.scale,
            self.view[1] / 2 + (place[1] - self.middle[1]) * self.scale,
        )

    def to_picture(self, place: Place) -> Place:
        """Place in the picture of a place in the view, kept inside the picture."""
        across = self.middle[0] + (place[0] - self.view[0] / 2) / self.scale
        down = self.middle[1] + (place[1] - self.view[1] / 2) / self.scale
        return self.inside((across, down))

    def inside(self, place: Place) -> Place:
        """The nearest place inside the picture."""
        return (
            min(max(place[0], 0.0), float(self.size[0])),
            min(max(place[1], 0.0), float(self.size[1])),
        )


def link_lines(marks: Mapping[str, Place], size: tuple[int, int]) -> dict[str, tuple[Place, Place]]:
    """Lines through both ends of each link that is marked, extended across the picture.

    Parameters
    ----------
    marks : mapping of (float, float)
    size : (int, int)
        Of the picture, pixels.
    """
    return {
        link: extended(marks[frame], marks[axle], size)
        for link, (frame, axle) in LINKS.items()
        if frame in marks and axle in marks and marks[frame] != marks[axle]
    }


def extended(start: Place, end: Place, size: tuple[int, int]) -> tuple[Place, Place]:
    """The line through two places, from one edge of the picture to another.

    Each edge cuts the line at a part of its length (the clipping of Liang and Barsky, 1984).
    """
    first, last = float("-inf"), float("inf")
    for axis in (0, 1):
        run = end[axis] - start[axis]
        if run:
            cuts = sorted((edge - start[axis]) / run for edge in (0.0, float(size[axis])))
            first, last = max(first, cuts[0]), min(last, cuts[1])
    ends = (
        (start[0] + part * (end[0] - start[0]), start[1] + part * (end[1] - start[1]))
        for part in (first, last)
    )
    first_end, last_end = ends
    return first_end, last_end
