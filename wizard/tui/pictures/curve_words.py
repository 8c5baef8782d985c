"""The words and numbers of a curve."""

from itertools import groupby
from math import isfinite

from textual.geometry import Size

from core.text.quantity import LengthUnit
from wizard.phrases.amounts import place_in_travel
from wizard.tui.pictures.drawing import cell_of
from wizard.tui.pictures.labels import GAP, Cell, Label, Placed, place
from wizard.tui.pictures.plot import GUTTER, Plot
from wizard.views.picture_data import MM_IN, CurvePicture

NEARLY_ZERO = 1e-9
"""Size below which a number on an axis is 0."""

LIMIT_SHARE = 0.6
"""Share of the working travel at which the word on the limit is placed first."""


def curve_words(
    picture: CurvePicture, plot: Plot, size: Size, drawn: set[Cell]
) -> tuple[Placed, ...]:
    """Numbers and ends of both axes, legend, limit and gaps, each at its place.

    Parameters
    ----------
    picture : CurvePicture
    plot : Plot
    size : Size
        Columns and rows.
    drawn : set of Cell
        Cells with lines in them.
    """
    fixed = (
        *heading(picture, size),
        *value_numbers(plot),
        *heave_numbers(plot, picture.unit, size),
        *travel_ends(picture, size),
    )
    labels = gap_labels(picture, plot)
    corner = cell_of(plot.dot((plot.low, plot.bottom)))
    if picture.downward:
        labels.append(Label((f"▼ {picture.downward}",), (corner,), "curve--word", needed=True))
    if picture.limit is not None:
        labels += limit_labels(picture, plot)
    return fixed + place(labels, (size.width, size.height), drawn, (), fixed)


def heading(picture: CurvePicture, size: Size) -> tuple[Placed, ...]:
    """Meaning of upward, and the legend of the lines as far as there is room."""
    lines = []
    if picture.compared:
        lines.append((f"━━ {picture.trace.name}", "curve--line"))
        lines.append((f"╌╌ {picture.compared.name}", "curve--compared"))
    room = size.width - sum(len(text) + GAP + 1 for text, _ in lines)
    upward = f"▲ {picture.upward}, deg"
    entries = [(upward if len(upward) <= room else f"▲ {picture.upward}", "curve--word"), *lines]
    if picture.trace.expanded_uncertainty is not None:
        entries.append(("·· give or take", "curve--uncertainty"))
    words: list[Placed] = []
    column = 0
    for text, style in entries:
        if column + len(text) <= size.width:
            words.append(Placed(column, 0, text, style))
            column += len(text) + GAP + 1
    return tuple(words)


def value_numbers(plot: Plot) -> tuple[Placed, ...]:
    """Numbers of the upright axis, to the left of the frame."""
    numbers = []
    for value in plot.value_ticks():
        text = f"{value:+.6g}" if abs(value) > NEARLY_ZERO else "0"
        row = cell_of(plot.dot((plot.low, value)))[1]
        numbers.append(Placed(max(0, GUTTER - 1 - len(text)), row, text, "curve--word"))
    return tuple(numbers)


def heave_numbers(plot: Plot, unit: LengthUnit, size: Size) -> tuple[Placed, ...]:
    """Numbers of the axis of travel, below the frame."""
    numbers: list[Placed] = []
    for heave in plot.heave_ticks(unit):
        text = f"{heave:+.6g}" if abs(heave) > NEARLY_ZERO else f"0 {unit}"
        middle = cell_of(plot.dot((heave * MM_IN[unit], plot.bottom)))[0]
        column = min(max(0, middle - len(text) // 2), size.width - len(text))
        number = Placed(column, size.height - 2, text, "curve--word")
        if not any(number.touches(other) for other in numbers):
            numbers.append(number)
    return tuple(numbers)


def travel_ends(picture: CurvePicture, size: Size) -> tuple[Placed, ...]:
    """Names of both ends of the travel, in the last row."""
    row = size.height - 1
    droop, bump = picture.ends
    return (
        Placed(GUTTER - 1, row, droop, "curve--word"),
        Placed(size.width - len(bump), row, bump, "curve--word"),
    )


def gap_labels(picture: CurvePicture, plot: Plot) -> list[Label]:
    """A label for each gap, where the linkage cannot reach."""
    pairs = list(zip(picture.trace.heave, picture.trace.value, strict=True))
    labels = []
    for reaches, run in groupby(pairs, key=lambda pair: isfinite(pair[1])):
        if not reaches:
            heaves = [heave for heave, _ in run]
            middle = (heaves[0] + heaves[-1]) / 2
            spot = cell_of(plot.dot((middle, 0.0)))
            labels.append(Label(("cannot reach",), (spot,), "curve--heave", needed=True))
    return labels


def limit_labels(picture: CurvePicture, plot: Plot) -> list[Label]:
    """Labels of the limit, above and below."""
    limit, (droop, bump) = picture.limit or 0.0, picture.working
    texts = f"limit {limit:g} deg", f"limit {limit:g}", "limit"
    labels = []
    for level in (limit,) if picture.one_sided else (limit, -limit):
        heaves = (bump * LIMIT_SHARE, -droop * LIMIT_SHARE, 0.0, bump, -droop)
        anchors = tuple(cell_of(plot.dot((heave, level))) for heave in heaves)
        labels.append(Label(texts, anchors, "curve--limit", needed=level > 0))
    return labels


def axle_readout(picture: CurvePicture, value: float, size: Size) -> tuple[Placed, ...]:
    """Heave of the axle and its value (deg), in the middle of the last row."""
    if picture.axle_heave is None:
        return ()
    travel = place_in_travel(picture.axle_heave, picture.unit)
    if not isfinite(value):
        texts = [f"at {travel}: cannot reach", f"{travel}: cannot reach", "cannot reach"]
    elif round(value, 2) == 0:
        texts = [f"at {travel}: steers 0 deg", f"{travel}: 0 deg", "0 deg"]
    else:
        amount = f"{abs(value):.2f} deg"
        effect = picture.upward if value > 0 else picture.downward
        texts = [f"at {travel}: {effect} {amount}", f"{travel}: {amount}", amount]
    start, end = picture.ends
    left, right = GUTTER - 1 + len(start) + GAP, size.width - len(end) - GAP
    text = next((text for text in texts if len(text) <= right - left), "")
    return (Placed(left + (right - left - len(text)) // 2, size.height - 1, text, "curve--heave"),)
