"""The front view for paper: pivot centre to pivot centre, to scale, as SVG."""

from collections.abc import Callable, Sequence
from html import escape

from core.kinematics.pivots import NEAR_BALL
from wizard.phrases.reading_names import name_of_pivot
from wizard.views.picture_data import LINK_ENDS, TIE_ROD, FrontPicture, Point, link_lines

WIDTH, MARGIN = 680.0, 8.0
"""Width of the drawing and its margins, in units of its view box."""

TALLEST = 160.0
"""Largest height of the drawing without its margins."""

LINE_HEIGHT = 16.0
"""Distance from one line of text to the next."""

TYRE_WIDTH = 230.0
"""Width of a tyre in the drawing, mm. Invented; only the hubs are measured."""


def front_svg(picture: FrontPicture) -> str:
    """The floor, the wheels, both links with their slopes, and the paths of the axle ends."""
    hubs = picture.wheels.hubs
    arcs = [point for arc in picture.arcs.values() for point in arc]
    points = [*picture.pivots.values(), *hubs, *arcs]
    tyre_sides = [y + side for y, _ in hubs for side in (-TYRE_WIDTH / 2, TYRE_WIDTH / 2)]
    across = [y for y, _ in points] + tyre_sides
    top = max([z for _, z in points] + [2 * z for _, z in hubs])
    scale = min((WIDTH - 2 * MARGIN) / (max(across) - min(across)), TALLEST / top)
    left = (WIDTH - scale * (max(across) + min(across))) / 2
    height = scale * top + 2 * MARGIN

    def place(point: Point) -> Point:
        """Place in the drawing; the vehicle's left is on the right-hand side."""
        return left + scale * point[0], height - MARGIN - scale * point[1]

    floor = height - MARGIN
    parts = [f'<path class="floor" d="M0 {floor:.1f}H{WIDTH:.0f}"/>']
    for hub in hubs:
        (x, y), half = place(hub), scale * TYRE_WIDTH / 2
        parts.append(
            f'<rect class="tyre" x="{x - half:.1f}" y="{y - (floor - y):.1f}" '
            f'width="{2 * half:.1f}" height="{2 * (floor - y):.1f}" rx="8"/>'
        )
    if len(hubs) == 2:
        parts.append(_line("axle", [place(hub) for hub in hubs]))
    parts += [_line("path", [place(point) for point in arc]) for arc in picture.arcs.values()]
    lines = link_lines(picture.pivots, picture.joint)
    if TIE_ROD in lines:
        near_ball = place(picture.pivots[NEAR_BALL])
        parts += [_line("tie-rod", [place(end) for end in lines[TIE_ROD]]), _axle_end(near_ball)]
    return (
        f'<svg viewBox="0 0 {WIDTH:.0f} {height:.0f}" role="img" '
        f'aria-label="The front axle from the front">'
        f"{''.join([*parts, *_links(picture, scale, place)])}</svg>"
    )


def _links(picture: FrontPicture, scale: float, place: Callable[[Point], Point]) -> list[str]:
    """Track bar and drag link with their ends and names; the two names do not touch."""
    heights = {link: picture.pivots[frame][1] for link, (frame, _) in LINK_ENDS.items()}
    highest, lowest = max(heights.values()), min(heights.values())
    spread = max(0.0, (LINE_HEIGHT - scale * (highest - lowest)) / 2)
    upper = max(heights, key=lambda link: (heights[link], link == "track_bar"))
    parts = []
    for link, ends in LINK_ENDS.items():
        frame, axle = (place(picture.pivots[end]) for end in ends)
        side, anchor = (1, "start") if frame[0] > axle[0] else (-1, "end")
        x, y = frame[0] + 12 * side, frame[1] + 4 + (-spread if link == upper else spread)
        words = " ".join(filter(None, (name_of_pivot(link), picture.notes.get(link, ""))))
        parts += [
            _line(link.replace("_", "-"), [frame, axle]),
            f'<rect class="frame-end" x="{frame[0] - 5:.1f}" y="{frame[1] - 5:.1f}" '
            'width="10" height="10"/>',
            _axle_end(axle),
            f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}">{escape(words)}</text>',
        ]
    return parts


def _axle_end(point: Point) -> str:
    return f'<circle class="axle-end" cx="{point[0]:.1f}" cy="{point[1]:.1f}" r="5.5"/>'


def _line(kind: str, points: Sequence[Point]) -> str:
    path = "L".join(f"{x:.1f} {y:.1f}" for x, y in points)
    return f'<path class="{kind}" d="M{path}"/>'
