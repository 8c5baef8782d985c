"""Drawings of a sheet: where the tape goes, from the front, from above and from the side, as SVG.

They have the data of the pictures on the terminal. A number is that of a line of the sheet.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from math import cos, pi, sin

from core.kinematics.pivots import NEAR_BALL, PIVOTS, GuideKind
from wizard.phrases.reading_names import LINK_NAMES
from wizard.printed.sketch import Sketch
from wizard.questions.sheet_order import SheetLine
from wizard.views.above import FAR_KINGPIN, NEAR_KINGPIN, SHAFT, AbovePicture
from wizard.views.above_path import above_path
from wizard.views.picture_data import HUBS, LEFT_HUB, LINK_ENDS, RIGHT_HUB, Point
from wizard.views.side import SidePicture
from wizard.views.side_path import kingpin_line, side_path
from wizard.views.tape_path import TARGETS, TapeKind, TapePath, part_way, tape_path

WIDE, HIGH = 548.0, 208.0
"""Size of the view from the front, in units of the page (a quarter of a millimetre)."""

NARROW, LOW = 268.0, 178.0
"""Size of the view from above and of that from the side."""

DATUM_BESIDE = 330.0
"""Distance of the drawn datum line from the left wheel, mm."""

TYRE = 230.0
"""Width of a drawn tyre, mm. Invented."""

CLASSES = {"track bar": "track-bar", "drag link": "drag-link", "tie rod": "tie-rod"}
"""Class of each link in the stylesheet, by its name; arms are drawn as the axle is."""

SHARES = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8)
"""Shares of a line at which its number may stand, the best first."""

RULER_BELOW = 11.0
"""Distance of the ruler of the offsets below the floor, in units of the page."""

SIDE_MARGINS = (12.0, 18.0, 12.0, 20.0)
TURNS = tuple(turn * pi / 24 for turn in range(49))


def front_sheet_svg(lines: Sequence[SheetLine], places: Mapping[str, Point]) -> str:
    """Heights, offsets, lengths, slopes and braces, from the front.

    Parameters
    ----------
    lines : sequence of SheetLine
    places : mapping of str to Point
        Usual places of pivots and hubs, mm.
    """
    where = {name: places[name] for name in (*_pivots_of(lines, places), *HUBS)}
    pivots = {name: point for name, point in where.items() if name not in HUBS}
    left, right = where[LEFT_HUB], where[RIGHT_HUB]
    datum = left[0] + DATUM_BESIDE
    top = max(2 * left[1], *(up for _, up in where.values()))
    farthest = min(across for across, _ in where.values()) - TYRE / 2
    corners = [(farthest, 0.0), (datum, 0.0), (datum, top)]
    sketch = Sketch(corners, WIDE, HIGH, (14.0, 20.0, 14.0, 34.0))
    floor = sketch.place((0.0, 0.0))[1]
    sketch.page_line("floor", [(0.0, floor), (WIDE, floor)])
    for across, up in (left, right):
        sketch.line("tyre", _box(across, TYRE / 2, 0.0, 2 * up))
    sketch.line("axle", [left, right])
    _draw_front_tapes(sketch, _questions(lines), where, datum, top)
    for link, ends in LINK_ENDS.items():
        if all(end in pivots for end in ends):
            sketch.line(CLASSES[LINK_NAMES[link]], [pivots[end] for end in ends])
    _mark_ends(sketch, pivots)
    _write_edge(sketch, "◂ vehicle's right", "seen from the front", "vehicle's left ▸")
    x, y = sketch.place((datum, top))
    sketch.text("datum line", (x + 12, y - 6), "end")
    for line in lines:
        name = _reading(line)
        path = _front_path(name, where)
        if path is not None:
            sketch.number(line.number, _front_anchors(sketch, path, line))
    return sketch.svg("The front axle from the front, with the ways of the tape")


def above_sheet_svg(lines: Sequence[SheetLine], picture: AbovePicture) -> str:
    """Stations, arms and the joint of the tie rod, from above."""
    tyres = [_box(across, TYRE / 2, -picture.radius, picture.radius) for across, _ in picture.hubs]
    corners = [*(corner for tyre in tyres for corner in tyre), *picture.points.values()]
    sketch = Sketch(corners, NARROW, LOW, SIDE_MARGINS)
    for tyre in tyres:
        sketch.line("tyre", tyre)
    sketch.line("axle", picture.hubs)
    for part, ends in picture.lines.items():
        sketch.line(CLASSES.get(part, "arm"), ends)
    paths = {}
    for line in lines:
        for question in line.questions:
            name = question.path.removeprefix("readings.")
            path = above_path(picture, name)
            if path and path.words:
                paths[line.number] = path
                sketch.line("tape", path.path)
    _mark_ends(
        sketch,
        {name: picture.points[name] for name in (*PIVOTS, NEAR_BALL) if name in picture.points},
    )
    for name in (FAR_KINGPIN, NEAR_KINGPIN, SHAFT):
        if name in picture.points:
            _cross(sketch, picture.points[name])
    _write_edge(sketch, "◂ right", "from above, front ▾", "left ▸")
    for number, path in paths.items():
        start, end = path.path
        anchors = [end] if path.pivot else [part_way(start, end, share) for share in SHARES]
        sketch.number(number, [sketch.place(anchor) for anchor in anchors])
    return sketch.svg("The linkage from above, with the ways of the tape")


def side_sheet_svg(lines: Sequence[SheetLine], picture: SidePicture) -> str:
    """Heights and stations of the guide, and the castor, from the vehicle's left side."""
    across, up = picture.hub
    corners = [(across - up, 0.0), (across + up, 2 * up), *picture.pivots.values()]
    if picture.guide is GuideKind.LEAF:
        corners += _bowed(picture.pivots["guide.eye"], picture.pivots["guide.seat"])
    sketch = Sketch(corners, NARROW, LOW, SIDE_MARGINS)
    floor = sketch.place((0.0, 0.0))[1]
    sketch.page_line("floor", [(0.0, floor), (NARROW, floor)])
    wheel = [(across + up * cos(turn), up + up * sin(turn)) for turn in TURNS]
    sketch.line("tyre", wheel)
    sketch.line("kingpin", kingpin_line(picture.hub, up, picture.castor))
    for css_class, points in _guide_lines(picture):
        sketch.line(css_class, points)
    paths = {}
    for line in lines:
        for question in line.questions:
            name = question.path.removeprefix("readings.")
            path = side_path(replace(picture, asked_reading=name))
            if path and len(path.path) > 1:
                paths[line.number] = path
                sketch.line("tape", path.path)
    _mark_ends(sketch, picture.pivots)
    _cross(sketch, picture.hub)
    _write_edge(sketch, "◂ front", "from the left", "rear ▸")
    for number, path in paths.items():
        anchors = [picture.pivots[path.pivot]] if path.pivot else [path.path[-1], path.path[0]]
        sketch.number(number, [sketch.place(anchor) for anchor in anchors])
    return sketch.svg("The guide of the axle from the side, with the ways of the tape")


