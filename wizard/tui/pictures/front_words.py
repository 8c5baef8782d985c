"""The words of a front view, each at a place where it can be read."""

from collections.abc import Mapping

from textual.geometry import Size

from wizard.phrases.reading_names import END_NAMES, LINK_NAMES
from wizard.tui.pictures.drawing import SOLID, along, cell_of
from wizard.tui.pictures.labels import GAP, Cell, Label, Placed, place
from wizard.tui.pictures.scale import View
from wizard.views.picture_data import HUBS, LINK_ENDS, FrontPicture, Point, link_and_end, link_lines
from wizard.views.tape_path import TapeKind, TapePath, part_way

LINK_STYLES = {
    "track_bar": "front-view--track-bar",
    "drag_link": "front-view--drag-link",
    "tie_rod": "front-view--tie-rod",
}
"""Component class of each link."""

AIM_STYLE = "front-view--aim"
"""Component class of the places that a pivot aims at."""

TAPE_WORDS = {
    TapeKind.HEIGHT: "up from the floor",
    TapeKind.OFFSET: "across from the datum line",
    TapeKind.PLUMB_LINE: "plumb line",
    TapeKind.LINK_TAPE: "tape from ring to ring",
    TapeKind.SLOPE: "angle finder on the bar",
    TapeKind.FORE_AND_AFT: "fore and aft",
    TapeKind.ALONG_LINK: "along the link",
}
"""Words on the path of the tape."""

COORDINATES = (TapeKind.HEIGHT, TapeKind.OFFSET, TapeKind.PLUMB_LINE)
"""Readings that place a pivot, so that the pivot is named while it is not measured yet."""

SIDES = (
    ("◂ vehicle's right", "seen from the front", "vehicle's left ▸"),
    ("◂ its right", "from front", "its left ▸"),
    ("◂ its right", "its left ▸"),
)
"""Words of the last row, at length and in short."""

AT_LENGTH = 90
"""Columns from which the name of an end has its link before it."""

SWEEP = 8
"""Every eighth point of an arc is enough to find the cells that the links pass through."""

SHARES = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8)
"""Shares of a link at which its name may stand, the best first."""

TAPE_SHARES = (0.5, 0.3, 0.7)
"""Shares of the tape's path at which its words may stand, the best first."""

ABOVE = 8
"""Dots between the datum line's upper end and the point where its name is placed."""


def front_words(
    picture: FrontPicture,
    path: TapePath | None,
    further: Mapping[str, TapePath],
    view: View,
    size: Size,
    drawn: set[Cell],
) -> tuple[Placed, ...]:
    """Every word of the picture in its place; none meets another or crosses the edge.

    Parameters
    ----------
    picture : FrontPicture
    path : TapePath or None
        The way of the tape for the reading that is asked for.
    further : mapping of str to TapePath
        The ways of the tape for other readings that are shown.
    view : View
    size : Size
        Columns and rows.
    drawn : set of Cell
        Cells with lines in them.
    """
    edge = (*sides(size), *legend(picture))
    marks = {cell_of(view.dot(point)) for point in picture.pivots.values()}
    marks |= {cell_of(view.dot(point)) for point in picture.before.values()}
    aims = aim_labels(picture, view, size)
    for ((column, row),) in (label.anchors for label in aims):
        marks |= {(column - 1, row), (column, row), (column + 1, row)}
    if path:
        marks |= {cell_of(view.dot(point)) for point in path.rings}
    labels = [
        *tape_labels(picture, path, view),
        *further_labels(picture, further, view),
        *link_labels(picture, view),
        *aims,
        *pivot_labels(picture, view, at_length=size.width >= AT_LENGTH),
    ]
    crossed = drawn | swept_cells(picture, view)
    return edge + place(labels, (size.width, size.height), crossed, marks, edge)


