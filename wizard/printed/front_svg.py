"""The front view on paper: pivot centre to pivot centre, to scale, as SVG."""

from collections.abc import Callable, Sequence
from html import escape

from wizard.phrases.reading_names import LINK_NAMES
from wizard.views.picture_data import LINK_ENDS, TIE_ROD, FrontPicture, Point, link_lines

WIDTH, MARGIN = 680.0, 8.0
TALLEST = 160.0
LINE_HEIGHT = 16.0
"""Distance from one line of text to the next."""

TYRE_WIDTH = 230.0
"""Width of a drawn tyre, mm. Invented; only the hubs are measured."""

LINK_CLASSES = {"track_bar": "track-bar", "drag_link": "drag-link", "tie_rod": "tie-rod"}
"""Class of each link in the stylesheet of the page."""


def front_svg(picture: FrontPicture) -> str:
    """The floor, the wheels, the links with their notes, and the paths of the axle ends.

    Parameters
    ----------
    picture : FrontPicture
        With the pivots of track bar and drag link.
    """
    hubs = picture.wheels.hubs
    arcs = picture.arcs.values()
    points = [*picture.pivots.values(), *hubs, *(point for arc in arcs for point in arc)]
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
            f'width="{2 * half:.1f}" height="{2 * (floor - y):.1f}" rx="8"/>'
        )
    if len(hubs) == 2:
        parts.append(_line("axle", [on_page(hub) for hub in hubs]))
    parts += [_line("path", [on_page(point) for point in arc]) for arc in arcs]
    lines = link_lines(picture.pivots, picture.joint)
    parts += _tie_rod(lines.get(TIE_ROD), on_page)
    shifts = _name_shifts(picture, scale)
    for link in LINK_ENDS:
        frame, axle = map(on_page, lines[link])
        way, anchor = (1, "start") if frame[0] > axle[0] else (-1, "end")
        x, y = frame[0] + 12 * way, frame[1] + 4 + shifts[link]
        words = " ".join(filter(None, (LINK_NAMES[link], picture.notes.get(link, ""))))
        parts += [
            _line(LINK_CLASSES[link], [frame, axle]),
            f'<rect class="frame-end" x="{frame[0] - 5:.1f}" y="{frame[1] - 5:.1f}" '
            'width="10" height="10"/>',
            _ball(axle),
            f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}">{escape(words)}</text>',
        ]
    return (
        f'<svg viewBox="0 0 {WIDTH:.0f} {height:.0f}" role="img" '
        f'aria-label="The front axle from the front">{"".join(parts)}</svg>'
    )


def _name_shifts(picture: FrontPicture, scale: float) -> dict[str, float]:
    """Distance down the page that each link's name is moved, so that the names do not touch."""
    heights = {link: picture.pivots[frame][1] for link, (frame, _) in LINK_ENDS.items()}
    upper, lower = sorted(heights, key=lambda link: heights[link], reverse=True)
    shift = max(0.0, (LINE_HEIGHT - scale * (heights[upper] - heights[lower])) / 2)
    return {lower: shift, upper: -shift}


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
