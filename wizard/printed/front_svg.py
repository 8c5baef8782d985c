"""The front view on paper: pivot centre to pivot centre, to scale, as SVG."""

from collections.abc import Callable, Sequence
from html import escape
from typing import NamedTuple

from wizard.phrases.reading_names import LINK_NAMES
from wizard.views.aims import AXIS
from wizard.views.front_body import front_body
from wizard.views.picture_data import LINK_ENDS, TIE_ROD, FrontPicture, Point, link_lines

WIDTH, MARGIN = 680.0, 8.0
TALLEST = 165.0
LINE_HEIGHT = 16.0
"""Distance from one line of text to the next."""

TYRE_WIDTH = 230.0
"""Width of a drawn tyre, mm. Invented; only the hubs are measured."""

LINK_CLASSES = {"track_bar": "track-bar", "drag_link": "drag-link", "tie_rod": "tie-rod"}
"""Class of each link in the stylesheet of the page."""

BEYOND = 26.0
"""Distance of the names from the outermost place that they name."""

LEVEL = (((-18.0, 0.0), (18.0, 0.0)),)
CROSS = (((-5.0, -5.0), (5.0, 5.0)), ((-5.0, 5.0), (5.0, -5.0)))
"""Lines that mark a height and an axis, about their place."""


class Name(NamedTuple):
    """Words beside a place of the page; `way` is 1 to the right of it, -1 to the left."""

    words: str
    place: Point
    way: int


def front_svg(picture: FrontPicture) -> str:
    """The floor, the wheels, the links with their notes, and the paths of the axle ends.

    Parameters
    ----------
    picture : FrontPicture
        With the pivots of track bar and drag link.
    """
    hubs, body = picture.wheels.hubs, front_body(picture)
    arcs = picture.arcs.values()
    points = [
        *picture.before.values(),
        *picture.pivots.values(),
        *hubs,
        *(point for arc in arcs for point in arc),
        *(point for line in body.lines for point in line),
    ]
    points += [aim.point for aim in picture.aims if aim.needed]
    sides = [y for y, _ in points]
    sides += [y + way * TYRE_WIDTH / 2 for y, _ in hubs for way in (-1, 1)]
    top = max([z for _, z in points] + [2 * z for _, z in hubs])
    scale = min((WIDTH - 2 * MARGIN) / (max(sides) - min(sides)), TALLEST / top)
    start = (WIDTH - scale * (max(sides) + min(sides))) / 2
    height = scale * top + 2 * MARGIN
    floor = height - MARGIN

    def on_page(point: Point) -> Point:
        """Place of a point; the vehicle's left is on the right-hand side, as from the front."""
        return start + scale * point[0], floor - scale * point[1]

    parts = [f'<path class="floor" d="M0 {floor:.1f}H{WIDTH:.0f}"/>']
    for hub in hubs:
        (x, y), half = on_page(hub), scale * TYRE_WIDTH / 2
        parts.append(
            f'<rect class="tyre" x="{x - half:.1f}" y="{y - (floor - y):.1f}" '
            f'width="{2 * half:.1f}" height="{2 * (floor - y):.1f}" rx="12"/>'
        )
    if len(hubs) == 2:
        parts.append(_line("axle-tube", [on_page(hub) for hub in hubs]))
    parts += [_line("rail", [*map(on_page, rail)]) for rail in body.rails]
    parts += [_line("bracket", [*map(on_page, line)]) for line in (*body.brackets, *body.arms)]
    parts += [_line("path", [on_page(point) for point in arc]) for arc in arcs]
    parts += _earlier(picture, on_page)
    lines = link_lines(picture.pivots, picture.joint)
    parts += _tie_rod(lines.get(TIE_ROD), on_page)
    names: list[Name] = []
    for link in filter(lines.get, LINK_ENDS):
        frame, axle = map(on_page, lines[link])
        way = 1 if frame[0] > axle[0] else -1
        words = " ".join(filter(None, (LINK_NAMES[link], picture.notes.get(link, ""))))
        names.append(Name(words, frame, way))
        parts += [
            _line(LINK_CLASSES[link], [frame, axle]),
            f'<rect class="frame-end" x="{frame[0] - 5:.1f}" y="{frame[1] - 5:.1f}" '
            'width="10" height="10"/>',
            _ball(axle),
        ]
    for aim in picture.aims:
        x, y = on_page(aim.point)
        if MARGIN < x < WIDTH - MARGIN and MARGIN < y < floor:
            shape = CROSS if aim.mark == AXIS else LEVEL
            parts += [
                _line("aim", [(x + right, y + down) for right, down in ends]) for ends in shape
            ]
            names.append(Name(aim.texts[0], (x, y), way))
    parts += [*_written(names, 1), *_written(names, -1)]
    return (
        f'<svg viewBox="0 0 {WIDTH:.0f} {height:.0f}" role="img" '
        f'aria-label="The front axle from the front">{"".join(parts)}</svg>'
    )


def _earlier(picture: FrontPicture, on_page: Callable[[Point], Point]) -> list[str]:
    """The links of an earlier geometry, dashed and with hollow ends."""
    parts = []
    for line in link_lines(picture.before, picture.before_joint).values():
        ends = [on_page(end) for end in line]
        parts.append(_line("before", ends))
        parts += [f'<circle class="before-mark" cx="{x:.1f}" cy="{y:.1f}" r="4"/>' for x, y in ends]
    return parts


def _written(names: Sequence[Name], way: int) -> list[str]:
    """The names of one side, below each other beyond their places, with a line to each place."""
    beside = sorted((name for name in names if name.way == way), key=lambda name: name.place[1])
    if not beside:
        return []
    edge = max(way * name.place[0] for name in beside) * way + BEYOND * way
    heights: list[float] = []
    for name in beside:
        heights.append(
            max(name.place[1], heights[-1] + LINE_HEIGHT if heights else LINE_HEIGHT / 2)
        )
    # Half of what the lower names give way, all of them move up again.
    shift = min((heights[-1] - beside[-1].place[1]) / 2, heights[0] - LINE_HEIGHT / 2)
    parts = []
    for name, height in zip(beside, heights, strict=True):
        y = height - shift
        parts += [
            _line("leader", [name.place, (edge - 3 * way, y)]),
            _text(name.words, edge, y, way),
        ]
    return parts


def _text(words: str, x: float, y: float, way: int) -> str:
    """Words that begin (`way` 1) or end (`way` -1) at a point of the page."""
    anchor = "start" if way > 0 else "end"
    return f'<text x="{x:.1f}" y="{y + 4:.1f}" text-anchor="{anchor}">{escape(words)}</text>'


def _tie_rod(line: tuple[Point, Point] | None, on_page: Callable[[Point], Point]) -> list[str]:
    """The tie rod of an inverted-Y, from its joint on the drag link to the near ball."""
    if line is None:
        return []
    joint, near = map(on_page, line)
    return [_line(LINK_CLASSES[TIE_ROD], [joint, near]), _ball(near)]


def _ball(centre: Point) -> str:
    """The mark of an end on the axle."""
    return f'<circle class="axle-end" cx="{centre[0]:.1f}" cy="{centre[1]:.1f}" r="5.5"/>'


def _line(css_class: str, points: Sequence[Point]) -> str:
    """A line through points of the page."""
    path = "L".join(f"{x:.1f} {y:.1f}" for x, y in points)
    return f'<path class="{css_class}" d="M{path}"/>'
