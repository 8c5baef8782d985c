"""Places of words in a drawing: beside their point, clear of each other and of the edge."""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from math import inf
from operator import itemgetter

Cell = tuple[int, int]
"""Column and row."""

GAP = 2
"""Columns kept free between two labels in one row."""

SHORTENED, NEAR_RIVAL, NEXT_ANCHOR = 9, 14, 2
"""Cost of a shorter text, of a place nearer to a rival, and of a later anchor."""

ROW_AWAY = 3
"""Cost of a place one row away from the anchor."""

FARTHEST = 3
"""Rows that a label may stand away from its anchor."""


@dataclass(frozen=True)
class Label:
    """Words that have no place yet.

    Attributes
    ----------
    texts : tuple of str
        The same words at length and in short; the cheapest text with its place is taken.
    anchors : tuple of Cell
        Cells that the words may stand beside: one for a point, several along a line, the best
        first.
    style : str
        Component class.
    needed : bool
        True if the words are placed anywhere when there is no place beside an anchor; otherwise
        they are left out.
    rivals : tuple of Cell
        Cells that the words should not be nearer to than to their own anchor. They are never nearer
        to a point of another label.
    """

    texts: tuple[str, ...]
    anchors: tuple[Cell, ...]
    style: str
    needed: bool = False
    rivals: tuple[Cell, ...] = ()


@dataclass(frozen=True)
class Placed:
    """Words in their place.

    Attributes
    ----------
    column, row : int
        Cell of the first character.
    text : str
    style : str
        Component class.
    """

    column: int
    row: int
    text: str
    style: str

    @property
    def cells(self) -> range:
        """Columns of the text."""
        return range(self.column, self.column + len(self.text))

    @property
    def around(self) -> set[Cell]:
        """Cells that other labels keep clear of."""
        return {(column, self.row) for column in range(self.column - GAP, self.cells.stop + GAP)}

    def touches(self, other: "Placed") -> bool:
        """True if two labels have less than the gap between them."""
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
        Cells with lines in them; only a needed word without any other place hides a line.
    marks : collection of Cell
        Cells never written over.
    taken : sequence of Placed
        Words that have their places already.

    Returns
    -------
    tuple of Placed
        In the order of the labels, without the labels that have no place.
    """
    labels = tuple(labels)
    points = {label.anchors[0] for label in labels if len(label.anchors) == 1}
    busy, lines = set(marks).union(*(spot.around for spot in taken)), set(drawn)
    placed: list[Placed] = []
    for label in labels:
        others = points.difference(label.anchors) if len(label.anchors) == 1 else set()
        spot = best_spot(label, size, busy | lines, others)
        if spot is None and label.needed:
            spot = nearest_spot(label, size, busy | lines) or nearest_spot(label, size, busy)
        if spot:
            placed.append(spot)
            busy |= spot.around
    return tuple(placed)


def best_spot(
    label: Label,
    size: tuple[int, int],
    busy: set[Cell],
    others: Collection[Cell],
) -> Placed | None:
    """The cheapest place beside a label's anchors, nearer to them than to other points."""
    candidates = sorted(
        (
            (cost + SHORTENED * shorter + NEXT_ANCHOR * later, anchor, spot)
            for shorter, text in enumerate(label.texts)
            for later, anchor in enumerate(label.anchors)
            for cost, spot in spots_beside(anchor, text, label.style)
        ),
        key=itemgetter(0),
    )
    best, least = None, inf
    for cost, anchor, spot in candidates:
        if cost >= least:
            break
        if fits(spot, size, busy) and is_nearest(spot, anchor, others):
            misleads = not is_nearest(spot, anchor, label.rivals)
            total = cost + NEAR_RIVAL * misleads
            if total < least:
                best, least = spot, total
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
    """True if a label is whole and covers no busy cell."""
    columns, rows = size
    return (
        0 <= spot.row < rows
        and spot.column >= 0
        and spot.cells.stop <= columns
        and busy.isdisjoint((column, spot.row) for column in spot.cells)
    )


def spots_beside(anchor: Cell, text: str, style: str) -> Iterable[tuple[float, Placed]]:
    """Places around a cell, each with its cost, which grows with the distance."""
    column, row = anchor
    width = len(text)
    for away in range(FARTHEST + 1):
        for down in {away, -away}:
            starts = {column + 2, column + 4, column - width - 1, column - width - 3}
            if away:
                starts |= {column - width // 2, column - width // 4, column - 3 * width // 4}
            for start in starts:
                aside = abs(start + (width - 1) / 2 - column) / 4
                if not away:
                    aside -= width / 8
                yield ROW_AWAY * away + aside, Placed(start, row + down, text, style)


def everywhere(text: str, style: str, size: tuple[int, int]) -> Iterable[Placed]:
    """Every place in a drawing of this size (columns, rows)."""
    columns, rows = size
    for row in range(rows):
        for column in range(columns - len(text) + 1):
            yield Placed(column, row, text, style)


def is_nearest(spot: Placed, anchor: Cell, others: Iterable[Cell]) -> bool:
    """True if a label is nearer to its anchor than to every other point."""
    own = distance(spot, anchor)
    return all(distance(spot, other) > own for other in others)


def distance(spot: Placed, cell: Cell) -> float:
    """Distance of a cell from a label's nearest character, in columns; a row counts as two."""
    column, row = cell
    aside = max(spot.column - column, column - (spot.cells.stop - 1), 0)
    return float(max(aside, 2 * abs(row - spot.row)))