def _questions(lines: Iterable[SheetLine]) -> list[str]:
    """Names of all readings of the sheet."""
    return [
        question.path.removeprefix("readings.") for line in lines for question in line.questions
    ]


def _reading(line: SheetLine) -> str:
    """Name of the reading that a line's number stands at."""
    return line.questions[0].path.removeprefix("readings.")


def _pivots_of(lines: Iterable[SheetLine], places: Mapping[str, Point]) -> list[str]:
    """Pivots of the links that the sheet has a line for."""
    named = {_reading(line).rpartition(".")[0] for line in lines}
    return [name for name in (*PIVOTS, NEAR_BALL) if name in named and name in places]


def _front_path(name: str, where: Mapping[str, Point]) -> TapePath | None:
    """Way of the tape of a reading that the view from the front shows best, else None."""
    kind, targets = TARGETS.get(name, (TapeKind.FORE_AND_AFT, ()))
    elsewhere = (TapeKind.FORE_AND_AFT, TapeKind.ALONG_LINK, TapeKind.PLUMB_LINE)
    if kind in elsewhere or not all(target in where for target in targets):
        return None
    return tape_path(name, where)


def _draw_front_tapes(
    sketch: Sketch, names: Iterable[str], where: Mapping[str, Point], datum: float, top: float
) -> None:
    """Draw the heights, the braces, and the ruler of the offsets from the datum line."""
    x, floor = sketch.place((datum, 0.0))
    ruler = floor + RULER_BELOW
    feet = [x]
    for name in names:
        path = _front_path(name, where)
        if path and path.kind is TapeKind.HEIGHT:
            sketch.line("tape", path.path)
        elif path and path.kind is TapeKind.OFFSET:
            foot = sketch.place(path.path[-1])[0]
            sketch.page_line("tape", [(foot, floor), (foot, ruler + 4)])
            feet.append(foot)
        elif name.startswith("braces.") and path:
            sketch.line("brace", path.path)
    sketch.page_line("datum", [sketch.place((datum, top)), (x, ruler + 4)])
    sketch.page_line("ruler", [(min(feet), ruler), (x, ruler)])


