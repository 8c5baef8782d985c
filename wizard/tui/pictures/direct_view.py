"""The set-up of a direct check from above, to scale."""

from wizard.tui.pictures.above_view import ENDS, tyre
from wizard.tui.pictures.drawing import ACROSS, DASHED, DOTTED, DOWN, Drawing, cell_of
from wizard.tui.pictures.labels import Label, place
from wizard.tui.pictures.scale import fit
from wizard.tui.pictures.side_view import ends_row, points_along
from wizard.views.direct_above import RADIUS, DirectPicture

CHALK_LINE, WALL_LINE = ("chalk line", "line"), ("line on the wall", "line")
"""Names of the line that is taped from, at length and in short."""


class DirectView(Drawing):
    """Draws a DirectPicture."""

    COMPONENT_CLASSES = {
        "direct-view--axle",
        "direct-view--part",
        "direct-view--tape",
        "direct-view--line",
        "direct-view--end",
    }

    def __init__(self, picture: DirectPicture | None = None, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self.picture = picture or DirectPicture()

    def show(self, picture: DirectPicture) -> None:
        """Show another picture."""
        self.picture = picture
        self.redraw()

    def draw(self) -> None:
        """Draw from the back of the picture to its front."""
        picture = self.picture
        tyres = [tyre(hub, RADIUS) for hub in picture.hubs]
        points = [*(corner for each in tyres for corner in each), *picture.line, *picture.wall]
        points += [point for part in picture.parts.values() for point in part]
        right, bottom = self.sheet.width * ACROSS - 1, self.sheet.height * DOWN - 1
        view = fit(points, ACROSS, DOWN, right - ACROSS, bottom - 2 * DOWN)
        for each in tyres:
            self.line(view.line(each), "direct-view--axle")
        self.line(view.line(picture.hubs), "direct-view--axle")
        labels = []
        for name, part in picture.parts.items():
            self.line(view.line(part), "direct-view--part", thick=len(part) == 2)
            anchors = tuple(cell_of(dot) for dot in view.line(part))
            labels.append(Label((name,), anchors, "direct-view--part", needed=True))
        if picture.wall:
            self.line(view.line(picture.wall), "direct-view--axle", thick=True)
            end = cell_of(view.line(picture.wall)[0])
            labels.append(Label(("wall",), (end,), "direct-view--axle"))
        if picture.line:
            self.line(view.line(picture.line), "direct-view--line", DOTTED)
            cells = tuple(cell_of(dot) for dot in view.line(picture.line))
            names = WALL_LINE if picture.wall else CHALK_LINE
            labels.append(Label(names, cells, "direct-view--line", needed=True))
        for name, tape in picture.tapes.items():
            self.line(view.line(tape), "direct-view--tape", DASHED)
            anchors = points_along(view, *tape)
            labels.append(Label((name,), anchors, "direct-view--tape", needed=True))
        edge = ends_row(self.sheet.width, self.sheet.height - 1, ENDS, "direct-view--end")
        size = self.sheet.width, self.sheet.height
        for word in edge + place(labels, size, self.drawn_cells(), set(), edge):
            self.write(word.column, word.row, word.text, word.style)
