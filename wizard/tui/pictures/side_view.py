"""The guide of the axle from the vehicle's left side, to scale, centre to centre."""

from collections.abc import Iterator, Mapping, Sequence
from math import cos, pi, sin

from textual.events import Resize

from core.kinematics.pivots import GuideKind
from wizard.phrases.reading_names import name_of_pivot
from wizard.tui.pictures.drawing import ACROSS, DASHED, DOTTED, DOWN, Drawing, cell_of
from wizard.tui.pictures.labels import GAP, Cell, Label, Placed, place
from wizard.tui.pictures.scale import View, fit
from wizard.views.picture_data import Point
from wizard.views.side import SHAFT, SidePicture, SidePose
from wizard.views.side_path import SidePath, kingpin_line, side_path
from wizard.views.tape_path import part_way

FRAME_MARK, AXLE_MARK = "◆", "●"
ASSUMED_MARKS = {FRAME_MARK: "◇", AXLE_MARK: "○"}
"""Marks of a pivot: at its measured place, and at an assumed one."""

ENDS = (
    ("◂ front", "seen from the left", "rear ▸"),
    ("◂ front", "rear ▸"),
)
"""Words of the last row, at length and in short."""

PIVOT_NAMES = {
    pivot: (name_of_pivot(pivot), in_short)
    for pivot, in_short in (
        ("guide.frame", "frame pivot"),
        ("guide.lower_frame", "lower, frame"),
        ("guide.lower_axle", "lower, axle"),
        ("guide.upper_frame", "upper, frame"),
        ("guide.upper_axle", "upper, axle"),
        ("guide.eye", "fixed eye"),
        ("guide.seat", "seat"),
        ("drag_link.frame", "pitman end"),
        ("drag_link.axle", "ball"),
    )
}
"""Names of the pivots, at length and in short."""

AT_LENGTH = 46
"""Columns from which every pivot is named. With fewer, the parts and the asked pivot are named."""

PARTS = {
    "radius arm": ("guide.frame",),
    "lower arm": ("guide.lower_frame", "guide.lower_axle"),
    "upper arm": ("guide.upper_frame", "guide.upper_axle"),
    "leaf spring": ("guide.eye", "guide.seat"),
    "drag link": ("drag_link.frame", "drag_link.axle"),
}
"""Frame end and axle end of each part that is named; a radius arm ends in the axle itself."""

TURNS = tuple(turn * pi / 32 for turn in range(65))
SHARES = (0.5, 0.35, 0.65)
BOW = tuple(step / 8 for step in range(9))
SHACKLE = 0.18
"""Length of a shackle as a share of the hub height. Invented, only for the drawing."""

ASSUMED = "◇ ○ assumed"
UNKNOWN = ("guide not known",)


