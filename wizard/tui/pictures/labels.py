"""Where words go in a drawing: beside what they name, clear of each other and of the edge."""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from math import inf
from operator import itemgetter

Cell = tuple[int, int]
"""Column and row."""

GAP = 2
"""Columns kept free between two labels in one row."""

OVER_LINE, SHORTENED, NEAR_RIVAL, NEXT_ANCHOR = 6, 9, 14, 2
"""What it costs to hide a cell of a line, to say it in short, to stand nearer to a rival, and to
take a later anchor; a row off costs 3."""


@dataclass(frozen=True)
class Label:
    """Words for a spot.

    Attributes
    ----------
    texts : tuple of str
        The same said at length and in short; the first that fits well is taken.
    anchors : tuple of Cell
        The cells it may stand beside: one for a point, several along a line, the best first.
    style : str
        Component class.
    needed : bool
        Shown even where it has to stand away from its spot; otherwise it is left out.
    rivals : tuple of Cell
        Cells it had better not be nearer to than to its own; to points of other labels it never is.
    """

    texts: tuple[str, ...]
    anchors: tuple[Cell, ...]
    style: str
    needed: bool = False
    rivals: tuple[Cell, ...] = ()


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

    @property
    def around(self) -> set[Cell]:
        """Cells that another label keeps out of."""
        return {(column, self.row) for column in range(self.column - GAP, self.cells.stop + GAP)}

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
    busy = set(marks).union(*(spot.around for spot in taken))
    found: list[Placed] = []
    for label in labels:
        others = points.difference(label.anchors) if len(label.anchors) == 1 else set()
        spot = best_spot(label, size, drawn, busy, others)
        if spot is None and label.needed:
            spot = nearest_spot(label, size, busy)
        if spot:
            found.append(spot)
            busy |= spot.around
    return tuple(found)


def best_spot(
    label: Label,
    size: tuple[int, int],
    drawn: Collection[Cell],
    busy: set[Cell],
    others: Collection[Cell],
) -> Placed | None:
    """The cheapest place beside a label's anchors, nearer to them than to other points."""
    choices = sorted(
        (
            (cost + SHORTENED * shorter + NEXT_ANCHOR * later, anchor, spot)
            for shorter, text in enumerate(label.texts)
            for later, anchor in enumerate(label.anchors)
            for cost, spot in spots_beside(anchor, text, label.style)
        ),
        key=itemgetter(0),
    )
    best, least = None, inf
    for cost, anchor, spot in choices:
        if cost >= least:
            break
        if fits(spot, size, busy) and is_nearest(spot, anchor, others):
            misleads = not is_nearest(spot, anchor, label.rivals)
            whole = cost + OVER_LINE * covered(spot, drawn) + NEAR_RIVAL * misleads
            if whole < least:
                best, least = spot, whole
    return best


def nearest_spot(label: Label, size: tuple[int, int], busy: set[Cell]) -> Placed | None:
    """The free place nearest to a label's anchor, anywhere in the drawing."""
    spots = everywhere(label.texts[-1], label.style, size)
    return min(
        (spot for spot in spots if fits(spot, size, busy)),
        key=lambda spot: distance(spot, label.anchors[0]),
        default=None,
    )


def fits(spot: Placed, size: tuple[int, int], busy: set[Cell]) -> bool:
    """Whether a label is whole and stands in no busy cell."""
    columns, rows = size
    return (
        0 <= spot.row < rows
        and spot.column >= 0
        and spot.cells.stop <= columns
        and busy.isdisjoint((column, spot.row) for column in spot.cells)
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
