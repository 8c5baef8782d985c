"""A picture in half-blocks: each cell shows two pixels, one above the other."""

from collections.abc import Mapping

import numpy as np
from PIL.Image import Image
from rich.color import Color
from rich.color_triplet import ColorTriplet
from rich.segment import Segment
from rich.style import Style
from textual import events
from textual.events import Resize
from textual.message import Message
from textual.strip import Strip
from textual.widget import Widget

from wizard.tui.pictures.photograph import draw_photograph
from wizard.views.photograph import Place, Window

UPPER_HALF = "▀"


class PhotographView(Widget):
    """Part of a picture, with marks and a crosshair.

    Attributes
    ----------
    window : Window or None
        None until there is a picture and room for it.
    """

    class Pressed(Message):
        """A place of the picture was clicked."""

        def __init__(self, view: "PhotographView", place: Place) -> None:
            super().__init__()
            self.view, self.place = view, place

        @property
        def control(self) -> "PhotographView":
            """The view that was clicked."""
            return self.view

    class Resized(Message):
        """The view has another size."""

    def __init__(self, id: str | None = None) -> None:
        super().__init__(id=id)
        self.window: Window | None = None
        self.rows: list[list[tuple[int, int, int]]] = []

    @property
    def pixels(self) -> tuple[int, int]:
        """Pixels of the view across and down."""
        return max(self.size.width, 1), max(2 * self.size.height, 2)

    def show(
        self,
        picture: Image | None,
        window: Window | None,
        marks: Mapping[str, Place],
        crosshair: Place | None,
    ) -> None:
        """Show a part of a picture; nothing without one."""
        self.window = window
        self.rows = []
        if picture is not None and window is not None:
            drawn = draw_photograph(picture, window, marks, crosshair)
            self.rows = [[tuple(pixel) for pixel in row] for row in np.asarray(drawn).tolist()]
        self.refresh()

    def render_line(self, y: int) -> Strip:
        """One line of cells."""
        if len(self.rows) < 2 * y + 2:
            return Strip.blank(self.size.width)
        pairs = zip(self.rows[2 * y], self.rows[2 * y + 1], strict=True)
        return Strip([Segment(UPPER_HALF, _style(upper, lower)) for upper, lower in pairs])

    def on_resize(self, event: Resize) -> None:
        """Ask for the picture in the new size."""
        self.post_message(self.Resized())

    def on_click(self, event: events.Click) -> None:
        """Tell the place in the picture."""
        if self.window is not None:
            place = self.window.to_picture((event.x + 0.5, 2 * event.y + 1))
            self.post_message(self.Pressed(self, place))


def _style(upper: tuple[int, int, int], lower: tuple[int, int, int]) -> Style:
    return Style(
        color=Color.from_triplet(ColorTriplet(*upper)),
        bgcolor=Color.from_triplet(ColorTriplet(*lower)),
    )
