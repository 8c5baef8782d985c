"""The direct check: steer read at the wheels while a jack moves the axle.

A row is read at one height with a board and a chalk line, a laser and a wall, or a turn plate.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial
from typing import Any, Literal, cast, get_args

from core.documents.document import value_at
from core.documents.entries import (
    EntryError,
    choice_at,
    quantity_at,
    repeats_at,
    units_of,
)
from core.documents.tables import tables_at
from core.text import quantity

Method = Literal["board", "laser", "turn-plate"]
Side = Literal["left", "right"]
Going = Literal["up", "down", ""]

METHODS: tuple[Method, ...] = get_args(Method)
SIDES: tuple[Side, ...] = get_args(Side)
GOINGS: tuple[Going, ...] = get_args(Going)

ROWS = "direct.rows"
"""Path of the list of rows."""

LENGTH_ENTRIES: dict[Method, str] = {"board": "board", "laser": "distance"}
"""Entry of the length that a method divides by."""

READ_IN: dict[Method, tuple[str, ...]] = {
    "board": ("front", "rear"),
    "laser": ("mark",),
    "turn-plate": ("angle",),
}
"""Readings of a row beside its height, by the method."""

EXAMPLES = {
    "board": "36 in",
    "distance": "120 in",
    "height": "30 1/2 in",
    "front": "12 1/16 in",
    "rear": "12 1/8 in",
    "mark": "24 1/4 in",
    "angle": "0.3 deg",
}

FARTHEST_APART = 600.0
"""mm; no front axle travels farther between two rows."""

LARGEST = 30_000.0
"""mm; no board, wall or height is farther."""

SAME_HEIGHT = 1.0
"""mm; rows closer than this are at one height."""


class OneHeightOnly(EntryError):
    """The rows of a wheel are all at one height: further rows are missing."""


@dataclass(frozen=True)
class DirectRow:
    """Readings at one height of the axle, each with its repeats; mm and rad.

    Attributes
    ----------
    side : "left" or "right"
        The wheel that was read.
    height : tuple of float
        From the hub up to the mark on the frame, mm.
    front, rear : tuple of float
        Board: from its ends to the chalk line, mm.
    mark : tuple of float
        Laser: from the line on the wall to the laser's mark, mm.
    angle : tuple of float
        Turn plate: to the left positive, rad.
    going : "up", "down" or ""
        Way that the jack moved the axle to this height.
    """

    side: Side
    height: tuple[float, ...]
    front: tuple[float, ...] = ()
    rear: tuple[float, ...] = ()
    mark: tuple[float, ...] = ()
    angle: tuple[float, ...] = ()
    going: Going = ""

    @property
    def mean_height(self) -> float:
        """Mean of the repeats of the height, mm."""
        return mean_of(self.height)


@dataclass(frozen=True)
class DirectCheck:
    """A direct check as it was read.

    Attributes
    ----------
    method : "board", "laser" or "turn-plate"
    length : float or None
        Length of the board, or distance of the wall from the hub, mm; None for a turn plate.
    line : "left" or "right"
        Side of the wheel on which the chalk line lies, or the line on the wall.
    rows : tuple of DirectRow
        In the order in which they were read; ride height first and last.
    """

    method: Method
    length: float | None
    line: Side
    rows: tuple[DirectRow, ...]

    @property
    def sides(self) -> tuple[Side, ...]:
        """Wheels that were read, left first."""
        return tuple(side for side in SIDES if any(row.side == side for row in self.rows))

    def rows_of(self, side: Side) -> tuple[DirectRow, ...]:
        """Rows of one wheel, in the order in which they were read."""
        return tuple(row for row in self.rows if row.side == side)


def mean_of(repeats: tuple[float, ...]) -> float:
    """Mean of the repeats of a reading."""
    return sum(repeats) / len(repeats)


def direct_at(document: Mapping[str, Any]) -> DirectCheck | None:
    """The direct check of a document; None where no row was read.

    Raises
    ------
    core.documents.entries.EntryError
        An entry is missing or faulty, or no axle can have moved so.
    """
    table = value_at(document, "direct")
    if table is None:
        return None
    if not isinstance(table, Mapping):
        raise EntryError("direct", 'should be a table with a method, such as method = "board"')
    tables = tables_at(document, ROWS)
    if not tables:
        return None
    method = cast(Method, choice_at(document, "direct.method", METHODS))
    # A laser's mark counts to the left where nothing else is said.
    default = None if method == "board" else "right"
    line = cast(Side, choice_at(document, "direct.line", SIDES, default))
    rows = tuple(_row(document, place, row, method) for place, row in tables)
    check = DirectCheck(method, _length(document, method), line, rows)
    for side in check.sides:
        _refuse_impossible_heights(check, side)
    return check


def _length(document: Mapping[str, Any], method: Method) -> float | None:
    """Length of the board or distance of the wall, mm; None for a turn plate."""
    if method not in LENGTH_ENTRIES:
        return None
    key = LENGTH_ENTRIES[method]
    path, example = f"direct.{key}", EXAMPLES[key]
    length = quantity_at(document, path, _length_parser(document), example)
    if length is None:
        raise EntryError(path, f'is missing; it should be a length such as "{example}"')
    if not 0 < length <= LARGEST:
        raise EntryError(path, f'should be more than 0 and at most 30 m, such as "{example}"')
    return length


def _length_parser(document: Mapping[str, Any]) -> partial[float]:
    return partial(quantity.parse_length, unit=units_of(document))


def _row(
    document: Mapping[str, Any], place: str, table: Mapping[str, Any], method: Method
) -> DirectRow:
    """One row; `place` is its name in a message, "direct.rows 1"."""
    name = place.removeprefix("direct.")
    within = {"direct": {name: table}}
    lengths = _length_parser(document)

    def repeats(key: str) -> tuple[float, ...]:
        path = f"direct.{name}.{key}"
        is_angle = key == "angle"
        parse = quantity.parse_angle if is_angle else lengths
        values = repeats_at(within, path, parse, EXAMPLES[key])
        if not values:
            raise EntryError(path, f'is missing; it should be a list such as ["{EXAMPLES[key]}"]')
        if not is_angle and max(map(abs, values)) > LARGEST:
            raise EntryError(path, f'is more than 30 m; it should be such as "{EXAMPLES[key]}"')
        if is_angle and max(map(abs, values)) > 1.0:
            raise EntryError(path, f'is more than 57 deg; it should be such as "{EXAMPLES[key]}"')
        return values

    return DirectRow(
        side=cast(Side, choice_at(within, f"direct.{name}.side", SIDES)),
        height=repeats("height"),
        going=cast(Going, choice_at(within, f"direct.{name}.going", GOINGS, "")),
        **{key: repeats(key) for key in READ_IN[method]},
    )


def _refuse_impossible_heights(check: DirectCheck, side: Side) -> None:
    """Raise EntryError where the rows of one wheel are at one height, or too far apart."""
    heights = [row.mean_height for row in check.rows_of(side)]
    span = max(heights) - min(heights)
    if span < SAME_HEIGHT:
        raise OneHeightOnly(
            ROWS, f"has the {side} wheel at one height only; at least four more heights are read"
        )
    if span > FARTHEST_APART:
        raise EntryError(
            ROWS,
            f"has heights of the {side} wheel {span:.0f} mm apart; they should lie within "
            f"{FARTHEST_APART:.0f} mm",
        )
