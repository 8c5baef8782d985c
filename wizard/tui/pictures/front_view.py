"""The pivots from the front of the vehicle, to scale, centre to centre.

The vehicle's right is on the left-hand side, as for a person who stands before the vehicle.
"""

from collections.abc import Mapping
from math import atan2, cos, pi, sin

from textual.events import Resize

from wizard.tui.pictures.drawing import (
    ACROSS,
    BROKEN,
    DASHED,
    DOTTED,
    DOWN,
    SPARSE,
    Drawing,
    cell_of,
)
from wizard.tui.pictures.front_words import AIM_STYLE, LINK_STYLES, front_words, is_inside
from wizard.tui.pictures.labels import Placed
from wizard.tui.pictures.layout import places, tyre, view_of, whole_wheels
from wizard.tui.pictures.scale import View
from wizard.views.front_body import front_body
from wizard.views.picture_data import (
    Aim,
    FrontPicture,
    Point,
    Pose,
    Wheels,
    link_and_end,
    link_lines,
)
from wizard.views.tape_path import TapeKind, TapePath, tape_path

MARKS = {"frame": "◆", "axle": "●", "near": "●"}
HOLLOW = {"frame": "◇", "axle": "○", "near": "○"}
"""Marks of a pivot by its end: at its place, and at an earlier place or at rest."""

DATUM_ABOVE = 2
"""Rows that the datum line goes up beyond the pivot."""

WIDE = 50
"""Columns from which parts that nobody measures are drawn."""

RING = tuple((4.4 * cos(turn * pi / 12), 4.4 * sin(turn * pi / 12)) for turn in range(24))
"""Dots of a ring round a mark."""