def _front_anchors(sketch: Sketch, path: TapePath, line: SheetLine) -> list[Point]:
    """Points of the page beside which the number of a line may stand."""
    start, end = path.path[0], path.path[-1]
    if path.kind is TapeKind.OFFSET:  # a wheel
        foot = sketch.place((end[0], 0.0))
        return [(foot[0], foot[1] + RULER_BELOW)]
    if path.kind is TapeKind.HEIGHT:
        anchors = [end] if line.is_pivot else [part_way(start, end, share) for share in SHARES]
    else:
        anchors = [part_way(start, end, share) for share in SHARES]
    return [sketch.place(anchor) for anchor in anchors]


def _guide_lines(picture: SidePicture) -> Iterable[tuple[str, Sequence[Point]]]:
    """Arms, springs, brackets and a lengthwise drag link, each with its class."""
    pivots, hub = picture.pivots, picture.hub
    if picture.guide is GuideKind.RADIUS_ARMS:
        yield "guide", (pivots["guide.frame"], hub)
    if picture.guide is GuideKind.TWO_ARMS:
        yield "arm", (pivots["guide.lower_axle"], hub, pivots["guide.upper_axle"])
        for arm in ("lower", "upper"):
            yield "guide", (pivots[f"guide.{arm}_frame"], pivots[f"guide.{arm}_axle"])
    if picture.guide is GuideKind.LEAF:
        eye, seat = pivots["guide.eye"], pivots["guide.seat"]
        yield "arm", (seat, hub)
        yield "guide", _bowed(eye, seat)
    if "drag_link.frame" in pivots:
        yield "drag-link", (pivots["drag_link.frame"], pivots["drag_link.axle"])


def _bowed(eye: Point, seat: Point) -> list[Point]:
    """A leaf spring from its fixed eye over its seat to the shackle, which mirrors the eye, mm."""
    reach = eye[0] - seat[0]
    steps = [step / 8 - 1 for step in range(17)]
    return [(seat[0] - reach * step, seat[1] + (eye[1] - seat[1]) * step**2) for step in steps]


def _mark_ends(sketch: Sketch, pivots: Mapping[str, Point]) -> None:
    """Mark the pivots: squares on the frame, rings on the axle."""
    for name, point in pivots.items():
        if name.endswith(("frame", "guide.eye")):
            sketch.end("frame-end", point)
        elif name.endswith(("axle", "near", "guide.seat")):
            sketch.end("axle-end", point)


def _cross(sketch: Sketch, point: Point) -> None:
    """Mark a kingpin, a shaft or a hub with a cross."""
    x, y = sketch.place(point)
    sketch.page_line("cross", [(x - 5, y), (x + 5, y)])
    sketch.page_line("cross", [(x, y - 5), (x, y + 5)])


def _write_edge(sketch: Sketch, left: str, middle: str, right: str) -> None:
    """Write the sides of the vehicle below a drawing."""
    foot = sketch.height - 3
    sketch.text(left, (2.0, foot))
    sketch.text(middle, (sketch.width / 2, foot), "middle")
    sketch.text(right, (sketch.width - 2, foot), "end")


def _box(across: float, half: float, low: float, high: float) -> list[Point]:
    """Outline of a tyre."""
    left, right = across + half, across - half
    return [(left, low), (left, high), (right, high), (right, low), (left, low)]
