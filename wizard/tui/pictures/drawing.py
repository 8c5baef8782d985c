"""A canvas on which lines may cross, with styles by name and text that is never markup."""

from collections.abc import Iterable, Sequence

import numpy as np
from rich.cells import cell_len
from textual.events import Resize
from textual.geometry import Size
from textual.strip import Strip
from textual_hires_canvas import Canvas, HiResMode

ACROSS, DOWN = 2, 4
"""Braille dots of one cell across and down; square, for a cell is twice as high as wide."""

BLANK = 0x2800
"""Braille characters are this code point plus one bit for each dot (Unicode, Braille Patterns)."""

Dots = Sequence[tuple[float, float]]
Dashes = tuple[int, int]

SOLID: Dashes = (1, 0)
DASHED: Dashes = (5, 4)
DOTTED: Dashes = (1, 2)
SPARSE: Dashes = (1, 7)


def is_braille(char: str) -> bool:
    """Whether a character is a Braille pattern."""
    return BLANK <= ord(char) < BLANK + 256


def along(points: Dots, dashes: Dashes = SOLID) -> list[tuple[float, float]]:
    """Dots, a step apart, of the line through these points, thinned to dashes (on, off)."""
    if len(points) == 1:
        return [*points]
    on, off = dashes
    corners = np.asarray(points, dtype=float)
    stretches = np.abs(np.diff(corners, axis=0)).max(axis=1)
    walked = np.concatenate(([0.0], np.cumsum(stretches)))
    steps = np.arange(np.ceil(walked[-1]) + 1)
    kept = steps[steps % (on + off) < on]
    across, down = (np.interp(kept, walked, corners[:, axis]) for axis in (0, 1))
    return list(zip(across.tolist(), down.tolist(), strict=True))


class Drawing(Canvas):
    """A picture measured in dots from its top left corner; subclasses draw it in `draw`.

    Where two lines share a cell the dots of both stay and the later one gives the style, so
    the most important is drawn last.
    """

    def __init__(self, id: str | None = None, classes: str | None = None) -> None:
        super().__init__(default_hires_mode=HiResMode.BRAILLE, id=id, classes=classes)
        self.sheet = Size(0, 0)

    def draw(self) -> None:
        """Draw everything on an empty canvas."""
        raise NotImplementedError

    def redraw(self) -> None:
        """Draw afresh at the present size."""
        self.sheet = self.size
        with self.batch_refresh():
            self.reset(size=self.sheet)
            if self.sheet.area:
                self.draw()

    def on_resize(self, event: Resize) -> None:
        """Draw to the new size."""
        self.redraw()

    def notify_style_update(self) -> None:
        """Draw in the new colours when the theme changes."""
        super().notify_style_update()
        if self.is_mounted:
            self.call_later(self.redraw)

    def render_line(self, y: int) -> Strip:
        """One row; empty until the picture is drawn to the size it has now."""
        if self.sheet != self.size:
            return Strip.blank(self.size.width, self.rich_style)
        return super().render_line(y)

    def colour(self, name: str) -> str:
        """Style of a component class, as the canvas takes it."""
        return str(self.get_component_rich_style(name))

    def set_pixel(self, x: int, y: int, char: str = "█", style: str = "white") -> None:
        """Put a character; dots are added to the dots already there."""
        if is_braille(char) and 0 <= x < self.sheet.width and 0 <= y < self.sheet.height:
            there = self.get_pixel(x, y)[0]
            if is_braille(there):
                char = chr(ord(there) | ord(char))
        super().set_pixel(x, y, char, style)

    def line(self, points: Dots, name: str, dashes: Dashes = SOLID, thick: bool = False) -> None:
        """A line through points in dots, in the style of a component class."""
        dots = along(points, dashes)
        if thick:
            steep = abs(points[-1][1] - points[0][1]) > abs(points[-1][0] - points[0][0])
            right, down = (1, 0) if steep else (0, 1)
            dots += [(x + right, y + down) for x, y in dots]
        self.spots(dots, name)

    def spots(self, dots: Iterable[tuple[float, float]], name: str) -> None:
        """Single dots, in the style of a component class."""
        cells = ((round(x) / ACROSS, round(y) / DOWN) for x, y in dots)
        self.set_hires_pixels(cells, style=self.colour(name))

    def mark(self, dot: tuple[float, float], char: str, name: str) -> None:
        """One character in the cell of a dot."""
        column, row = cell_of(dot)
        self.set_pixel(column, row, char, self.colour(name))

    def write(self, column: int, row: int, text: str, name: str) -> None:
        """Text as it stands, from this cell on; what takes no single cell is shown as a dot."""
        style = self.colour(name)
        for offset, char in enumerate(text):
            self.set_pixel(column + offset, row, char if cell_len(char) == 1 else "·", style)

    def drawn_cells(self) -> set[tuple[int, int]]:
        """Cells (column, row) that have something in them."""
        return {
            (column, row)
            for row in range(self.sheet.height)
            for column in range(self.sheet.width)
            if self.get_pixel(column, row)[0] != " "
        }


def cell_of(dot: tuple[float, float]) -> tuple[int, int]:
    """Cell (column, row) of a dot."""
    return round(dot[0]) // ACROSS, round(dot[1]) // DOWN
