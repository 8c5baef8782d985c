"""Drawn pictures of an invented axle, as a camera would see it. Small, and of nobody's vehicle."""

from collections.abc import Mapping, Sequence

import numpy as np
from PIL import Image, ImageDraw

from core.readings.photograph import CONTACTS, HUBS

SIZE = (800, 600)
TYRE_HEIGHT, TYRE_WIDTH = 820.0, 230.0
"""mm"""

SKY, FLOOR, TYRE, BAR, LINK, BALL = "#b9c2c9", "#8d8579", "#26262a", "#c8742b", "#2f6f9f", "#f0e3b0"


def drawn_picture(
    points: Mapping[str, np.ndarray], pixels_of, size: tuple[int, int] = SIZE
) -> Image.Image:
    """A picture of an axle.

    Parameters
    ----------
    points : mapping of array (3,)
        Pivots, hubs and tyre contacts, mm.
    pixels_of : callable
        Takes points (n, 3), and returns their places (n, 2) in the picture.
    size : (int, int)
    """
    picture = Image.new("RGB", size, SKY)
    drawing = ImageDraw.Draw(picture)

    def shape(corners: Sequence[Sequence[float]]) -> list[tuple[float, float]]:
        return [tuple(place) for place in pixels_of(np.array(corners, float))]

    drawing.polygon(
        shape([(x, y, 0) for x, y in ((-6000, -9000), (-6000, 9000), (900, 1500), (900, -1500))]),
        fill=FLOOR,
    )
    for hub, contact in zip(HUBS, CONTACTS, strict=True):
        x, y, _ = points[contact]
        across = (y - TYRE_WIDTH / 2, y + TYRE_WIDTH / 2)
        corners = [
            (x, across[i], z) for i, z in ((0, 0), (1, 0), (1, TYRE_HEIGHT), (0, TYRE_HEIGHT))
        ]
        drawing.polygon(shape(corners), fill=TYRE)
        _ball(drawing, shape([points[hub]])[0], 5)
    drawing.line(shape([points[hub] for hub in HUBS]), fill="#555a60", width=14)
    for link, colour in (("track_bar", BAR), ("drag_link", LINK)):
        ends = shape([points[f"{link}.frame"], points[f"{link}.axle"]])
        drawing.line(ends, fill=colour, width=5)
        for end in ends:
            _ball(drawing, end, 4)
    return picture


def _ball(drawing: ImageDraw.ImageDraw, place: tuple[float, float], radius: float) -> None:
    x, y = place
    drawing.ellipse((x - radius, y - radius, x + radius, y + radius), fill=BALL, outline="#222222")