def sides(size: Size) -> tuple[Placed, ...]:
    """Names of the vehicle's sides, at the sides of the picture."""
    words = next(
        (words for words in SIDES if sum(map(len, words)) + 2 * GAP <= size.width), SIDES[-1]
    )
    row = size.height - 1
    starts = (0, (size.width - len(words[1])) // 2, size.width - len(words[-1]))
    columns = starts if len(words) == 3 else (starts[0], starts[2])
    return tuple(
        Placed(column, row, text, "front-view--side")
        for column, text in zip(columns, words, strict=True)
    )


def legend(picture: FrontPicture) -> tuple[Placed, ...]:
    """Meaning of dashed and solid lines, where there are two geometries."""
    if not picture.before:
        return ()
    before, after = f"◇╌╌○ {picture.before_word}", f"◆━━● {picture.after_word}"
    return (
        Placed(1, 0, before, "front-view--before"),
        Placed(1 + len(before) + 3, 0, after, "front-view--label"),
    )


def tape_labels(picture: FrontPicture, path: TapePath | None, view: View) -> list[Label]:
    """Labels of the reading that is asked for: its pivot, the way of the tape, the datum line."""
    if not path:
        return []
    labels = []
    if path.kind in COORDINATES:
        labels += [
            Label(pivot_names(pivot), cells(path.rings, view), "front-view--tape", needed=True)
            for pivot in path.targets
            if pivot not in HUBS and pivot not in picture.pivots
        ]
    anchors = path.rings
    if path.path:
        anchors = tuple(part_way(path.path[0], path.path[-1], share) for share in TAPE_SHARES)
    words = (TAPE_WORDS[path.kind],)
    labels.append(Label(words, cells(anchors, view), "front-view--tape", needed=True))
    if path.kind is TapeKind.OFFSET:
        labels.append(datum_label(path, view))
    return labels


def further_labels(
    picture: FrontPicture, further: Mapping[str, TapePath], view: View
) -> list[Label]:
    """Labels of the other readings that are shown: a word on the way of each tape."""
    labels = []
    for name, path in further.items():
        anchors = tuple(part_way(path.path[0], path.path[-1], share) for share in TAPE_SHARES)
        labels.append(Label((picture.tapes[name],), cells(anchors, view), "front-view--tape"))
        if path.kind is TapeKind.OFFSET:
            labels.append(datum_label(path, view))
    return labels


def datum_label(path: TapePath, view: View) -> Label:
    """Label of the datum line that an offset begins at."""
    x, y = view.dot(path.path[0])
    return Label(("datum line",), (cell_of((x, y - ABOVE)),), "front-view--tape")


def link_labels(picture: FrontPicture, view: View) -> list[Label]:
    """The name of every link that is drawn, along it and on the side away from the others."""
    drawn = {
        link: cells(tuple(part_way(*ends, share) for share in SHARES), view)
        for link, ends in link_lines(picture.pivots, picture.joint).items()
    }
    return [
        Label(
            with_note(LINK_NAMES[link], picture.notes.get(link)),
            along_link,
            LINK_STYLES[link],
            needed=True,
            rivals=tuple(cell for other in drawn if other != link for cell in drawn[other]),
        )
        for link, along_link in drawn.items()
    ]


def aim_labels(picture: FrontPicture, view: View, size: Size) -> list[Label]:
    """The words of every aim inside the picture, after its mark: they may stand far from it."""
    labels = []
    for aim in picture.aims:
        cell = cell_of(view.dot(aim.point))
        if is_inside(cell, size):
            texts = tuple(f"{aim.mark} {text}" for text in aim.texts)
            labels.append(Label(texts, (cell,), AIM_STYLE, needed=aim.needed))
    return labels


def is_inside(cell: Cell, size: Size) -> bool:
    """True if a cell lies in the picture and above its floor."""
    column, row = cell
    return 0 <= column < size.width and 0 <= row < size.height - 2


def pivot_labels(picture: FrontPicture, view: View, at_length: bool) -> list[Label]:
    """The name of every pivot, with its link where the link is not drawn yet."""
    drawn = link_lines(picture.pivots, picture.joint)
    labels = []
    for pivot, point in picture.pivots.items():
        link, end = link_and_end(pivot)
        texts = pivot_names(pivot)
        if link in drawn:
            in_short = (END_NAMES[end], end)
            texts = (texts[0], *in_short) if at_length else in_short
        if note := picture.notes.get(pivot):
            texts = (*(f"{text} {note}" for text in texts), note, *texts)
        rivals = tuple(other for name, other in picture.before.items() if name != pivot)
        labels.append(
            Label(
                texts,
                cells((point,), view),
                "front-view--label",
                needed=link not in drawn,
                rivals=cells(rivals, view),
            )
        )
    return labels


def with_note(text: str, note: str | None) -> tuple[str, ...]:
    """A text with its note, and without it for a place that is too narrow."""
    return (f"{text} {note}", text) if note else (text,)


def pivot_names(pivot: str) -> tuple[str, ...]:
    """A pivot's name with its link, at length and in short."""
    link, end = link_and_end(pivot)
    return (f"{LINK_NAMES[link]} {END_NAMES[end]}", f"{LINK_NAMES[link]} {end}")


def swept_cells(picture: FrontPicture, view: View) -> set[Cell]:
    """Cells that the links pass through between the ends of the travel."""
    return {
        cell_of(dot)
        for frame, axle in LINK_ENDS.values()
        if frame in picture.pivots
        for point in picture.arcs.get(axle, ())[::SWEEP]
        for dot in along(view.line((picture.pivots[frame], point)), SOLID)
    }


def cells(points: tuple[Point, ...], view: View) -> tuple[Cell, ...]:
    """Cells of several points."""
    return tuple(cell_of(view.dot(point)) for point in points)
