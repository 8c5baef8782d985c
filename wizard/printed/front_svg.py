"""The front view on paper: pivot centre to pivot centre, to scale, as SVG."""

from collections.abc import Callable, Sequence
from html import escape

from wizard.views.picture_data import FrontPicture, Point

WIDTH, MARGIN = 680.0, 8.0
TALLEST = 160.0
LINE = 16.0
"""From one line of text to the next."""

TYRE = 230.0
"""Width of the tyre that stands for a wheel, mm. Invented; only the hubs are measured."""

LINKS = {"track_bar": "track bar", "drag_link": "drag link"}
ENDS = ("frame", "axle")


def front_svg(picture: FrontPicture) -> str:
    """The picture; floor, wheels, both links with their slopes, and the paths of the axle ends."""
    hubs = [hub for hub in (picture.wheels.left, picture.wheels.right) if hub]
    seen = [*picture.pivots.values(), *hubs, *(p for path in picture.arcs.values() for p in path)]
    sides = [y for y, _ in seen] + [y + by for y, _ in hubs for by in (-TYRE / 2, TYRE / 2)]
    top = max([z for _, z in seen] + [2 * z for _, z in hubs])
    scale = min((WIDTH - 2 * MARGIN) / (max(sides) - min(sides)), TALLEST / top)
    start = (WIDTH - scale * (max(sides) + min(sides))) / 2
    height = scale * top + 2 * MARGIN

    def at(point: Point) -> Point:
        """Seen from the front the vehicle's left is on the right-hand side."""
        return start + scale * point[0], height - MARGIN - scale * point[1]

    floor = height - MARGIN
    parts = [f'<path class="floor" d="M0 {floor:.1f}H{WIDTH:.0f}"/>']
    for hub in hubs:
        (x, y), half = at(hub), scale * TYRE / 2
        parts.append(
            f'<rect class="tyre" x="{x - half:.1f}" y="{y - (floor - y):.1f}" '
            f'width="{2 * half:.1f}" height="{2 * (floor - y):.1f}" rx="8"/>'
        )
    if len(hubs) == 2:
        parts.append(_line("axle", [at(hub) for hub in hubs]))
    parts += [_line("path", [at(point) for point in path]) for path in picture.arcs.values()]
    parts += _tie_rod(picture, at)
    apart = picture.pivots["drag_link.frame"][1] - picture.pivots["track_bar.frame"][1]
    aside = max(0.0, (LINE - scale * abs(apart)) / 2)  # so that the two names do not touch
    upper = "drag_link" if apart > 0 else "track_bar"
    for link, name in LINKS.items():
        frame, axle = (at(picture.pivots[f"{link}.{end}"]) for end in ENDS)
        way, anchor = (1, "start") if frame[0] > axle[0] else (-1, "end")
        x, y = frame[0] + 12 * way, frame[1] + 4 + (-aside if link == upper else aside)
        words = " ".join(filter(None, (name, picture.notes.get(link, ""))))
        parts += [
            _line(link.replace("_", "-"), [frame, axle]),
            f'<rect class="frame-end" x="{frame[0] - 5:.1f}" y="{frame[1] - 5:.1f}" '
            'width="10" height="10"/>',
            f'<circle class="axle-end" cx="{axle[0]:.1f}" cy="{axle[1]:.1f}" r="5.5"/>',
            f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}">{escape(words)}</text>',
        ]
    return (
        f'<svg viewBox="0 0 {WIDTH:.0f} {height:.0f}" role="img" '
        f'aria-label="The front axle from the front">{"".join(parts)}</svg>'
    )


def _tie_rod(picture: FrontPicture, at: Callable[[Point], Point]) -> list[str]:
    """The tie rod of an inverted-Y, from its joint on the drag link to the near ball."""
    near = picture.pivots.get("tie_rod.near")
    if near is None or picture.joint is None:
        return []
    (x, y), joint = at(near), at(picture.joint)
    ball = f'<circle class="axle-end" cx="{x:.1f}" cy="{y:.1f}" r="5.5"/>'
    return [_line("tie-rod", [joint, (x, y)]), ball]


def _line(kind: str, points: Sequence[Point]) -> str:
    path = "L".join(f"{x:.1f} {y:.1f}" for x, y in points)
    return f'<path class="{kind}" d="M{path}"/>'
