"""Photographs: pictures are chosen, and points are marked in them one after the other."""

from pathlib import Path
from typing import Any

from PIL.Image import Image
from textual import on
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

from core.documents.document import Document, value_at, without
from core.documents.picture import PictureError, keep_picture, read_picture
from wizard.flow.flow import Flow
from wizard.flow.photographs import (
    PENDING,
    PictureMarks,
    next_point,
    pictures_of,
    points_asked,
    with_mark,
    with_picture,
    without_picture,
)
from wizard.phrases.help_section import HelpSection
from wizard.phrases.mark_names import POINTS
from wizard.phrases.marking import ALL_MARKED, HOW, NO_PICTURE, ask_mark
from wizard.phrases.session_names import session_words
from wizard.tui.host import Host
from wizard.tui.pictures.front_view import FrontView
from wizard.tui.screens.help import HelpScreen
from wizard.tui.screens.picture_files import ask_picture
from wizard.tui.screens.steps import ask_step
from wizard.tui.widgets.heading import Heading
from wizard.tui.widgets.keys import Key, Keys
from wizard.tui.widgets.photograph_view import PhotographView
from wizard.tui.widgets.remark import Remark
from wizard.views.mark_sketch import mark_sketch
from wizard.views.photograph import Place, Window

STEP, FINE_STEP = 2.0, 0.5
"""Half-blocks of the view that the crosshair moves with a key press; the finer one with Shift."""

ZOOM = 1.5
MAGNIFIED = 4.0
"""Factor of the magnifier above the view."""

HELP = (
    HelpSection(
        "Photographs",
        "Stand in front of the vehicle, two or three paces away, and hold the camera level. Take "
        "both hubs and both tyres into the picture. A second picture from further left or right "
        "takes away much of the doubt. Mark each point in its middle.",
        "A picture is seen from an unknown place, so its angles are not those of the links. The "
        "marks tell the place of the camera together with the pivots.",
    ),
)