class FrontView(Drawing):
    """Draws a FrontPicture, and the axle in a Pose where it has moved."""

    COMPONENT_CLASSES = {
        "front-view--track-bar",
        "front-view--drag-link",
        "front-view--tie-rod",
        "front-view--before",
        "front-view--floor",
        "front-view--wheel",
        "front-view--body",
        "front-view--arc",
        "front-view--tape",
        "front-view--aim",
        "front-view--label",
        "front-view--side",
    }

    def __init__(
        self,
        picture: FrontPicture | None = None,
        *,
        id: str | None = None,
        classes: str | None = None,
    ) -> None:
        super().__init__(id=id, classes=classes)
        self.picture = picture or FrontPicture()
        self.pose: Pose | None = None
        self.words: tuple[Placed, ...] = ()

    def show(self, picture: FrontPicture) -> None:
        """Show another picture, the axle at rest."""
        self.picture, self.pose, self.words = picture, None, ()
        self.redraw()

    def move(self, pose: Pose | None) -> None:
        """Show the axle in a pose, or at rest again; the words stay where they are."""
        self.pose = pose
        self.redraw()

    def on_resize(self, event: Resize) -> None:
        """Forget the places of the words; `draw` finds new ones."""
        self.words = ()

    def draw(self) -> None:
        """Draw from the back of the picture to its front."""
        picture, pose = self.picture, self.pose
        where = places(picture)
        path = tape_path(picture.asked_reading, where)
        further = {name: tape for name in picture.tapes if (tape := tape_path(name, where))}
        view = view_of(picture, (path, *further.values()), self.sheet)
        self.draw_ground(view, pose.wheels if pose else picture.wheels)
        for arc in picture.arcs.values():
            self.line(view.line(arc), "front-view--arc", DOTTED)
        for ends in link_lines(picture.before, picture.before_joint).values():
            self.line(view.line(ends), "front-view--before", DASHED)
        pivots, joint = picture.pivots, picture.joint
        if pose:
            pivots, joint = {**pivots, **pose.pivots}, pose.joint
        for link, ends in link_lines(pivots, joint).items():
            self.line(view.line(ends), LINK_STYLES[link], thick=True)
        for tape in further.values():
            self.draw_tape(view, tape)
        if path:
            self.draw_tape(view, path)
            for ring in path.rings:
                self.draw_ring(view, ring)
        for place in picture.ringed:
            self.draw_ring(view, place)
        self.words = self.words or front_words(
            picture, path, further, view, self.sheet, self.drawn_cells()
        )
        for word in self.words:
            self.write(word.column, word.row, word.text, word.style)
        if pose:
            self.draw_marks(view, picture.pivots, HOLLOW, "front-view--arc")
        for aim in picture.aims:
            if self.explains(aim):
                self.mark(view.dot(aim.point), aim.mark, AIM_STYLE)
        self.draw_marks(view, picture.before, HOLLOW, "front-view--before")
        self.draw_marks(view, pivots, MARKS)

    def explains(self, aim: Aim) -> bool:
        """True if the words of an aim have a place; a mark without them would say nothing."""
        return any(word.style == AIM_STYLE and word.text[0] == aim.mark for word in self.words)

    def draw_ground(self, view: View, wheels: Wheels) -> None:
        """Draw the wheels with their axle line, and the floor they stand on."""
        tilt = lean(wheels)
        at_rest = whole_wheels(self.picture.wheels, view, self.sheet)
        drawn = Wheels(at_rest.left and wheels.left, at_rest.right and wheels.right)
        for hub in drawn.hubs:
            outline = view.line(tyre(hub, tilt, self.picture.wheels))
            self.line([*outline, outline[0]], "front-view--wheel")
        if drawn.left and drawn.right:
            self.line(view.line(drawn.hubs), "front-view--wheel", SPARSE)
        if self.sheet.width >= WIDE and not self.pose:
            self.draw_body(view)
        edge = float(self.sheet.width * ACROSS - 1)
        floor = [(0.0, view.top), (edge, view.top)]
        right = self.picture.wheels.right
        if self.pose and wheels.right and right:
            # The frame stands still in the picture, so the floor moves with the axle.
            foot_x, foot_y = view.dot((wheels.right[0], wheels.right[1] - right[1]))
            floor = [(x, foot_y - (x - foot_x) * tilt) for x in (0.0, edge)]
        self.line(floor, "front-view--floor")

    def draw_body(self, view: View) -> None:
        """Draw the frame rails with what hangs on them, as far as the view holds them wholly."""
        for line in front_body(self.picture).lines:
            dots = view.line(line)
            if all(is_inside(cell_of(dot), self.sheet) for dot in dots):
                self.line(dots, "front-view--body", BROKEN)

    def draw_tape(self, view: View, path: TapePath) -> None:
        """Draw the way of the tape, and the datum line where it begins there."""
        if path.kind is TapeKind.OFFSET:
            x, y = view.dot(path.path[0])
            top = y - DATUM_ABOVE * DOWN
            self.line([(x, top), (x, view.top)], "front-view--tape", DOTTED)
        if path.path:
            self.line(view.line(path.path), "front-view--tape", DASHED)

    def draw_ring(self, view: View, place: Point) -> None:
        """Draw a ring round a place."""
        column, row = cell_of(view.dot(place))
        middle = column * ACROSS + 0.5, row * DOWN + 1.5
        dots = [(middle[0] + right, middle[1] + down) for right, down in RING]
        self.spots(dots, "front-view--tape")
        self.set_pixel(column, row, "+", self.colour("front-view--tape"))

    def draw_marks(
        self, view: View, pivots: Mapping[str, Point], marks: Mapping[str, str], style: str = ""
    ) -> None:
        """Mark every pivot centre; frame ends and axle ends differ in shape."""
        for pivot, point in pivots.items():
            link, end = link_and_end(pivot)
            self.mark(view.dot(point), marks[end], style or LINK_STYLES[link])


def lean(wheels: Wheels) -> float:
    """Roll of the axle between its drawn hubs, rad; the left wheel up is positive."""
    if not (wheels.left and wheels.right):
        return 0.0
    (right, low), (left, high) = wheels.right, wheels.left
    return atan2(high - low, left - right)
