"""A line drawing with numbers on paper: lines to scale, and each number clear of all else."""

from collections.abc import Iterable, Sequence
from html import escape
from itertools import pairwise
from math import cos, hypot, pi, sin

import numpy as np
from numpy.typing import NDArray

from wizard.views.picture_data import Point

RADIUS = 8.0
"""Radius of the disc of a number, in units of the page (a quarter of a millimetre)."""

DIRECTIONS = tuple((cos(turn * pi / 8), sin(turn * pi / 8)) for turn in range(16))
DISTANCES = (14.0, 20.0, 27.0, 36.0)
"""Distances at which a number may stand from its point; the nearest ones cost least."""

SPACING = 3.0
"""Distance between the points of a line that numbers keep clear of."""

LETTER = 5.6
"""Mean width of a letter of 10.5 units."""


class Sketch:
    """A drawing of a plane of mm on a sheet of paper, to scale.

    Parameters
    ----------
    points : iterable of Point
        What the drawing has to hold, mm: across and up.
    width, height : float
        Size, in units of the page.
    margins : (left, top, right, bottom)
        Room beside the points, in units of the page.
    """

    def __init__(
        self,
        points: Iterable[Point],
        width: float,
        height: float,
        margins: tuple[float, float, float, float],
    ) -> None:
        across, up = zip(*points, strict=True)
        left, top, right, bottom = margins
        room = width - left - right, height - top - bottom
        spans = max(across) - min(across), max(up) - min(up)
        self.width, self.height = width, height
        self.scale = min(room[0] / spans[0], room[1] / spans[1])
        self.left = left + (room[0] - self.scale * spans[0]) / 2 - self.scale * min(across)
        self.top = top + (room[1] - self.scale * spans[1]) / 2 + self.scale * max(up)
        self.parts: list[str] = []
        self.lines: list[Point] = []
        self.taken: list[tuple[float, float, float, float]] = []

    def place(self, point: Point) -> Point:
        """Place on the page of a point of the plane."""
        return self.left + self.scale * point[0], self.top - self.scale * point[1]

    def line(self, css_class: str, points: Sequence[Point]) -> None:
        """Draw a line through points of the plane."""
        self.page_line(css_class, [self.place(point) for point in points])

    def page_line(self, css_class: str, points: Sequence[Point]) -> None:
        """Draw a line through points of the page."""
        path = "L".join(f"{x:.1f} {y:.1f}" for x, y in points)
        self.parts.append(f'<path class="{css_class}" d="M{path}"/>')
        for (x, y), (to_x, to_y) in pairwise(points):
            count = max(int(hypot(to_x - x, to_y - y) / SPACING), 1)
            self.lines += [
                (x + (to_x - x) * step / count, y + (to_y - y) * step / count)
                for step in range(count + 1)
            ]

    def end(self, css_class: str, point: Point) -> None:
        """Mark the end of a link: a square on the frame, a ring on the axle."""
        x, y = self.place(point)
        if css_class == "frame-end":
            shape = (
                f'<rect class="{css_class}" x="{x - 4:.1f}" y="{y - 4:.1f}" width="8" height="8"/>'
            )
        else:
            shape = f'<circle class="{css_class}" cx="{x:.1f}" cy="{y:.1f}" r="4.2"/>'
        self.parts.append(shape)
        self.taken.append((x - 5, y - 5, x + 5, y + 5))

    def text(self, words: str, place: Point, anchor: str = "start") -> None:
        """Write words at a place of the page."""
        x, y = place
        width = LETTER * len(words)
        start = x - {"start": 0.0, "middle": width / 2, "end": width}[anchor]
        self.taken.append((start, y - 9, start + width, y + 3))
        self.parts.append(
            f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}">{escape(words)}</text>'
        )

    def number(self, number: int, anchors: Sequence[Point]) -> None:
        """Put a number beside one of several points of the page, where it hides least."""
        centres = np.array(
            [
                (x + distance * right, y + distance * down)
                for x, y in anchors
                for distance in DISTANCES
                for right, down in DIRECTIONS
            ]
        )
        near = np.tile(np.repeat(DISTANCES, len(DIRECTIONS)), len(anchors)) / 4
        later = 2.0 * np.repeat(np.arange(len(anchors)), len(DISTANCES) * len(DIRECTIONS))
        costs = near + later + self._hidden(centres)
        best = int(np.argmin(costs))
        if not np.isfinite(costs[best]):
            return
        x, y = centres[best].tolist()
        anchor = anchors[best // (len(DISTANCES) * len(DIRECTIONS))]
        self.taken.append((x - RADIUS, y - RADIUS, x + RADIUS, y + RADIUS))
        far = hypot(x - anchor[0], y - anchor[1])
        if far > DISTANCES[0]:
            share = RADIUS / far
            edge = x + (anchor[0] - x) * share, y + (anchor[1] - y) * share
            self.parts.append(_leader(edge, anchor))
        self.parts.append(
            f'<g class="number"><circle cx="{x:.1f}" cy="{y:.1f}" r="{RADIUS}"/>'
            f'<text x="{x:.1f}" y="{y + 3.6:.1f}" text-anchor="middle">{number}</text></g>'
        )

    def _hidden(self, centres: NDArray[np.float64]) -> NDArray[np.float64]:
        """Cost of a number at each place: lines that it hides; infinite where it has no place."""
        x, y = centres.T
        edge = RADIUS + 1
        is_free = (edge <= x) & (x <= self.width - edge) & (edge <= y) & (y <= self.height - edge)
        for left, top, right, bottom in self.taken:
            is_beside = (x <= left - edge) | (right + edge <= x)
            is_free &= is_beside | (y <= top - edge) | (bottom + edge <= y)
        lines = np.array(self.lines)
        away = np.hypot(x[:, None] - lines[:, 0], y[:, None] - lines[:, 1])
        hidden = 3.0 * (away < RADIUS + 1.5).sum(axis=1)
        return np.where(is_free, hidden, np.inf)

    def svg(self, label: str) -> str:
        """The drawing as SVG."""
        return (
            f'<svg viewBox="0 0 {self.width:.0f} {self.height:.0f}" role="img" '
            f'aria-label="{escape(label)}">{"".join(self.parts)}</svg>'
        )


def _leader(start: Point, end: Point) -> str:
    """A thin line from a number to its point."""
    return f'<path class="leader" d="M{start[0]:.1f} {start[1]:.1f}L{end[0]:.1f} {end[1]:.1f}"/>'