class PhotographsStep(Screen[Any]):
    """The step of the photographs. Its result: `wizard.tui.screens.step_screens`.

    Parameters
    ----------
    flow : Flow
        At the step.
    earlier : mapping or None
        The session that is measured again.

    Attributes
    ----------
    number : int
        Number of the picture in view; 0 where there is none.
    crosshair : (float, float)
        Place in the picture.
    """

    app: Host

    BINDINGS = [
        *[
            (f"{shift}{key}", f"move({across}, {down}, {bool(shift)})", key)
            for key, across, down in (
                ("left", -1, 0),
                ("right", 1, 0),
                ("up", 0, -1),
                ("down", 0, 1),
            )
            for shift in ("", "shift+")
        ],
        ("enter", "mark", "mark"),
        ("plus,equals_sign", "zoom(1)", "closer"),
        ("minus", "zoom(-1)", "wider"),
        ("tab", "another", "next picture"),
        ("a,A", "add", "add"),
        ("d,D", "drop", "take out"),
        ("g,G,pagedown", "go_on", "go on"),
        ("f1", "help", "help"),
        ("f3", "steps", "steps"),
        ("f4", "unseen", "not in the picture"),
        ("f8,ctrl+z", "undo", "undo"),
        ("f9", "leave", "leave"),
        ("escape,pageup", "back", "back"),
    ]

    def __init__(self, flow: Flow, earlier: Document | None) -> None:
        super().__init__()
        self.flow, self.earlier = flow, earlier
        self.number = 1 if pictures_of(flow.document) else 0
        self.image: Image | None = None
        self.window: Window | None = None
        self.crosshair: Place = (0.0, 0.0)
        self.past: list[tuple[Flow, int]] = []

    def compose(self) -> ComposeResult:
        """Yield the picture beside the magnifier and the list of marks."""
        yield Heading()
        yield Static(id="mark-ask")
        with Horizontal(id="photograph-work"):
            yield PhotographView(self.app.sharp_picture, id="photograph")
            with Vertical(id="photograph-side"):
                yield PhotographView(self.app.sharp_picture, id="magnifier")
                yield FrontView(id="mark-sketch")
                yield Static(id="marks")
        yield Remark()
        yield Keys()

    def on_mount(self) -> None:
        """Take the pictures that were named before, and show the first one."""
        pending = value_at(self.flow.document, PENDING, [])
        if pending:
            self.keep(self.flow.with_document(without(self.flow.document, PENDING)))
            for name in pending:
                self.take(str(name))
            self.number = min(1, self.number)  # the first of them is marked first
        self.load()
        self.show()

    @property
    def picture(self) -> PictureMarks | None:
        """The photograph in view with its marks."""
        return pictures_of(self.flow.document)[self.number - 1] if self.number else None

    @property
    def folder(self) -> Path:
        """The vehicle's folder."""
        return self.app.files / str(value_at(self.flow.document, "vehicle.tag", ""))

    @property
    def point(self) -> str | None:
        """Point that is asked for."""
        return next_point(self.flow.document, self.number) if self.number else None

    def keep(self, flow: Flow) -> bool:
        """Keep the session on the disk."""
        self.flow, is_kept = self.app.keep_or_warn(flow, self.flow)
        return is_kept

    def take(self, name: str) -> None:
        """Copy a picture into the vehicle's folder and show it, or say why not."""
        try:
            kept = keep_picture(Path(name).expanduser(), self.folder, self.folder.name)
        except PictureError as error:
            self.refuse(str(error))
            return
        if self.keep(self.flow.with_document(with_picture(self.flow.document, kept))):
            self.number = len(pictures_of(self.flow.document))

    def load(self) -> None:
        """Read the picture in view; its marks stay where its file is gone."""
        self.image, self.window = None, None
        picture = self.picture
        if picture is None:
            return
        self.crosshair = picture.width / 2, picture.height / 2
        try:
            self.image = read_picture(self.folder / picture.file)
        except PictureError as error:
            self.query_one(Remark).say("trouble", f"{error}; its marks are kept")

    @on(PhotographView.Resized)
    def show(self) -> None:
        """Show the picture, the magnifier, the marks and what is asked for."""
        heading, picture, point = self.query_one(Heading), self.picture, self.point
        count = len(pictures_of(self.flow.document))
        heading.left = session_words(self.flow.document)
        heading.right = f"photograph {self.number} of {count}" if count else "no photograph"
        ask = NO_PICTURE if picture is None else ask_mark(point) if point else ALL_MARKED
        self.query_one("#mark-ask", Static).update(Content(f"{ask} {HOW if point else ''}"))
        sketch = point and mark_sketch(self.flow.document, self.flow.profile, point)
        self.query_one(FrontView).display = bool(sketch)
        if sketch:
            self.query_one(FrontView).show(sketch)
        self.show_picture()
        self.query_one("#marks", Static).update(Content(self.marks_words()))
        self.query_one(Keys).keys = self.keys()

    def show_picture(self) -> None:
        """Show the picture and the magnifier at the crosshair."""
        view = self.query_one("#photograph", PhotographView)
        magnifier = self.query_one("#magnifier", PhotographView)
        picture = self.picture
        marks = dict(picture.marks) if picture else {}
        near: Window | None = None
        if self.image is not None:
            if self.window is None or self.window.view != view.pixels:
                self.window = Window.whole(self.image.size, view.pixels, view.grain)
            self.window = self.window.showing(self.crosshair)
            scale = self.window.scale * MAGNIFIED
            near = Window(self.image.size, magnifier.pixels, self.crosshair, scale)
        view.show(self.image, self.window, marks, self.crosshair)
        magnifier.show(self.image, near, marks, self.crosshair)

    def marks_words(self) -> str:
        """Every point with its state."""
        picture = self.picture
        if picture is None:
            return ""
        lines = []
        for point in points_asked(self.flow.document):
            sign = "✓" if point in picture.marks else "–" if point in picture.unseen else " "
            sign = "›" if point == self.point else sign
            lines.append(f"{sign} {POINTS[point]}")
        return "\n".join(lines)

    def keys(self) -> tuple[Key, ...]:
        """Keys that do something now."""
        marking = (
            Key("Enter", "mark", "mark"),
            Key("F4", "not in the picture", "unseen"),
            Key("+ -", "zoom", "zoom(1)"),
        )
        return (
            *(marking if self.point else ()),
            *([Key("F8", "undo", "undo")] if self.past else []),
            Key("A", "add a picture", "add"),
            *([Key("Tab", "next picture", "another")] if self.number else []),
            *([Key("D", "take it out", "drop")] if self.number else []),
            Key("G", "go on", "go_on"),
            Key("Esc", "back", "back"),
            Key("F1", "help", "help"),
            Key("F9", "leave", "leave"),
        )

    def change(self, document: Document) -> None:
        """Keep a changed document, so that it can be undone."""
        before = self.flow, self.number
        if self.keep(self.flow.with_document(document)):
            self.past.append(before)
            self.query_one(Remark).hint("")

    def action_move(self, across: int, down: int, is_fine: bool) -> None:
        """Move the crosshair."""
        if self.window is None:
            return
        step = (FINE_STEP if is_fine else STEP) * self.window.grain / self.window.scale
        x, y = self.crosshair
        self.crosshair = self.window.inside((x + step * across, y + step * down))
        self.show_picture()

    def action_zoom(self, way: int) -> None:
        """Look closer, or wider."""
        if self.window is not None:
            self.window = self.window.zoomed(ZOOM**way, self.crosshair)
            self.show_picture()

    @on(PhotographView.Pressed, "#photograph")
    def press(self, event: PhotographView.Pressed) -> None:
        """Mark the place of a click."""
        self.crosshair = event.place
        self.action_mark()

    def action_mark(self) -> None:
        """Mark the point that is asked for at the crosshair."""
        point = self.point
        if point is not None and self.image is not None:
            self.change(with_mark(self.flow.document, self.number, point, self.crosshair))
            self.show()

    def action_unseen(self) -> None:
        """Pass the point that is asked for: it is not in the picture."""
        point = self.point
        if point is not None:
            self.change(with_mark(self.flow.document, self.number, point, None))
            self.show()

    def action_undo(self) -> None:
        """Undo the last mark."""
        if not self.past:
            return
        before, number = self.past.pop()
        self.keep(before)
        if number != self.number:
            self.number = number
            self.load()
        self.show()

    def action_another(self) -> None:
        """Show the next picture."""
        count = len(pictures_of(self.flow.document))
        if count:
            self.number = self.number % count + 1
            self.load()
            self.show()

    def action_drop(self) -> None:
        """Take the picture in view out of the session; its file stays."""
        if self.number:
            self.change(without_picture(self.flow.document, self.number))
            self.number = min(self.number, len(pictures_of(self.flow.document)))
            self.load()
            self.show()

    def action_add(self) -> None:
        """Ask for a picture, and add it."""
        ask_picture(self.app, self.add_chosen, self.refuse)

    def refuse(self, words: str) -> None:
        """Say why a picture is refused."""
        self.query_one(Remark).say("refused", words)

    def add_chosen(self, name: str) -> None:
        """Add a picture by its file."""
        self.query_one(Remark).hint("")
        self.take(name)
        self.load()
        self.show()

    def action_go_on(self) -> None:
        """Go to the next step."""
        self.dismiss(self.flow.skipped())

    def action_back(self) -> None:
        """Go to the question before the step."""
        self.dismiss(self.flow.going_by(-1))

    def action_steps(self) -> None:
        """Ask for a step to go to."""
        ask_step(self.app, self.flow.progress, self.action_go_to_step)

    def action_go_to_step(self, name: str) -> None:
        """Go to a step."""
        self.dismiss(self.flow.going_to_step(name))

    def action_help(self) -> None:
        """Show help on photographs."""
        self.app.push_screen(HelpScreen(HELP))

    def action_leave(self) -> None:
        """Go home; the draft stays."""
        self.dismiss(None)