class SideView(Drawing):
    """Draws a SidePicture, and the axle in a SidePose where it has moved."""

    COMPONENT_CLASSES = {
        "side-view--guide",
        "side-view--link",
        "side-view--axle",
        "side-view--wheel",
        "side-view--at-rest",
        "side-view--tape",
        "side-view--label",
        "side-view--end",
    }

    def __init__(self, picture: SidePicture | None = None, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self.picture = picture or SidePicture()
        self.pose: SidePose | None = None
        self.words: tuple[Placed, ...] = ()

    def show(self, picture: SidePicture) -> None:
        """Show another picture, the axle at rest."""
        self.picture, self.pose, self.words = picture, None, ()
        self.redraw()

    def move(self, pose: SidePose | None) -> None:
        """Show the axle in a pose, or at rest again; the words stay where they are."""
        self.pose = pose
        self.redraw()

    def on_resize(self, event: Resize) -> None:
        """Forget the places of the words; `draw` finds new ones."""
        self.words = ()

    def draw(self) -> None:
        """Draw from the back of the picture to its front."""
        picture, pose = self.picture, self.pose
        path, view = side_path(picture), self.view()
        hub, pivots = picture.hub, dict(picture.pivots)
        lean = picture.castor
        if pose:
            self.line(view.line(kingpin_line(hub, hub[1], lean)), "side-view--at-rest", DOTTED)
            hub, lean, pivots = pose.hub, lean - pose.pitch, {**pivots, **pose.pivots}
        self.draw_wheel(view, hub)
        self.line(view.line(kingpin_line(hub, picture.hub[1], lean)), "side-view--axle", DASHED)
        self.draw_guide(view, hub, pivots)
        self.draw_drag_link(view, pivots)
        if path:
            self.line(view.line(path.path), "side-view--tape", DASHED)
            if path.plumb:
                self.line(view.line(path.plumb), "side-view--tape", DOTTED)
        self.words = self.words or self.find_words(view, path)
        for word in self.words:
            self.write(word.column, word.row, word.text, word.style)
        self.mark(view.dot(hub), "+", "side-view--axle")
        for pivot, point in pivots.items():
            mark = AXLE_MARK if pivot.endswith(("axle", "seat")) else FRAME_MARK
            is_asked = path is not None and path.pivot == pivot
            style = "side-view--tape" if is_asked else style_of(pivot)
            self.mark(
                view.dot(point), ASSUMED_MARKS[mark] if pivot in picture.assumed else mark, style
            )

    def view(self) -> View:
        """The view that holds the wheel and every pivot, with a row for words above and below."""
        across, up = self.picture.hub
        points = [(across - up, 0.0), (across + up, 2 * up), *self.picture.pivots.values()]
        if self.picture.guide is GuideKind.LEAF:
            points.append(shackle_eye(self.picture.pivots))
        right, bottom = self.sheet.width * ACROSS - 1, self.sheet.height * DOWN - 1
        return fit(points, ACROSS, 2 * DOWN, right - ACROSS, bottom - DOWN - 1)

    def draw_wheel(self, view: View, hub: Point) -> None:
        """Draw the wheel and the floor that it stands on."""
        radius = self.picture.hub[1]
        wheel = [(hub[0] + radius * cos(turn), hub[1] + radius * sin(turn)) for turn in TURNS]
        self.line(view.line(wheel), "side-view--wheel", DOTTED)
        floor = view.dot((0.0, hub[1] - radius))[1]
        self.line([(0.0, floor), (self.sheet.width * ACROSS - 1.0, floor)], "side-view--wheel")

    def draw_guide(self, view: View, hub: Point, pivots: Mapping[str, Point]) -> None:
        """Draw the arms or the spring, and the brackets that join them to the axle."""
        match self.picture.guide:
            case GuideKind.RADIUS_ARMS if "guide.frame" in pivots:
                ends = (hub, pivots["guide.frame"])
                self.line(view.line(ends), "side-view--guide", thick=True)
            case GuideKind.TWO_ARMS if "guide.lower_axle" in pivots:
                bracket = (pivots["guide.lower_axle"], hub, pivots["guide.upper_axle"])
                self.line(view.line(bracket), "side-view--axle")
                for arm in ("lower", "upper"):
                    ends = (pivots[f"guide.{arm}_frame"], pivots[f"guide.{arm}_axle"])
                    self.line(view.line(ends), "side-view--guide", thick=True)
            case GuideKind.LEAF if "guide.seat" in pivots:
                self.line(view.line((pivots["guide.seat"], hub)), "side-view--axle")
                rear = shackle_eye(self.picture.pivots)
                top = (rear[0], rear[1] + SHACKLE * self.picture.hub[1])
                self.line(view.line((rear, top)), "side-view--axle")
                spring = bowed(pivots["guide.eye"], pivots["guide.seat"], rear)
                self.line(view.line(spring), "side-view--guide", thick=True)

    def draw_drag_link(self, view: View, pivots: Mapping[str, Point]) -> None:
        """Draw a lengthwise drag link and its pitman arm."""
        if "drag_link.frame" not in pivots:
            return
        if SHAFT in pivots:
            arm = (pivots[SHAFT], pivots["drag_link.frame"])
            self.line(view.line(arm), "side-view--axle")
        ends = (pivots["drag_link.frame"], pivots["drag_link.axle"])
        self.line(view.line(ends), "side-view--link", thick=True)

    def parts(self, pivots: Mapping[str, Point]) -> Iterator[tuple[str, str, Sequence[Point]]]:
        """Name, component class and ends of every arm, spring and link that is drawn."""
        for name, (frame, *axle) in PARTS.items():
            if frame in pivots:
                end = pivots[axle[0]] if axle else self.picture.hub
                style = "side-view--link" if name == "drag link" else "side-view--guide"
                yield name, style, (pivots[frame], end)

    def find_words(self, view: View, path: SidePath | None) -> tuple[Placed, ...]:
        """Every word of the picture in its place."""
        size, picture = self.sheet, self.picture
        edge = ends_row(size.width, size.height - 1)
        if picture.assumed:
            edge += (Placed(0, 0, ASSUMED, "side-view--end"),)
        marks = {cell_of(view.dot(point)) for point in (picture.hub, *picture.pivots.values())}
        labels = []
        if path:
            anchors = points_along(view, path.path[0], path.path[-1])
            labels.append(Label(path.words, anchors, "side-view--tape", needed=True))
        asked = path.pivot if path else ""
        names_all = size.width >= AT_LENGTH
        labels += [
            Label(
                names,
                (cell_of(view.dot(picture.pivots[pivot])),),
                "side-view--tape" if pivot == asked else "side-view--label",
                needed=pivot == asked,
            )
            for pivot, names in PIVOT_NAMES.items()
            if pivot in picture.pivots and (names_all or pivot == asked)
        ]
        if not names_all:
            labels += [
                Label((text,), points_along(view, *ends), style, needed=True)
                for text, style, ends in self.parts(picture.pivots)
            ]
        if not picture.pivots:
            labels.append(Label(UNKNOWN, (cell_of(view.dot(picture.hub)),), "side-view--label"))
        return edge + place(labels, (size.width, size.height), self.drawn_cells(), marks, edge)


def points_along(view: View, start: Point, end: Point) -> tuple[Cell, ...]:
    """Cells along a line where its words may stand, the best first."""
    return tuple(cell_of(view.dot(part_way(start, end, share))) for share in SHARES)


def style_of(pivot: str) -> str:
    """Component class of a pivot's mark."""
    return "side-view--guide" if pivot.startswith("guide.") else "side-view--link"


def shackle_eye(pivots: Mapping[str, Point]) -> Point:
    """The spring's end at its shackle, mm: nobody measures it, so it mirrors the fixed eye."""
    eye, seat = pivots["guide.eye"], pivots["guide.seat"]
    return 2 * seat[0] - eye[0], eye[1]


def bowed(eye: Point, seat: Point, rear: Point) -> list[Point]:
    """A smooth line from the fixed eye over the seat to the shackle's end, mm."""
    halves = ((eye, seat), (rear, seat))
    front, back = (
        [
            (end[0] + (to[0] - end[0]) * share, end[1] + (to[1] - end[1]) * share * (2 - share))
            for share in BOW
        ]
        for end, to in halves
    )
    return [*front, *reversed(back)]


def ends_row(
    width: int,
    row: int,
    ends: Sequence[tuple[str, ...]] = ENDS,
    style: str = "side-view--end",
) -> tuple[Placed, ...]:
    """Names of the vehicle's ends, at the ends of the last row."""
    words = next((words for words in ends if sum(map(len, words)) + 2 * GAP <= width), ends[-1])
    starts = (0, (width - len(words[1])) // 2, width - len(words[-1]))
    columns = starts if len(words) == 3 else (starts[0], starts[2])
    return tuple(
        Placed(column, row, text, style) for column, text in zip(columns, words, strict=True)
    )
