"""The map of steer over roll and heave, while the axle flexes.

Roll runs across as in the front view, the left wheel up on the right-hand side; bump is on top.
"""

from math import isfinite

from rich.console import Console, ConsoleOptions, RenderResult
from rich.style import Style
from rich.table import Table
from rich.text import Text
from textual.widgets import Static

from wizard.phrases.amounts import place_in_travel
from wizard.views.picture_data import ArticulationPicture
from wizard.views.styles import Styled, StyleOf

MULTIPLES = (1, 2, 4)
"""Multiples of the limit from which each further shade is used."""

SHADES = " ░▒▓"
"""Shade of each level: within the limit, then over each of the multiples."""

TONES = ("within", "over", "over", "far-over")
"""Component class of each level, without its prefix."""

GAP, NARROWEST, WIDEST = 1, 6, 9
"""Columns between two cells, and of a cell at least and at most."""

ROLL = "roll, deg"
CANNOT_REACH = "—"


class ArticulationMap(Static):
    """Draws an ArticulationPicture."""

    COMPONENT_CLASSES = {
        "articulation-map--within",
        "articulation-map--over",
        "articulation-map--far-over",
        "articulation-map--head",
        "articulation-map--word",
    }

    def __init__(
        self,
        picture: ArticulationPicture | None = None,
        *,
        id: str | None = None,
        classes: str | None = None,
    ) -> None:
        super().__init__(id=id, classes=classes, markup=False)
        self.picture = picture

    def on_mount(self) -> None:
        """Draw the first map."""
        self.show(self.picture)

    def show(self, picture: ArticulationPicture | None) -> None:
        """Show another map, or none."""
        self.picture = picture
        self.update(Map(picture, self.style_of) if picture else "")

    def style_of(self, name: str) -> Style:
        """Style of a component class."""
        return self.get_component_rich_style(f"articulation-map--{name}")


class Map(Styled):
    """The map as a table; its cells are wider where there is room."""

    def __init__(self, picture: ArticulationPicture, style_of: StyleOf) -> None:
        super().__init__(style_of)
        self.picture = picture
        self.names = {heave: place_in_travel(heave, picture.unit) for heave in picture.heave}
        self.worst = worst_of(picture)

    def __rich_console__(self, console: Console, options: ConsoleOptions) -> RenderResult:
        picture = self.picture
        side = max(map(len, (ROLL, *self.names.values())))
        width = (options.max_width - side) // len(picture.roll) - GAP
        width = max(NARROWEST, min(WIDEST, width))
        table = Table(box=None, pad_edge=False, padding=(0, 0, 0, GAP), show_header=False)
        table.add_column(no_wrap=True, min_width=side)
        for _ in picture.roll:
            table.add_column(no_wrap=True, justify="center", min_width=width)
        rolls = (self.text(f"{roll:+g}" if roll else "level", "word") for roll in picture.roll)
        table.add_row(self.text(ROLL, "word"), *rolls)
        rows = list(enumerate(zip(picture.heave, picture.steer, strict=True)))
        for row, (heave, steers) in reversed(rows):
            name = self.text(self.names[heave], "word")
            table.add_row(name, *(self.figure(row, column) for column in range(len(steers))))
            table.add_row("", *(self.shade(value, width) for value in steers))
        left, right = "◂ right wheel up", "left wheel up ▸"
        across = (width + GAP) * len(picture.roll) - GAP
        yield self.text(" " * (side + GAP) + left + right.rjust(across - len(left)), "word")
        yield table
        yield Text()
        yield self.text(worst_words(picture, self.worst), "head")
        yield self.text(legend(picture), "word")

    def figure(self, row: int, column: int) -> Text:
        """Steer with its sign, the largest one in brackets."""
        value = self.picture.steer[row][column]
        text = self.text(figure(value), TONES[level(value, self.picture.limit)])
        return Text.assemble("[", text, "]", style="bold") if (row, column) == self.worst else text

    def shade(self, value: float, width: int) -> Text:
        """Shade of a steer; it is darker further over the limit."""
        step = level(value, self.picture.limit)
        return self.text(SHADES[step] * width, TONES[step])


def level(value: float, limit: float) -> int:
    """Level of a steer: 0 within the limit, then 1, 2 and 3 over once, twice and four times."""
    if not isfinite(value):
        return 0
    return sum(abs(value) > limit * times for times in MULTIPLES)


def figure(value: float) -> str:
    """A steer in tenths of a degree with its sign; a dash where the linkage cannot reach."""
    if not isfinite(value):
        return CANNOT_REACH
    return f"{value:+.1f}" if round(value, 1) else " 0.0"


def worst_of(picture: ArticulationPicture) -> tuple[int, int] | None:
    """Row and column of the largest steer; None where the linkage cannot reach anywhere."""
    reached = [
        (abs(value), row, column)
        for row, steers in enumerate(picture.steer)
        for column, value in enumerate(steers)
        if isfinite(value)
    ]
    return max(reached)[1:] if reached else None


def worst_words(picture: ArticulationPicture, worst: tuple[int, int] | None) -> str:
    """The largest steer and its place in words."""
    if worst is None:
        return "The linkage cannot reach anywhere on this map."
    row, column = worst
    value, roll = picture.steer[row][column], picture.roll[column]
    side = "left" if roll > 0 else "right"
    lean = f"{side} wheel up {abs(roll):g} deg" if roll else "axle level"
    way = "to the left" if value > 0 else "to the right"
    within = " (within)" if level(value, picture.limit) == 0 else ""
    where = place_in_travel(picture.heave[row], picture.unit)
    return f"Worst: {abs(value):.1f} deg {way} at {where}, {lean}{within}"


def legend(picture: ArticulationPicture) -> str:
    """Meaning of signs and shades."""
    shades = zip(SHADES[1:], ("over", "over twice", "over 4 times"), strict=True)
    words = ["+ left", "- right", *(f"{char} {word}" for char, word in shades)]
    reached = all(isfinite(value) for steers in picture.steer for value in steers)
    last = "" if reached else f"\n{CANNOT_REACH} cannot reach"
    return f"against {picture.limit:g} deg:  " + "  ".join(words) + last
