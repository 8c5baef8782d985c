"""Steer over roll and heave: how the wheels turn while the axle flexes.

Roll runs across as in the front view, the left wheel up on the right-hand side; bump is on top.
"""

from collections.abc import Callable
from math import isfinite

from rich.console import Console, ConsoleOptions, RenderResult
from rich.style import Style
from rich.table import Table
from rich.text import Text
from textual.widgets import Static

from wizard.phrases.amounts import place_in_travel
from wizard.views.picture_data import ArticulationPicture

SHADES = " ░▒▓"
"""Within the limit, and beyond it once, twice and four times."""

TONES = ("within", "over", "over", "far-over")

GAP, NARROWEST, WIDEST = 1, 6, 9
"""Columns between the cells, and of a cell."""

Styles = Callable[[str], Style]


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
        """Draw what was given at the start."""
        self.show(self.picture)

    def show(self, picture: ArticulationPicture | None) -> None:
        """Show another map, or none."""
        self.picture = picture
        self.update(Map(picture, self.get_component_rich_style) if picture else "")


class Map:
    """The map itself, wider where there is room."""

    def __init__(self, picture: ArticulationPicture, style: Styles) -> None:
        self.picture = picture
        self.style = style
        self.names = {heave: place_in_travel(heave, picture.unit) for heave in picture.heave}
        self.worst = worst_of(picture)

    def __rich_console__(self, console: Console, options: ConsoleOptions) -> RenderResult:
        picture = self.picture
        side = max(map(len, ("roll, deg", *self.names.values())))
        cell = (options.max_width - side) // len(picture.roll) - GAP
        cell = max(NARROWEST, min(WIDEST, cell))
        table = Table(box=None, pad_edge=False, padding=(0, 0, 0, GAP), show_header=False)
        table.add_column(no_wrap=True, min_width=side)
        for _ in picture.roll:
            table.add_column(no_wrap=True, justify="center", min_width=cell)
        rolls = (self.text(f"{roll:+g}" if roll else "level", "word") for roll in picture.roll)
        table.add_row(self.text("roll, deg", "word"), *rolls)
        rows = list(enumerate(zip(picture.heave, picture.steer, strict=True)))
        for row, (heave, steers) in reversed(rows):
            name = self.text(self.names[heave], "word")
            table.add_row(name, *(self.figure(row, column) for column in range(len(steers))))
            table.add_row("", *(self.shade(value, cell) for value in steers))
        left, right = "◂ right wheel up", "left wheel up ▸"
        across = (cell + GAP) * len(picture.roll) - GAP
        yield self.text(" " * (side + GAP) + left + right.rjust(across - len(left)), "word")
        yield table
        yield Text()
        yield self.text(worst_words(picture, self.worst), "head")
        yield self.text(legend(picture), "word")

    def figure(self, row: int, column: int) -> Text:
        """Steer with its sign; brackets round the worst."""
        value = self.picture.steer[row][column]
        text = self.text(figure(value), TONES[level(value, self.picture.limit)])
        return Text.assemble("[", text, "]", style="bold") if (row, column) == self.worst else text

    def shade(self, value: float, cell: int) -> Text:
        """The darker, the further over the limit."""
        step = level(value, self.picture.limit)
        return self.text(SHADES[step] * cell, TONES[step])

    def text(self, words: str, name: str) -> Text:
        """Words in the style of a component class."""
        return Text(words, style=self.style(f"articulation-map--{name}"))


def level(value: float, limit: float) -> int:
    """Step of a steer over the limit: 0 within, then over once, twice and four times the limit."""
    if not isfinite(value):
        return 0
    return sum(abs(value) > limit * times for times in (1, 2, 4))


def figure(value: float) -> str:
    """A steer in tenths of a degree with its sign; a dash where the linkage cannot reach."""
    if not isfinite(value):
        return "—"
    text = f"{value:+.1f}"
    return " 0.0" if float(text) == 0 else text


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
    """The worst corner, said in words."""
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
    """Meaning of the signs and shades."""
    shades = zip(SHADES[1:], ("over", "over twice", "over 4 times"), strict=True)
    words = ["+ left", "- right", *(f"{char} {word}" for char, word in shades)]
    reached = all(isfinite(value) for steers in picture.steer for value in steers)
    last = "" if reached else "\n— cannot reach"
    return f"against {picture.limit:g} deg:  " + "  ".join(words) + last
