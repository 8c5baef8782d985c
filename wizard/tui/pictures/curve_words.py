"""Words and numbers of a curve."""

from itertools import groupby
from math import isfinite

from textual.geometry import Size

from core.text.quantity import LengthUnit
from wizard.phrases.amounts import place_in_travel
from wizard.tui.pictures.drawing import cell_of
from wizard.tui.pictures.labels import GAP, Cell, Label, Placed, place
from wizard.tui.pictures.plot import GUTTER, Plot
from wizard.views.picture_data import MM_IN, CurvePicture


def curve_words(
    picture: CurvePicture, plot: Plot, size: Size, drawn: set[Cell]
) -> tuple[Placed, ...]:
    """Numbers of both axes, names of their ends, legend, limit and gaps."""
    fixed = (
        *heading(picture, size),
        *value_numbers(plot),
        *heave_numbers(plot, picture.unit, size),
        *ends(size),
    )
    labels = gaps(picture, plot)
    corner = cell_of(plot.dot((plot.low, plot.bottom)))
    labels.append(Label((f"▼ {picture.downward}",), (corner,), "curve--word", needed=True))
    if picture.limit is not None:
        labels += limits(picture, plot)
    return fixed + place(labels, (size.width, size.height), drawn, (), fixed)


def heading(picture: CurvePicture, size: Size) -> tuple[Placed, ...]:
    """Meaning of upward, and the name of each line as far as there is room."""
    lines = []
    if picture.compared:
        lines.append((f"━━ {picture.trace.name}", "curve--line"))
        lines.append((f"╌╌ {picture.compared.name}", "curve--other"))
    room = size.width - sum(len(text) + GAP + 1 for text, _ in lines)
    upward = f"▲ {picture.upward}, deg"
    entries = [(upward if len(upward) <= room else f"▲ {picture.upward}", "curve--word"), *lines]
    if picture.trace.expanded_uncertainty is not None:
        entries.append(("·· give or take", "curve--give"))
    found: list[Placed] = []
    column = 0
    for text, style in entries:
        if column + len(text) <= size.width:
            found.append(Placed(column, 0, text, style))
            column += len(text) + GAP + 1
    return tuple(found)


def value_numbers(plot: Plot) -> tuple[Placed, ...]:
    """Numbers of the upright axis, to the left of the frame."""
    found = []
    for value in plot.value_ticks():
        text = f"{value:+.6g}" if abs(value) > 1e-9 else "0"
        row = cell_of(plot.dot((plot.low, value)))[1]
        found.append(Placed(max(0, GUTTER - 1 - len(text)), row, text, "curve--word"))
    return tuple(found)


def heave_numbers(plot: Plot, unit: LengthUnit, size: Size) -> tuple[Placed, ...]:
    """Numbers of the axis of travel, below the frame."""
    found: list[Placed] = []
    for heave in plot.heave_ticks(unit):
        text = f"{heave:+.6g}" if abs(heave) > 1e-9 else f"0 {unit}"
        middle = cell_of(plot.dot((heave * MM_IN[unit], plot.bottom)))[0]
        column = min(max(0, middle - len(text) // 2), size.width - len(text))
        spot = Placed(column, size.height - 2, text, "curve--word")
        if not any(spot.touches(other) for other in found):
            found.append(spot)
    return tuple(found)


def ends(size: Size) -> tuple[Placed, ...]:
    """Names of the two ends of the travel."""
    row = size.height - 1
    return (
        Placed(GUTTER - 1, row, "◂ droop", "curve--word"),
        Placed(size.width - len("bump ▸"), row, "bump ▸", "curve--word"),
    )


def gaps(picture: CurvePicture, plot: Plot) -> list[Label]:
    """A label wherever the linkage cannot reach."""
    pairs = list(zip(picture.trace.heave, picture.trace.value, strict=True))
    found = []
    for reaches, run in groupby(pairs, key=lambda pair: isfinite(pair[1])):
        if not reaches:
            heaves = [heave for heave, _ in run]
            middle = (heaves[0] + heaves[-1]) / 2
            spot = cell_of(plot.dot((middle, 0.0)))
            found.append(Label(("cannot reach",), (spot,), "curve--heave", needed=True))
    return found


def limits(picture: CurvePicture, plot: Plot) -> list[Label]:
    """Labels of the limit, above and below."""
    limit, (droop, bump) = picture.limit or 0.0, picture.working
    texts = f"limit {limit:g} deg", f"limit {limit:g}", "limit"
    found = []
    for level in (limit, -limit):
        heaves = (bump * 0.6, -droop * 0.6, 0.0, bump, -droop)
        anchors = tuple(cell_of(plot.dot((heave, level))) for heave in heaves)
        found.append(Label(texts, anchors, "curve--limit", needed=level > 0))
    return found


def readout(picture: CurvePicture, now: float, size: Size) -> tuple[Placed, ...]:
    """Heave and steer of the axle, in the middle of the last row."""
    if picture.axle_heave is None:
        return ()
    travel = place_in_travel(picture.axle_heave, picture.unit)
    does = picture.upward if now > 0 else picture.downward
    value = f"{abs(now):.2f} deg" if isfinite(now) else "cannot reach"
    if value == "0.00 deg":
        does, value = "steers", "0 deg"
    texts = (
        f"at {travel}: {does} {value}" if isfinite(now) else f"at {travel}: {value}",
        f"{travel}: {value}",
        value,
    )
    left, right = GUTTER - 1 + len("◂ droop") + GAP, size.width - len("bump ▸") - GAP
    text = next((text for text in texts if len(text) <= right - left), "")
    return (Placed(left + (right - left - len(text)) // 2, size.height - 1, text, "curve--heave"),)
