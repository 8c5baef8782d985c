"""The linkage from above, to scale, centre to centre."""

from collections.abc import Mapping
from dataclasses import replace

from textual.events import Resize

from core.kinematics.pivots import DRAG_LINK_ENDS, NEAR_BALL, TRACK_BAR_ENDS
from wizard.phrases.reading_names import name_of_pivot
from wizard.tui.pictures.drawing import ACROSS, DOTTED, DOWN, Drawing, cell_of
from wizard.tui.pictures.labels import Label, Placed, place
from wizard.tui.pictures.scale import View, fit
from wizard.tui.pictures.side_view import (
    ASSUMED,
    ASSUMED_MARKS,
    AXLE_MARK,
    FRAME_MARK,
    ends_row,
    points_along,
)
from wizard.views.above import FAR_KINGPIN, NEAR_KINGPIN, SHAFT, AbovePicture
from wizard.views.above_path import AbovePath, above_path
from wizard.views.picture_data import Point

ENDS = (
    ("◂ vehicle's right", "from above, front ▾", "vehicle's left ▸"),
    ("◂ right", "front ▾", "left ▸"),
    ("◂ right", "left ▸"),
)
"""Words of the last row, at length and in short."""

TYRE = 230.0
"""Width of a tyre, mm. Invented, only for the drawing."""

STYLES = {"track bar": "track-bar", "drag link": "link", "tie rod": "tie-rod"}
"""Component class of a part without its prefix; arms are drawn as the axle is."""

NAMED = ("track bar", "drag link", "tie rod", "pitman arm")
"""Parts that are always named."""


class AboveView(Drawing):
    """Draws an AbovePicture."""

    COMPONENT_CLASSES = {
        "above-view--track-bar",
        "above-view--link",
        "above-view--tie-rod",
        "above-view--axle",
        "above-view--wheel",
        "above-view--tape",
        "above-view--label",
        "above-view--end",
    }

    def __init__(self, picture: AbovePicture | None = None, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self.picture = picture or AbovePicture()
        self.words: tuple[Placed, ...] = ()

    def show(self, picture: AbovePicture) -> None:
        """Show another picture."""
        self.picture, self.words = picture, ()
        self.redraw()

    def on_resize(self, event: Resize) -> None:
        """Forget the places of the words; `draw` finds new ones."""
        self.words = ()

    def draw(self) -> None:
        """Draw from the back of the picture to its front."""
        picture = self.picture
        if not picture.points:
            return
        view, path = self.view(), above_path(picture, picture.asked_reading)
        further = {name: tape for name in picture.tapes if (tape := above_path(picture, name))}
        for hub in picture.hubs:
            self.line(view.line(tyre(hub, picture.radius)), "above-view--wheel", DOTTED)
        self.line(view.line(picture.hubs), "above-view--wheel")
        for part, ends in picture.lines.items():
            self.line(view.line(ends), style_of(part), thick=part in STYLES)
        for tape in further.values():
            self.line(view.line(tape.path), "above-view--tape")
        if path:
            self.line(view.line(path.path), "above-view--tape", thick=not path.words)
        self.words = self.words or self.find_words(view, path, further)
        for word in self.words:
            self.write(word.column, word.row, word.text, word.style)
        for name in (FAR_KINGPIN, NEAR_KINGPIN, SHAFT):
            if name in picture.points:
                self.mark(view.dot(picture.points[name]), "+", "above-view--axle")
        for pivot in (*TRACK_BAR_ENDS, *DRAG_LINK_ENDS, NEAR_BALL):
            if pivot in picture.points:
                mark = FRAME_MARK if pivot.endswith("frame") else AXLE_MARK
                is_asked = path is not None and path.pivot == pivot
                self.mark(
                    view.dot(picture.points[pivot]),
                    ASSUMED_MARKS[mark] if pivot in picture.assumed else mark,
                    "above-view--tape" if is_asked else pivot_style(pivot),
                )

    def view(self) -> View:
        """The view that holds both wheels and every point, with a row for words on two sides."""
        tyres = [corner for hub in self.picture.hubs for corner in tyre(hub, self.picture.radius)]
        right, bottom = self.sheet.width * ACROSS - 1, self.sheet.height * DOWN - 1
        points = [*tyres, *self.picture.points.values()]
        lowest = fit(points, ACROSS, 2 * DOWN, right - ACROSS, bottom - DOWN - 1)
        highest = min(dot[1] for dot in lowest.line(points))
        return replace(lowest, top=lowest.top - max(highest - 2 * DOWN, 0.0) / 2)

    def find_words(
        self, view: View, path: AbovePath | None, further: Mapping[str, AbovePath]
    ) -> tuple[Placed, ...]:
        """Every word of the picture in its place."""
        size, picture = self.sheet, self.picture
        edge = ends_row(size.width, size.height - 1, ENDS, "above-view--end")
        if picture.assumed:
            edge += (Placed(0, 0, ASSUMED, "above-view--end"),)
        marks = {cell_of(view.dot(point)) for point in picture.points.values()}
        labels = []
        if path and path.words:
            anchors = points_along(view, *path.path)
            labels.append(Label(path.words, anchors, "above-view--tape", needed=True))
        if path and path.pivot:
            anchor = cell_of(view.dot(picture.points[path.pivot]))
            label = Label((name_of_pivot(path.pivot),), (anchor,), "above-view--tape", needed=True)
            labels.append(label)
        labels += [
            Label((picture.tapes[name],), points_along(view, *tape.path), "above-view--tape")
            for name, tape in further.items()
        ]
        labels += [
            Label((part,), points_along(view, *picture.lines[part]), style_of(part))
            for part in NAMED
            if part in picture.lines
        ]
        return edge + place(labels, (size.width, size.height), self.drawn_cells(), marks, edge)


def tyre(hub: Point, radius: float) -> tuple[Point, ...]:
    """Outline of a tyre in a view from above, mm."""
    across, rear = hub
    left, right = across - TYRE / 2, across + TYRE / 2
    front, back = rear - radius, rear + radius
    return (left, front), (right, front), (right, back), (left, back), (left, front)


def style_of(part: str) -> str:
    """Component class of a part."""
    return f"above-view--{STYLES.get(part, 'axle')}"


def pivot_style(pivot: str) -> str:
    """Component class of a pivot's mark."""
    link = pivot.partition(".")[0]
    return {"track_bar": "above-view--track-bar", "tie_rod": "above-view--tie-rod"}.get(
        link, "above-view--link"
    )
