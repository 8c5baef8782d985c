"""Steer against suspension travel on paper, with the limit and the doubt, as SVG."""

from collections.abc import Callable, Iterator, Sequence
from math import ceil, floor, isfinite

from core.text.quantity import LengthUnit
from wizard.views.picture_data import CurvePicture

WIDTH, HEIGHT = 680.0, 170.0
LEFT, RIGHT, TOP, BOTTOM = 52.0, 14.0, 20.0, 40.0

STEPS = (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0)
MOST_LINES = 6

EDGE = 40.0
"""Nearer to the right-hand end a number has no room about its line."""

TRAVEL: dict[LengthUnit, tuple[float, float]] = {"in": (25.4, 1.0), "mm": (1.0, 50.0)}
"""mm in one of the axis, and how many of them from one line to the next."""

Place = Callable[[float], float]


def curve_svg(picture: CurvePicture) -> str:
    """The curve with its band of doubt, and the limits over the working travel."""
    trace = picture.trace
    gives = trace.give or [0.0] * len(trace.value)
    reached = [
        (heave, value, give)
        for heave, value, give in zip(trace.heave, trace.value, gives, strict=True)
        if isfinite(value)
    ]
    limit = picture.limit or 0.0
    top = max([limit, *(value + give for _, value, give in reached)])
    bottom = min([-limit, *(value - give for _, value, give in reached)])
    step = next((s for s in STEPS if (top - bottom) / s <= MOST_LINES), STEPS[-1])
    high, low = step * ceil(top / step), step * floor(bottom / step)
    droop, bump = trace.heave[0], trace.heave[-1]

    def x(heave: float) -> float:
        return LEFT + (heave - droop) / (bump - droop) * (WIDTH - LEFT - RIGHT)

    def y(deg: float) -> float:
        return TOP + (high - deg) / (high - low) * (HEIGHT - TOP - BOTTOM)

    above = [(x(heave), y(value + give)) for heave, value, give in reached]
    below = [(x(heave), y(value - give)) for heave, value, give in reversed(reached)]
    parts = [
        *_allowed(picture, limit, x, y),
        f'<path class="doubt" d="M{_joined(above + below)}Z"/>',
        *_steer_lines(low, high, step, y),
        *_travel_lines(droop, bump, picture.unit, x),
        *_limit_words(picture, limit, x, y),
        f'<path class="trace" d="M{_joined([(x(h), y(v)) for h, v, _ in reached])}"/>',
        f'<text x="{LEFT + 6}" y="{TOP - 6}">{picture.upward}, deg</text>',
        f'<text x="{LEFT + 6}" y="{HEIGHT - BOTTOM - 5}">{picture.downward}</text>',
        f'<text x="{LEFT}" y="{HEIGHT - 6}">◂ wheels drop</text>',
        f'<text x="{WIDTH - RIGHT}" y="{HEIGHT - 6}" text-anchor="end">wheels rise ▸</text>',
    ]
    return (
        f'<svg viewBox="0 0 {WIDTH:.0f} {HEIGHT:.0f}" role="img" '
        f'aria-label="Steer against suspension travel">{"".join(parts)}</svg>'
    )


def _allowed(picture: CurvePicture, limit: float, x: Place, y: Place) -> Iterator[str]:
    if limit:
        start, end = x(-picture.working[0]), x(picture.working[1])
        yield (
            f'<rect class="allowed" x="{start:.1f}" y="{y(limit):.1f}" width="{end - start:.1f}" '
            f'height="{y(-limit) - y(limit):.1f}"/>'
        )


def _limit_words(picture: CurvePicture, limit: float, x: Place, y: Place) -> Iterator[str]:
    if limit:
        falls = picture.trace.value[-1] < 0  # the words go where the curve does not
        foot = y(limit) - 4 if falls else y(-limit) + 13
        yield (
            f'<text x="{x(picture.working[1]) - 4:.1f}" y="{foot:.1f}" text-anchor="end">'
            f"limit {limit:g} deg</text>"
        )


def _steer_lines(low: float, high: float, step: float, y: Place) -> Iterator[str]:
    for count in range(round(low / step), round(high / step) + 1):
        kind = "zero" if count == 0 else "grid"
        yield f'<path class="{kind}" d="M{LEFT} {y(count * step):.1f}H{WIDTH - RIGHT}"/>'
        yield (
            f'<text x="{LEFT - 8}" y="{y(count * step) + 4:.1f}" '
            f'text-anchor="end">{count * step:+g}</text>'.replace(">+0<", ">0<")
        )


def _travel_lines(droop: float, bump: float, unit: LengthUnit, x: Place) -> Iterator[str]:
    mm, step = TRAVEL[unit]
    foot = HEIGHT - BOTTOM
    for count in range(ceil(droop / mm / step), floor(bump / mm / step) + 1):
        at, amount = x(count * step * mm), f"{abs(count * step):g}"
        name = f"{amount} {unit}" if count else "ride height"
        yield f'<path class="grid" d="M{at:.1f} {foot}v5"/>'
        anchor = "end" if at > WIDTH - EDGE else "middle"
        yield f'<text x="{at:.1f}" y="{foot + 18}" text-anchor="{anchor}">{name}</text>'


def _joined(points: Sequence[tuple[float, float]]) -> str:
    return "L".join(f"{x:.1f} {y:.1f}" for x, y in points)
