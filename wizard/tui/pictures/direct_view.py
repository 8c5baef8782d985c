"""The set-up of a direct check from above, to scale."""

from wizard.tui.pictures.above_view import ENDS, TYRE
from wizard.tui.pictures.drawing import ACROSS, DASHED, DOTTED, DOWN, Drawing, cell_of
from wizard.tui.pictures.labels import Label, place
from wizard.tui.pictures.scale import fit
from wizard.tui.pictures.side_view import ends_row, points_along
from wizard.views.direct_above import RADIUS, DirectPicture
from wizard.views.picture_data import Point

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
        tyres = [tyre_at(hub) for hub in picture.hubs]
        corners = [*(corner for tyre in tyres for corner in tyre), *picture.line, *picture.wall]
        corners += [point for part in picture.parts.values() for point in part]
        right, bottom = self.sheet.width * ACROSS - 1, self.sheet.height * DOWN - 1
        # The front is at the bottom: down on the screen is ahead.
        view = fit(
            [(across, -ahead) for across, ahead in corners],
            ACROSS,
            DOWN,
            right - ACROSS,
            bottom - 2 * DOWN,
        )

        def dots(points: tuple[Point, ...]) -> list[tuple[float, float]]:
            return view.line((across, -ahead) for across, ahead in points)

        for tyre in tyres:
            self.line(dots(tyre), "direct-view--axle")
        self.line(dots(picture.hubs), "direct-view--axle")
        labels = []
        for name, part in picture.parts.items():
            self.line(dots(part), "direct-view--part", thick=len(part) == 2)
            anchors = tuple(cell_of(dot) for dot in dots(part))
            labels.append(Label((name,), anchors, "direct-view--part", needed=True))
        if picture.wall:
            self.line(dots(picture.wall), "direct-view--axle", thick=True)
            end = cell_of(dots(picture.wall)[0])
            labels.append(Label(("wall",), (end,), "direct-view--axle"))
        if picture.line:
            self.line(dots(picture.line), "direct-view--line", DOTTED)
            cells = tuple(cell_of(dot) for dot in dots(picture.line))
            names = WALL_LINE if picture.wall else CHALK_LINE
            labels.append(Label(names, cells, "direct-view--line", needed=True))
        for name, tape in picture.tapes.items():
            self.line(dots(tape), "direct-view--tape", DASHED)
            flipped = tuple((across, -ahead) for across, ahead in tape)
            anchors = points_along(view, *flipped)
            labels.append(Label((name,), anchors, "direct-view--tape", needed=True))
        edge = ends_row(self.sheet.width, self.sheet.height - 1, ENDS, "direct-view--end")
        size = self.sheet.width, self.sheet.height
        for word in edge + place(labels, size, self.drawn_cells(), set(), edge):
            self.write(word.column, word.row, word.text, word.style)


def tyre_at(hub: Point) -> tuple[Point, ...]:
    """Outline of a tyre, mm."""
    across, ahead = hub
    left, right = across - TYRE / 2, across + TYRE / 2
    return (
        (left, ahead - RADIUS),
        (right, ahead - RADIUS),
        (right, ahead + RADIUS),
        (left, ahead + RADIUS),
        (left, ahead - RADIUS),
    )
