"""Photographs on paper: the picture, its marks, and the lines through the joint centres, as SVG."""

import base64
import io
from collections.abc import Iterator
from pathlib import Path

from core.documents.picture import PictureError, read_picture
from core.readings.photograph import Photograph
from core.verdict.verdict import Verdict
from wizard.views.photograph import link_lines

WIDTH = 900
"""Pixels of the picture across in the page at most."""

QUALITY = 80

MARK = 5.0
"""Half-width of a mark, in the units of the drawing."""

LINK_CLASSES = {"track_bar": "track-bar", "drag_link": "drag-link"}


def photograph_drawings(verdict: Verdict, folder: Path | None) -> Iterator[str]:
    """SVG of each photograph; one whose file is gone has its marks and lines alone.

    Parameters
    ----------
    verdict : Verdict
    folder : Path or None
        The vehicle's folder; None where it is not known.
    """
    for photograph in verdict.session.photographs:
        yield photograph_svg(photograph, folder)


def photograph_svg(photograph: Photograph, folder: Path | None) -> str:
    """SVG of one photograph."""
    scale = WIDTH / photograph.width
    height = photograph.height * scale
    size = photograph.width, photograph.height
    marks = {mark.point: (mark.across, mark.down) for mark in photograph.marks}
    parts = [_picture(photograph, folder, height)]
    for link, ends in link_lines(marks, size).items():
        (x1, y1), (x2, y2) = ((scale * across, scale * down) for across, down in ends)
        line = f'd="M{x1:.1f} {y1:.1f}L{x2:.1f} {y2:.1f}"/>'
        parts += [
            f'<path class="sight-edge" {line}',
            f'<path class="sight {LINK_CLASSES[link]}" {line}',
        ]
    for across, down in marks.values():
        parts.append(
            f'<rect class="mark" x="{scale * across - MARK:.1f}" y="{scale * down - MARK:.1f}" '
            f'width="{2 * MARK:.0f}" height="{2 * MARK:.0f}"/>'
        )
    return (
        f'<svg viewBox="0 0 {WIDTH} {height:.0f}" role="img" '
        f'aria-label="Photograph {photograph.number}">{"".join(parts)}</svg>'
    )


def _picture(photograph: Photograph, folder: Path | None, height: float) -> str:
    """The picture itself, inside the page; an empty frame where its file is gone."""
    frame = f'<rect class="no-picture" width="{WIDTH}" height="{height:.0f}"/>'
    if folder is None or not photograph.file:
        return frame
    try:
        picture = read_picture(folder / photograph.file)
    except PictureError:
        return frame
    picture.thumbnail((WIDTH, WIDTH))
    content = io.BytesIO()
    picture.save(content, "JPEG", quality=QUALITY)
    data = base64.b64encode(content.getvalue()).decode("ascii")
    return f'<image width="{WIDTH}" height="{height:.0f}" href="data:image/jpeg;base64,{data}"/>'
