"""A photograph drawn for a terminal: the part in view with its marks, lines and crosshair."""

from collections.abc import Mapping

from PIL.Image import Image, Resampling, Transform
from PIL.ImageDraw import Draw, ImageDraw

from wizard.views.photograph import Place, Window, link_lines

LINE_COLOURS = {"track_bar": (142, 203, 255), "drag_link": (255, 208, 94)}
MARK = (147, 221, 143)
CROSSHAIR = (255, 142, 122)

ARM = 6
"""Pixels of the view from the middle of the crosshair to its ends."""


def draw_photograph(
    picture: Image,
    window: Window,
    marks: Mapping[str, Place],
    crosshair: Place | None,
    dot: int = 1,
) -> Image:
    """The part of a picture that is in view, with what is marked in it.

    Parameters
    ----------
    picture : Image
    window : Window
    marks : mapping of (float, float)
        Places in the picture, by the point.
    crosshair : (float, float) or None
        Place in the picture.
    dot : int
        Half-width of a mark, pixels of the view.
    """
    left, top = (window.middle[axis] - window.view[axis] / 2 / window.scale for axis in (0, 1))
    step = 1 / window.scale
    shown = picture.transform(
        window.view,
        Transform.AFFINE,
        (step, 0, left, 0, step, top),
        Resampling.BILINEAR if step < 2 else Resampling.BICUBIC,
    )
    drawing = Draw(shown)
    for link, ends in link_lines(marks, window.size).items():
        drawing.line([window.to_view(end) for end in ends], fill=LINE_COLOURS[link], width=dot)
    for place in marks.values():
        _square(drawing, window.to_view(place), dot)
    if crosshair is not None:
        across, down = window.to_view(crosshair)
        for x, y in ((1, 0), (-1, 0), (0, 1), (0, -1)):
            arm = [(across + part * x, down + part * y) for part in (2 * dot, ARM * dot)]
            drawing.line(arm, fill=CROSSHAIR, width=dot)
    return shown


def _square(drawing: ImageDraw, place: Place, dot: int) -> None:
    across, down = place
    drawing.rectangle(
        (across - dot, down - dot, across + dot, down + dot), outline=MARK, width=max(dot // 2, 1)
    )
