"""Steer against suspension travel on paper, with limit and uncertainty, as SVG."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from html import escape
from math import ceil, floor, isfinite

from core.text.quantity import LengthUnit
from wizard.views.picture_data import MM_IN, CurvePicture, Point
from wizard.views.ticks import multiples, round_step, ticks

WIDTH, HEIGHT = 680.0, 170.0
LEFT, RIGHT, TOP, BOTTOM = 52.0, 14.0, 20.0, 40.0
"""Margins of the frame."""

MOST_STEER_INTERVALS, LEAST_STEER_STEP = 6, 0.1
"""Number of intervals on the axis of steer, and the smallest one, deg."""

MOST_TRAVEL_INTERVALS = 12

LEGEND = 92.0
"""Width of a name in the legend, with its line."""

LEAST_TRAVEL_STEP: dict[LengthUnit, float] = {"in": 1.0, "mm": 50.0}
"""Smallest interval on the axis of travel, in the unit of the axis."""

NO_ROOM = 40.0
"""Width beside the right-hand edge in which a number cannot stand centred below its line."""


@dataclass(frozen=True)
class Frame:
    """Ranges of the axes, and their places on the page.

    Attributes
    ----------
    droop, bump : float
        Heave at the left-hand and at the right-hand edge, mm.
    low, high : float
        Value at the lower and at the upper edge, deg.
    """

    droop: float
    bump: float
    low: float
    high: float

    def x(self, heave: float) -> float:
        """Place across of a heave."""
        share = (heave - self.droop) / (self.bump - self.droop)
        return LEFT + share * (WIDTH - LEFT - RIGHT)

    def y(self, value: float) -> float:
        """Place down the page of a value."""
        return TOP + (self.high - value) / (self.high - self.low) * (HEIGHT - TOP - BOTTOM)


def curve_svg(picture: CurvePicture) -> str:
    """The curve with the band of its uncertainty, and the limits over the working travel."""
    trace = picture.trace
    bottom, top = picture.value_range()
    step = round_step(top - bottom, MOST_STEER_INTERVALS, LEAST_STEER_STEP)
    low, high = step * floor(bottom / step), step * ceil(top / step)
    frame = Frame(trace.heave[0], trace.heave[-1], low, high)
    line, lower, upper = [], [], []
    for heave, value, (lowest, highest) in zip(
        trace.heave, trace.value, trace.edges(), strict=True
    ):
        if isfinite(value):
            x = frame.x(heave)
            line.append((x, frame.y(value)))
            lower.append((x, frame.y(lowest)))
            upper.append((x, frame.y(highest)))
    parts = [
        *_allowed_box(picture, frame),
        f'<path class="doubt" d="M{_joined([*upper, *reversed(lower)])}Z"/>',
        *_steer_lines(frame, step),
        *_travel_lines(frame, picture.unit),
        *_limit_words(picture, frame),
        *_other_traces(picture, frame),
        f'<path class="trace" d="M{_joined(line)}"/>',
        *_points(picture, frame),
        *_legend(picture),
        f'<text x="{LEFT + 6}" y="{TOP - 6}">{picture.upward}, deg</text>',
        f'<text x="{LEFT + 6}" y="{HEIGHT - BOTTOM - 5}">{picture.downward}</text>',
        f'<text x="{LEFT}" y="{HEIGHT - 6}">◂ wheels drop</text>',
        f'<text x="{WIDTH - RIGHT}" y="{HEIGHT - 6}" text-anchor="end">wheels rise ▸</text>',
    ]
    return (
        f'<svg viewBox="0 0 {WIDTH:.0f} {HEIGHT:.0f}" role="img" '
        f'aria-label="Steer against suspension travel">{"".join(parts)}</svg>'
    )


def _other_traces(picture: CurvePicture, frame: Frame) -> Iterator[str]:
    """The curve before the work, and the planned one."""
    for css_class, trace in (("compared", picture.compared), ("planned", picture.planned)):
        if trace is not None:
            points = [
                (frame.x(heave), frame.y(value))
                for heave, value in zip(trace.heave, trace.value, strict=True)
                if isfinite(value) and frame.droop <= heave <= frame.bump
            ]
            yield f'<path class="{css_class}" d="M{_joined(points)}"/>'


def _points(picture: CurvePicture, frame: Frame) -> Iterator[str]:
    """Measured steer with its uncertainty as bars."""
    for point in picture.points:
        if frame.droop <= point.heave <= frame.bump:
            x, (lower, upper) = frame.x(point.heave), map(frame.y, point.ends)
            yield f'<path class="bar" d="M{x:.1f} {upper:.1f}V{lower:.1f}"/>'
            yield f'<circle class="point" cx="{x:.1f}" cy="{frame.y(point.value):.1f}" r="3"/>'


def _legend(picture: CurvePicture) -> Iterator[str]:
    """The names of the curves, in the upper margin, where there are several."""
    traces = (
        ("compared", picture.compared),
        ("planned", picture.planned),
        ("trace", picture.trace),
    )
    shown = [(css_class, trace.name) for css_class, trace in traces if trace is not None]
    if len(shown) < 2:
        return
    x = WIDTH - RIGHT - LEGEND * len(shown)
    for css_class, name in shown:
        yield f'<path class="{css_class}" d="M{x} {TOP - 10}h24"/>'
        yield f'<text x="{x + 30}" y="{TOP - 6}">{escape(name)}</text>'
        x += LEGEND


def _allowed_box(picture: CurvePicture, frame: Frame) -> Iterator[str]:
    """The box that the curve must stay in over the working travel."""
    if picture.limit:
        droop, bump = picture.working
        start, end = frame.x(-droop), frame.x(bump)
        upper, lower = frame.y(picture.limit), frame.y(-picture.limit)
        yield (
            f'<rect class="allowed" x="{start:.1f}" y="{upper:.1f}" width="{end - start:.1f}" '
            f'height="{lower - upper:.1f}"/>'
        )


def _limit_words(picture: CurvePicture, frame: Frame) -> Iterator[str]:
    """The limit in words, at the edge of the box that the curve does not cross."""
    if picture.limit:
        falls = picture.trace.value[-1] < 0
        foot = frame.y(picture.limit) - 4 if falls else frame.y(-picture.limit) + 13
        yield (
            f'<text x="{frame.x(picture.working[1]) - 4:.1f}" y="{foot:.1f}" text-anchor="end">'
            f"limit {picture.limit:g} deg</text>"
        )


def _steer_lines(frame: Frame, step: float) -> Iterator[str]:
    """A line across the frame for each round value, with its number."""
    for value in multiples(frame.low, frame.high, step):
        css_class, number = ("grid", f"{value:+g}") if value else ("zero", "0")
        y = frame.y(value)
        yield f'<path class="{css_class}" d="M{LEFT} {y:.1f}H{WIDTH - RIGHT}"/>'
        yield f'<text x="{LEFT - 8}" y="{y + 4:.1f}" text-anchor="end">{number}</text>'


def _travel_lines(frame: Frame, unit: LengthUnit) -> Iterator[str]:
    """A mark below the frame for each round heave, with its number."""
    mm, least = MM_IN[unit], LEAST_TRAVEL_STEP[unit]
    foot = HEIGHT - BOTTOM
    for heave in ticks(frame.droop / mm, frame.bump / mm, MOST_TRAVEL_INTERVALS, least):
        x = frame.x(heave * mm)
        words = f"{abs(heave):g} {unit}" if heave else "ride height"
        anchor = "end" if x > WIDTH - NO_ROOM else "middle"
        yield f'<path class="grid" d="M{x:.1f} {foot}v5"/>'
        yield f'<text x="{x:.1f}" y="{foot + 18}" text-anchor="{anchor}">{words}</text>'


def _joined(points: Iterable[Point]) -> str:
    """Points as the rest of an SVG path."""
    return "L".join(f"{x:.1f} {y:.1f}" for x, y in points)
