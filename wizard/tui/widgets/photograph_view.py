"""A picture: sharp where the terminal can show it so, else in half-blocks.

In half-blocks each cell shows two pixels, one above the other.
"""

from collections.abc import Mapping
from typing import Any

import numpy as np
from PIL.Image import Image
from rich.color import Color
from rich.color_triplet import ColorTriplet
from rich.segment import Segment
from rich.style import Style
from textual import events
from textual.app import ComposeResult
from textual.events import Resize
from textual.message import Message
from textual.strip import Strip
from textual.widget import Widget

from wizard.tui.pictures.photograph import draw_photograph
from wizard.tui.pictures.sharp import SHARP_CELL
from wizard.views.photograph import Place, Window

UPPER_HALF = "▀"

HALF_BLOCKS = (1, 2)
"""Pixels that a cell of half-blocks shows, across and down."""


class PhotographView(Widget):
    """Part of a picture, with marks and a crosshair.

    Parameters
    ----------
    sharp : type of Widget or None
        Shows sharp pictures; None for half-blocks.

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

        def __init__(self, view: "PhotographView") -> None:
            super().__init__()
            self.view = view

    def __init__(self, sharp: type[Widget] | None, id: str | None = None) -> None:
        super().__init__(id=id)
        self.sharp: Any = sharp() if sharp else None
        self.cell = SHARP_CELL if sharp else HALF_BLOCKS
        self.window: Window | None = None
        self.rows: list[list[tuple[int, int, int]]] = []

    def compose(self) -> ComposeResult:
        """Yield the sharp picture, where the terminal can show it."""
        if self.sharp:
            yield self.sharp

    def on_unmount(self) -> None:
        """Free the picture in the terminal."""
        if self.sharp:
            self.sharp.image = None

    @property
    def pixels(self) -> tuple[int, int]:
        """Pixels of the view across and down."""
        across, down = self.cell
        return across * max(self.size.width, 1), down * max(self.size.height, 1)

    @property
    def grain(self) -> int:
        """Pixels that lie side by side in a cell."""
        return self.cell[0]

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
            dot = max(self.grain // 2, 1)
            drawn = draw_photograph(picture, window, marks, crosshair, dot)
            if self.sharp:
                self.sharp.image = drawn
            else:
                pixels = np.asarray(drawn).tolist()
                self.rows = [[tuple(pixel) for pixel in row] for row in pixels]
        elif self.sharp:
            self.sharp.image = None
        self.refresh()

    def render_line(self, y: int) -> Strip:
        """One line of cells."""
        if len(self.rows) < 2 * y + 2:
            return Strip.blank(self.size.width)
        pairs = zip(self.rows[2 * y], self.rows[2 * y + 1], strict=True)
        return Strip([Segment(UPPER_HALF, _style(upper, lower)) for upper, lower in pairs])

    def on_resize(self, event: Resize) -> None:
        """Ask for the picture in the new size."""
        self.post_message(self.Resized(self))

    def on_click(self, event: events.Click) -> None:
        """Tell the place in the picture."""
        if self.window is not None:
            across, down = self.cell
            place = self.window.to_picture((across * (event.x + 0.5), down * (event.y + 0.5)))
            self.post_message(self.Pressed(self, place))


def _style(upper: tuple[int, int, int], lower: tuple[int, int, int]) -> Style:
    return Style(
        color=Color.from_triplet(ColorTriplet(*upper)),
        bgcolor=Color.from_triplet(ColorTriplet(*lower)),
    )
