"""Steer against suspension travel for paper, with its limit and uncertainty, as SVG."""

from collections.abc import Callable, Iterator, Sequence
from math import ceil, floor, isfinite

from core.text.quantity import LengthUnit
from wizard.views.picture_data import MM_IN, CurvePicture
from wizard.views.ticks import multiples, round_step

WIDTH, HEIGHT = 680.0, 170.0
"""The drawing, in units of its view box."""

LEFT, RIGHT, TOP, BOTTOM = 52.0, 14.0, 20.0, 40.0
"""Margins about the plot."""

MOST_LINES = 6
"""Most intervals of the axis of steer."""

FINEST = 0.1
"""deg; the axis of steer has no finer step."""

EDGE = 40.0
"""Distance from the right-hand edge within which a number has no room about its line."""

TRAVEL_STEP: dict[LengthUnit, float] = {"in": 1.0, "mm": 50.0}
"""Step of the axis of travel, in its unit."""

Place = Callable[[float], float]
"""Coordinate in the drawing of a heave or of an angle."""


def curve_svg(picture: CurvePicture) -> str:
    """The curve with its band of uncertainty, and the limits over the working travel."""
    trace = picture.trace
    points = [
        (heave, value, low, high)
        for heave, value, (low, high) in zip(trace.heave, trace.value, trace.edges(), strict=True)
        if isfinite(value)
    ]
    lowest, highest = picture.value_range()
    step = round_step(highest - lowest, MOST_LINES, least=FINEST)
    bottom, top = step * floor(lowest / step), step * ceil(highest / step)
    droop, bump = trace.heave[0], trace.heave[-1]

    def x(heave: float) -> float:
        return LEFT + (heave - droop) / (bump - droop) * (WIDTH - LEFT - RIGHT)

    def y(deg: float) -> float:
        return TOP + (top - deg) / (top - bottom) * (HEIGHT - TOP - BOTTOM)

    curve = [(x(heave), y(value)) for heave, value, *_ in points]
    upper_edge = [(x(heave), y(high)) for heave, _, _, high in points]
    lower_edge = [(x(heave), y(low)) for heave, _, low, _ in reversed(points)]
    parts = [
        *_allowed(picture, x, y),
        f'<path class="doubt" d="M{_joined(upper_edge + lower_edge)}Z"/>',
        *_steer_axis(multiples(bottom, top, step), y),
        *_travel_axis(droop, bump, picture.unit, x),
        *_limit_words(picture, x, y),
        f'<path class="trace" d="M{_joined(curve)}"/>',
        f'<text x="{LEFT + 6}" y="{TOP - 6}">{picture.upward}, deg</text>',
        f'<text x="{LEFT + 6}" y="{HEIGHT - BOTTOM - 5}">{picture.downward}</text>',
        f'<text x="{LEFT}" y="{HEIGHT - 6}">◂ wheels drop</text>',
        f'<text x="{WIDTH - RIGHT}" y="{HEIGHT - 6}" text-anchor="end">wheels rise ▸</text>',
    ]
    return (
        f'<svg viewBox="0 0 {WIDTH:.0f} {HEIGHT:.0f}" role="img" '
        f'aria-label="Steer against suspension travel">{"".join(parts)}</svg>'
    )


def _allowed(picture: CurvePicture, x: Place, y: Place) -> Iterator[str]:
    """The area that the limit allows over the working travel."""
    if picture.limit:
        start, end = x(-picture.working[0]), x(picture.working[1])
        above, below = y(picture.limit), y(-picture.limit)
        yield (
            f'<rect class="allowed" x="{start:.1f}" y="{above:.1f}" width="{end - start:.1f}" '
            f'height="{below - above:.1f}"/>'
        )


def _limit_words(picture: CurvePicture, x: Place, y: Place) -> Iterator[str]:
    """The limit in words, on the side of the area that the curve leaves free."""
    if picture.limit:
        falls = picture.trace.value[-1] < 0
        foot = y(picture.limit) - 4 if falls else y(-picture.limit) + 13
        yield (
            f'<text x="{x(picture.working[1]) - 4:.1f}" y="{foot:.1f}" text-anchor="end">'
            f"limit {picture.limit:g} deg</text>"
        )


def _steer_axis(values: Sequence[float], y: Place) -> Iterator[str]:
    """A line and a number for each value, deg."""
    for value in values:
        kind, number = ("grid", f"{value:+.6g}") if value else ("zero", "0")
        yield f'<path class="{kind}" d="M{LEFT} {y(value):.1f}H{WIDTH - RIGHT}"/>'
        yield f'<text x="{LEFT - 8}" y="{y(value) + 4:.1f}" text-anchor="end">{number}</text>'


def _travel_axis(droop: float, bump: float, unit: LengthUnit, x: Place) -> Iterator[str]:
    """A tick and its name at round heaves; `droop` and `bump` are the ends, mm."""
    mm, foot = MM_IN[unit], HEIGHT - BOTTOM
    for travel in multiples(droop / mm, bump / mm, TRAVEL_STEP[unit]):
        place = x(travel * mm)
        name = f"{abs(travel):g} {unit}" if travel else "ride height"
        yield f'<path class="grid" d="M{place:.1f} {foot}v5"/>'
        anchor = "end" if place > WIDTH - EDGE else "middle"
        yield f'<text x="{place:.1f}" y="{foot + 18}" text-anchor="{anchor}">{name}</text>'


def _joined(points: Sequence[tuple[float, float]]) -> str:
    """Points as the data of an SVG path."""
    return "L".join(f"{x:.1f} {y:.1f}" for x, y in points)
