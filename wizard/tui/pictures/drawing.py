"""A canvas on which lines can cross, with styles by name; text on it is never markup."""

from collections.abc import Iterable, Sequence

import numpy as np
from rich.cells import cell_len
from textual.events import Resize
from textual.geometry import Size
from textual.strip import Strip
from textual_hires_canvas import Canvas, HiResMode

ACROSS, DOWN = 2, 4
"""Braille dots of one cell across and down. They are square: a cell is twice as high as wide."""

BLANK = 0x2800
"""First Braille character; each dot adds one bit to this code point (Unicode, Braille Patterns)."""

Dots = Sequence[tuple[float, float]]
Dashes = tuple[int, int]
"""Dots on and dots off."""

SOLID: Dashes = (1, 0)
DASHED: Dashes = (5, 4)
DOTTED: Dashes = (1, 2)
BROKEN: Dashes = (1, 1)
SPARSE: Dashes = (1, 7)


def is_braille(char: str) -> bool:
    """True if a character is a Braille pattern."""
    return BLANK <= ord(char) < BLANK + 256


def along(points: Dots, dashes: Dashes = SOLID) -> list[tuple[float, float]]:
    """Dots of the line through these points, one step apart, as far as the dashes have them."""
    if len(points) == 1:
        return [*points]
    on, off = dashes
    corners = np.asarray(points, dtype=float)
    lengths = np.abs(np.diff(corners, axis=0)).max(axis=1)
    distances = np.concatenate(([0.0], np.cumsum(lengths)))
    steps = np.arange(np.ceil(distances[-1]) + 1)
    drawn = steps[steps % (on + off) < on]
    across, down = (np.interp(drawn, distances, corners[:, axis]) for axis in (0, 1))
    return list(zip(across.tolist(), down.tolist(), strict=True))


class Drawing(Canvas):
    """A picture measured in dots from its top left corner; subclasses draw it in `draw`.

    Where two lines share a cell, the dots of both stay and the later line gives the style. So the
    most important line is drawn last.
    """

    def __init__(self, id: str | None = None, classes: str | None = None) -> None:
        super().__init__(default_hires_mode=HiResMode.BRAILLE, id=id, classes=classes)
        self.sheet = Size(0, 0)

    def draw(self) -> None:
        """Draw everything on an empty canvas."""
        raise NotImplementedError

    def redraw(self) -> None:
        """Draw everything again at the present size."""
        self.sheet = self.size
        with self.batch_refresh():
            self.reset(size=self.sheet)
            if self.sheet.area:
                self.draw()

    def on_resize(self, event: Resize) -> None:
        """Draw at the new size."""
        self.redraw()

    def notify_style_update(self) -> None:
        """Draw in the new colours when the theme changes."""
        super().notify_style_update()
        if self.is_mounted:
            self.call_later(self.redraw)

    def render_line(self, y: int) -> Strip:
        """One row; empty until the picture is drawn at its present size."""
        if self.sheet != self.size:
            return Strip.blank(self.size.width, self.rich_style)
        return super().render_line(y)

    def colour(self, name: str) -> str:
        """Style of a component class, in the form that the canvas takes."""
        return str(self.get_component_rich_style(name))

    def set_pixel(self, x: int, y: int, char: str = "█", style: str = "white") -> None:
        """Write a character; dots are added to the dots of the cell."""
        if is_braille(char) and 0 <= x < self.sheet.width and 0 <= y < self.sheet.height:
            present = self.get_pixel(x, y)[0]
            if is_braille(present):
                char = chr(ord(present) | ord(char))
        super().set_pixel(x, y, char, style)

    def line(self, points: Dots, name: str, dashes: Dashes = SOLID, thick: bool = False) -> None:
        """Draw a line through points in dots, in the style of a component class."""
        dots = along(points, dashes)
        if thick:
            steep = abs(points[-1][1] - points[0][1]) > abs(points[-1][0] - points[0][0])
            right, down = (1, 0) if steep else (0, 1)
            dots += [(x + right, y + down) for x, y in dots]
        self.spots(dots, name)

    def spots(self, dots: Iterable[tuple[float, float]], name: str) -> None:
        """Draw single dots, in the style of a component class."""
        cells = ((round(x) / ACROSS, round(y) / DOWN) for x, y in dots)
        self.set_hires_pixels(cells, style=self.colour(name))

    def mark(self, dot: tuple[float, float], char: str, name: str) -> None:
        """Write one character in the cell of a dot."""
        column, row = cell_of(dot)
        self.set_pixel(column, row, char, self.colour(name))

    def write(self, column: int, row: int, text: str, name: str) -> None:
        """Write text from this cell on; a character that is not one cell wide becomes a dot."""
        style = self.colour(name)
        for offset, char in enumerate(text):
            self.set_pixel(column + offset, row, char if cell_len(char) == 1 else "·", style)

    def drawn_cells(self) -> set[tuple[int, int]]:
        """Cells (column, row) that are not empty."""
        return {
            (column, row)
            for row in range(self.sheet.height)
            for column in range(self.sheet.width)
            if self.get_pixel(column, row)[0] != " "
        }


def cell_of(dot: tuple[float, float]) -> tuple[int, int]:
    """Cell (column, row) of a dot."""
    return round(dot[0]) // ACROSS, round(dot[1]) // DOWN
