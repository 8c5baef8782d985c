"""Where words go in a drawing: beside what they name, clear of each other and of the edge."""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass

Cell = tuple[int, int]
"""Column and row."""

GAP = 2
"""Columns kept free between two labels in one row."""

OVER_LINE, SHORTENED = 6, 9
"""What it costs to hide a cell of a line, and to say something in short; a row off costs 3."""


@dataclass(frozen=True)
class Label:
    """Words for a spot.

    Attributes
    ----------
    texts : tuple of str
        The same said at length and in short; the first that fits well is taken.
    anchors : tuple of Cell
        The cells it may stand beside: one for a point, several along a line.
    style : str
        Component class.
    needed : bool
        Shown even where it has to stand away from its spot; otherwise it is left out.
    """

    texts: tuple[str, ...]
    anchors: tuple[Cell, ...]
    style: str
    needed: bool = False


@dataclass(frozen=True)
class Placed:
    """Words in their place, from this cell to the right."""

    column: int
    row: int
    text: str
    style: str

    @property
    def cells(self) -> range:
        """Columns it takes."""
        return range(self.column, self.column + len(self.text))

    def touches(self, other: "Placed") -> bool:
        """Whether two labels would run into one another."""
        return (
            self.row == other.row
            and self.column < other.cells.stop + GAP
            and other.column < self.cells.stop + GAP
        )


def place(
    labels: Iterable[Label],
    size: tuple[int, int],
    drawn: Collection[Cell] = (),
    marks: Collection[Cell] = (),
    taken: Sequence[Placed] = (),
) -> tuple[Placed, ...]:
    """Find a place for each label, the first ones first.

    Parameters
    ----------
    labels : iterable of Label
    size : pair of int
        Columns and rows of the drawing.
    drawn : collection of Cell
        Cells with lines in them, rather not written over.
    marks : collection of Cell
        Cells never written over.
    taken : sequence of Placed
        Words already there.

    Returns
    -------
    tuple of Placed
        In the order of the labels, without those that found no place.
    """
    labels = tuple(labels)
    points = {label.anchors[0] for label in labels if len(label.anchors) == 1}
    found: list[Placed] = []
    for label in labels:
        others = points.difference(label.anchors) if len(label.anchors) == 1 else ()
        choices = [
            (cost + SHORTENED * shorter + OVER_LINE * covered(spot, drawn), spot)
            for shorter, text in enumerate(label.texts)
            for anchor in label.anchors
            for cost, spot in spots_beside(anchor, text, label.style)
            if fits(spot, size, marks, [*taken, *found]) and is_nearest(spot, anchor, others)
        ]
        if not choices and label.needed:
            choices = [
                (distance(spot, label.anchors[0]), spot)
                for spot in everywhere(label.texts[-1], label.style, size)
                if fits(spot, size, marks, [*taken, *found])
            ]
        if choices:
            found.append(min(choices, key=lambda choice: choice[0])[1])
    return tuple(found)


def fits(
    spot: Placed, size: tuple[int, int], marks: Collection[Cell], others: Iterable[Placed]
) -> bool:
    """Whether a label is whole, covers no mark and runs into no other."""
    columns, rows = size
    return (
        0 <= spot.row < rows
        and spot.column >= 0
        and spot.cells.stop <= columns
        and not any(row == spot.row and column in spot.cells for column, row in marks)
        and not any(spot.touches(other) for other in others)
    )


def spots_beside(anchor: Cell, text: str, style: str) -> Iterable[tuple[float, Placed]]:
    """Places around a cell, each with what it costs to stand that far off."""
    column, row = anchor
    wide = len(text)
    for away in range(4):
        for down in {away, -away}:
            starts = {column + 2, column + 4, column - wide - 1, column - wide - 3}
            if away:
                starts |= {column - wide // 2, column - wide // 4, column - 3 * wide // 4}
            for start in starts:
                aside = abs(start + (wide - 1) / 2 - column) / 4
                if not away:
                    aside -= wide / 8
                yield 3 * away + aside, Placed(start, row + down, text, style)


def everywhere(text: str, style: str, size: tuple[int, int]) -> Iterable[Placed]:
    """Every place in a drawing."""
    columns, rows = size
    for row in range(rows):
        for column in range(columns - len(text) + 1):
            yield Placed(column, row, text, style)


def covered(spot: Placed, drawn: Collection[Cell]) -> int:
    """How many cells with lines in them a label hides."""
    return sum((column, spot.row) in drawn for column in spot.cells)


def is_nearest(spot: Placed, anchor: Cell, others: Iterable[Cell]) -> bool:
    """Whether no other point is nearer to a label than the one it names."""
    own = distance(spot, anchor)
    return all(distance(spot, other) > own for other in others)


def distance(spot: Placed, cell: Cell) -> float:
    """How far a cell is from the nearest character of a label, in columns (a row counts two)."""
    column, row = cell
    aside = max(spot.column - column, column - (spot.cells.stop - 1), 0)
    return float(max(aside, 2 * abs(row - spot.row)))
