"""The pivots from the front of the vehicle, to scale, centre to centre.

Across, the picture runs from the vehicle's right to its left, as it is seen by somebody
standing before it.
"""

from collections.abc import Mapping
from math import atan2, cos, pi, sin

from textual.events import Resize

from wizard.tui.pictures.drawing import ACROSS, DASHED, DOTTED, DOWN, SPARSE, Drawing, cell_of
from wizard.tui.pictures.front_words import front_words
from wizard.tui.pictures.labels import Placed
from wizard.tui.pictures.layout import links, places, tyre, view_of
from wizard.tui.pictures.scale import View
from wizard.tui.pictures.tape_path import TapePath, tape_path
from wizard.views.picture_data import FrontPicture, Point, Pose, Wheels

MARKS = {"frame": "◆", "axle": "●", "near": "●"}
HOLLOW = {"frame": "◇", "axle": "○", "near": "○"}

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
        "front-view--arc",
        "front-view--tape",
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
        """Find new places for the words; drawing them is left to the drawing."""
        self.words = ()

    def draw(self) -> None:
        """Draw from the back of the picture to its front."""
        picture, pose = self.picture, self.pose
        view = view_of(picture, self.sheet)
        path = tape_path(picture.asked, places(picture), picture.datum)
        self.draw_ground(view, pose.wheels if pose else picture.wheels)
        for arc in picture.arcs.values():
            self.line(view.line(arc), "front-view--arc", DOTTED)
        for ends in links(picture.before, picture.before_joint).values():
            self.line(view.line(ends), "front-view--before", DASHED)
        pivots, joint = picture.pivots, picture.joint
        if pose:
            pivots, joint = {**pivots, **pose.pivots}, pose.joint
        for link, ends in links(pivots, joint).items():
            self.line(view.line(ends), style_of(link), thick=True)
        if path:
            self.draw_path(view, path)
        self.words = self.words or front_words(picture, path, view, self.sheet, self.drawn_cells())
        for word in self.words:
            self.write(word.column, word.row, word.text, word.style)
        if pose:
            self.draw_marks(view, picture.pivots, HOLLOW, "front-view--arc")
        self.draw_marks(view, picture.before, HOLLOW, "front-view--before")
        self.draw_marks(view, pivots, MARKS)

    def draw_ground(self, view: View, wheels: Wheels) -> None:
        """The wheels with their axle line, and the floor they stand on."""
        hubs = [hub for hub in (wheels.right, wheels.left) if hub]
        tilt = lean(wheels)
        for hub in hubs:
            outline = view.line(tyre(hub, tilt, self.picture.wheels))
            self.line([*outline, outline[0]], "front-view--wheel")
        if wheels.left and wheels.right:
            self.line(view.line(hubs), "front-view--wheel", SPARSE)
        middle = hubs[0] if self.pose and hubs else None
        edge = self.sheet.width * ACROSS - 1
        level = view.top
        ends = [(0.0, level), (float(edge), level)]
        if middle and self.picture.wheels.right:
            # The frame stands still in the picture, so it is the floor that comes and goes.
            rise = middle[1] - self.picture.wheels.right[1]
            foot = view.dot((middle[0], rise))
            ends = [(x, foot[1] - (x - foot[0]) * tilt) for x in (0.0, float(edge))]
        self.line(ends, "front-view--floor")

    def draw_path(self, view: View, path: TapePath) -> None:
        """The way of the tape, and a ring round every centre it aims at."""
        if path.words.startswith("across"):
            x, _ = view.dot(path.path[0])
            top = view.dot(path.path[1])[1] - 2 * DOWN
            self.line([(x, top), (x, view.top)], "front-view--tape", DOTTED)
        if path.path:
            self.line(view.line(path.path), "front-view--tape", DASHED)
        for ring in path.rings:
            column, row = cell_of(view.dot(ring))
            middle = column * ACROSS + 0.5, row * DOWN + 1.5
            self.spots(
                [(middle[0] + right, middle[1] + down) for right, down in RING],
                "front-view--tape",
            )
            self.set_pixel(column, row, "+", self.colour("front-view--tape"))

    def draw_marks(
        self, view: View, pivots: Mapping[str, Point], marks: Mapping[str, str], name: str = ""
    ) -> None:
        """A mark on every pivot centre; frame ends and axle ends differ in shape."""
        for pivot, point in pivots.items():
            link, end = pivot.split(".")
            self.mark(view.dot(point), marks[end], name or style_of(link))


def style_of(link: str) -> str:
    """Component class of a link."""
    return f"front-view--{link.replace('_', '-')}"


def lean(wheels: Wheels) -> float:
    """Roll of the axle as it is drawn, rad; the left wheel up is positive."""
    if not (wheels.left and wheels.right):
        return 0.0
    (right, low), (left, high) = wheels.right, wheels.left
    return atan2(high - low, left - right)
