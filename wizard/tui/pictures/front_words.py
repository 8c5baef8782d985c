"""The words of a front view, each where it can be read."""

from textual.geometry import Size

from wizard.tui.pictures.drawing import SOLID, along, cell_of
from wizard.tui.pictures.labels import GAP, Cell, Label, Placed, place
from wizard.tui.pictures.layout import BARS, links, places
from wizard.tui.pictures.scale import View
from wizard.tui.pictures.tape_path import TapePath
from wizard.views.picture_data import FrontPicture, Point

LINKS = {"track_bar": "track bar", "drag_link": "drag link", "tie_rod": "tie rod"}
ENDS = {"frame": "frame end", "axle": "axle end", "near": "near ball"}

SIDES = (
    ("◂ vehicle's right", "seen from the front", "vehicle's left ▸"),
    ("◂ its right", "from front", "its left ▸"),
    ("◂ its right", "its left ▸"),
)
"""What the last row says, at length and in short."""


SWEEP = 8
"""Every how manieth point of an arc is looked at for where the links pass."""

SHARES = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8)
"""Where along a link its name may stand."""


def front_words(
    picture: FrontPicture, path: TapePath | None, view: View, size: Size, drawn: set[Cell]
) -> tuple[Placed, ...]:
    """Every word of the picture in its place; none runs into another or off the edge."""
    edge = (*sides(size), *legend(picture))
    marks = {cell_of(view.dot(point)) for point in picture.pivots.values()}
    marks |= {cell_of(view.dot(point)) for point in picture.before.values()}
    if path:
        marks |= {cell_of(view.dot(point)) for point in path.rings}
    labels = [
        *tape_labels(picture, path, view),
        *link_labels(picture, view),
        *pivot_labels(picture, view, at_length=size.width >= 90),
    ]
    found = place(labels, (size.width, size.height), drawn | swept(picture, view), marks, edge)
    return edge + found


def sides(size: Size) -> tuple[Placed, ...]:
    """Which side of the vehicle is on which side of the picture."""
    words = next((each for each in SIDES if sum(map(len, each)) + 2 * GAP <= size.width), SIDES[-1])
    row = size.height - 1
    starts = (0, (size.width - len(words[1])) // 2, size.width - len(words[-1]))
    columns = starts if len(words) == 3 else (starts[0], starts[2])
    return tuple(
        Placed(column, row, text, "front-view--side")
        for column, text in zip(columns, words, strict=True)
    )


def legend(picture: FrontPicture) -> tuple[Placed, ...]:
    """What dashed and solid mean, where there are two geometries."""
    if not picture.before:
        return ()
    before, after = f"◇╌╌○ {picture.before_word}", f"◆━━● {picture.after_word}"
    return (
        Placed(1, 0, before, "front-view--before"),
        Placed(1 + len(before) + 3, 0, after, "front-view--label"),
    )


def tape_labels(picture: FrontPicture, path: TapePath | None, view: View) -> list[Label]:
    """What is asked for, and which way the tape goes."""
    if not path:
        return []
    spot = picture.asked.rpartition(".")[0]
    found = []
    if path.rings and spot in places(picture) and spot not in picture.pivots:
        texts = names(spot)
        found.append(Label(texts, cells(path.rings, view), "front-view--tape", needed=True))
    if path.path:
        start, end = path.path[0], path.path[-1]
        middle = tuple(part_way(start, end, share) for share in (0.5, 0.3, 0.7))
        found.append(Label((path.words,), cells(middle, view), "front-view--tape", needed=True))
    else:
        found.append(Label((path.words,), cells(path.rings, view), "front-view--tape", True))
    if path.words.startswith("across"):
        top = view.dot(path.path[0])
        found.append(Label(("datum line",), (cell_of((top[0], top[1] - 8)),), "front-view--tape"))
    return found


def link_labels(picture: FrontPicture, view: View) -> list[Label]:
    """The name of every link that is drawn, along it and on the side away from the others."""
    drawn = {
        link: cells(tuple(part_way(*ends, share) for share in SHARES), view)
        for link, ends in links(picture.pivots, picture.joint).items()
    }
    return [
        Label(
            with_note(LINKS[link], picture.notes.get(link)),
            along_link,
            f"front-view--{link.replace('_', '-')}",
            needed=True,
            rivals=tuple(cell for other in drawn if other != link for cell in drawn[other]),
        )
        for link, along_link in drawn.items()
    ]


def pivot_labels(picture: FrontPicture, view: View, at_length: bool) -> list[Label]:
    """What each pivot is; the link is named with it where it is not drawn yet."""
    drawn = links(picture.pivots, picture.joint)
    found = []
    for pivot, point in picture.pivots.items():
        link, end = pivot.split(".")
        texts = names(pivot)
        if link in drawn:
            short = (ENDS[end], ENDS[end].split()[0])
            texts = (texts[0], *short) if at_length else short
        if note := picture.notes.get(pivot):
            texts = (*(f"{text} {note}" for text in texts), note, *texts)
        rivals = tuple(spot for name, spot in picture.before.items() if name != pivot)
        found.append(
            Label(
                texts,
                cells((point,), view),
                "front-view--label",
                needed=link not in drawn,
                rivals=cells(rivals, view),
            )
        )
    return found


def with_note(text: str, note: str | None) -> tuple[str, ...]:
    """A text with its note where there is one, and without it where there is no room."""
    return (f"{text} {note}", text) if note else (text,)


def names(pivot: str) -> tuple[str, ...]:
    """A pivot's name, at length and in short."""
    link, end = pivot.split(".")
    if link == "wheels":
        return (f"{end} hub",)
    return (f"{LINKS[link]} {ENDS[end]}", f"{LINKS[link]} {end}")


def swept(picture: FrontPicture, view: View) -> set[Cell]:
    """Cells that the links pass through between the ends of the travel."""
    return {
        cell_of(dot)
        for link, (frame, axle) in BARS.items()
        if frame in picture.pivots
        for point in picture.arcs.get(axle, ())[::SWEEP]
        for dot in along(view.line((picture.pivots[frame], point)), SOLID)
    }


def cells(points: tuple[Point, ...], view: View) -> tuple[Cell, ...]:
    """Cells of several points."""
    return tuple(cell_of(view.dot(point)) for point in points)


def part_way(start: Point, end: Point, share: float) -> Point:
    """A point on the line between two."""
    return start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share
