"""The direct check as it is typed: first its method, then one cell after the other.

A draft keeps everything that was typed under `draft.direct`, half a row included. Its whole rows
become the `direct` table of the session as soon as they can be judged.
"""

from collections.abc import Mapping, Sequence
from typing import Any

from core.documents.document import Document, value_at, with_value, without
from core.documents.entries import EntryError, units_of
from core.readings.direct import (
    EXAMPLES,
    GOINGS,
    LENGTH_ENTRIES,
    METHODS,
    READ_IN,
    SIDES,
    Method,
    OneHeightOnly,
    direct_at,
)
from core.text.plain_text import plain
from core.text.quantity import QuantityError, split_repeats, with_unit

TYPED = "draft.direct"

SIDE, HEIGHT, GOING = "side", "height", "going"

WORDS = {SIDE: SIDES, GOING: GOINGS}
"""Words that a cell takes; its first letter is enough."""


def typed_check(document: Document) -> dict[str, Any]:
    """The direct check as far as it is typed; empty before the method is known."""
    table = value_at(document, TYPED, value_at(document, "direct", {}))
    is_begun = isinstance(table, Mapping) and table.get("method") in METHODS
    return dict(table) if is_begun else {}


def typed_rows(document: Document) -> list[dict[str, Any]]:
    """Rows that were typed, in order; the last one may be half a row."""
    rows = typed_check(document).get("rows", [])
    if not isinstance(rows, list):
        return []
    return [dict(row) for row in rows if isinstance(row, Mapping)]


def columns_of(table: Mapping[str, Any]) -> tuple[str, ...]:
    """Cells of a row, from left to right."""
    return (SIDE, HEIGHT, *READ_IN[table["method"]], GOING)


def is_whole(table: Mapping[str, Any], row: Mapping[str, Any]) -> bool:
    """True if a row has all its readings."""
    return all(row.get(key) for key in (HEIGHT, *READ_IN[table["method"]]))


def next_row(rows: Sequence[Mapping[str, Any]]) -> dict[str, Any]:
    """An empty row, with the side and the way of the row above it."""
    last = rows[-1] if rows else {SIDE: SIDES[0]}
    return {key: last[key] for key in (SIDE, GOING) if last.get(key)}


def cell_text(row: Mapping[str, Any], key: str) -> str:
    """Text of a cell as it was typed; "" where it is empty."""
    value = row.get(key, "")
    return "; ".join(map(str, value)) if isinstance(value, list) else str(value)


def with_method(document: Document, method: Method, length: str, line: str) -> Document:
    """The document with the method of its direct check.

    Parameters
    ----------
    document : mapping
    method : "board", "laser" or "turn-plate"
    length : str
        Length of the board, or distance of the wall; "" for a turn plate.
    line : str
        Side of the wheel on which the line lies; "" for a turn plate.

    Raises
    ------
    core.documents.entries.EntryError
        The length cannot be read, or is no length of a board.
    """
    table: dict[str, Any] = {"method": method}
    if method in LENGTH_ENTRIES:
        key = LENGTH_ENTRIES[method]
        try:
            table[key] = _length(document, length)
        except QuantityError as error:
            raise EntryError(key, str(error)) from None
    if line:
        table["line"] = line
    example = {key: [EXAMPLES[key]] for key in READ_IN[method]}
    rows = [{SIDE: "left", HEIGHT: [height], **example} for height in ("30 in", "31 in")]
    direct_at({"session": {"units": units_of(document)}, "direct": {**table, "rows": rows}})
    return with_value(document, TYPED, table)


def without_check(document: Document) -> Document:
    """The document without its direct check."""
    return without(without(document, TYPED), "direct")


def with_cell(document: Document, place: int, key: str, text: str) -> Document:
    """The document with one cell of the rows, or with a further row that has this cell.

    Parameters
    ----------
    document : mapping
    place : int
        Index of the row; the number of rows for a further one.
    key : str
        One of `columns_of`.
    text : str
        Readings with ; between, or a word.

    Raises
    ------
    core.documents.entries.EntryError
        The text cannot be read, or no axle can have moved so.
    """
    table, rows = typed_check(document), typed_rows(document)
    if place == len(rows):
        rows.append(next_row(rows))
    rows[place][key] = _value_of(document, key, text)
    _refuse(document, table, rows, place)
    return _with_rows(document, table, rows)


def without_row(document: Document, place: int) -> Document:
    """The document without one row."""
    rows = typed_rows(document)
    del rows[place]
    return _with_rows(document, typed_check(document), rows)


def _value_of(document: Document, key: str, text: str) -> str | list[str]:
    """A cell as a record has it. Raises EntryError where the text is none."""
    if key in WORDS:
        typed = text.strip().casefold()
        for word in WORDS[key]:
            if typed == word or (typed and word.startswith(typed)):
                return str(word)
        words = " or ".join(word for word in WORDS[key] if word)
        raise EntryError(key, f"“{plain(text)}” should be {words}")
    try:
        parts = split_repeats(text)
        return [part if key == "angle" else _length(document, part) for part in parts]
    except QuantityError as error:
        raise EntryError(key, str(error)) from None


def _length(document: Document, text: str) -> str:
    """A typed length with its unit, so that it means the same in any unit of the session."""
    return with_unit(text, units_of(document))


def _refuse(
    document: Document, table: Mapping[str, Any], rows: Sequence[Mapping[str, Any]], place: int
) -> None:
    """Raise EntryError for a row that cannot be so; cells not typed yet have examples."""
    row, method = rows[place], table["method"]
    missing = [key for key in READ_IN[method] if not row.get(key)]
    filled = {**row, **{key: [EXAMPLES[key]] for key in missing}}
    filled.setdefault(HEIGHT, next((each[HEIGHT] for each in rows if each.get(HEIGHT)), ["30 in"]))
    others = [each for each in rows if each is not row and is_whole(table, each)]
    _judged(document, {**table, "rows": [*others, filled]})


def _judged(document: Document, table: Mapping[str, Any]) -> bool:
    """True if rows can be judged, False with one height alone. Raises EntryError."""
    try:
        check = direct_at({"session": {"units": units_of(document)}, "direct": table})
    except OneHeightOnly:
        return False
    return check is not None


def _with_rows(
    document: Document, table: Mapping[str, Any], rows: Sequence[Mapping[str, Any]]
) -> Document:
    """The document with rows as they are typed, judged as soon as that can be."""
    kept = with_value(document, TYPED, {**table, "rows": [*rows]})
    whole = {**table, "rows": [row for row in rows if is_whole(table, row)]}
    can_be_judged = _judged(document, whole)
    return with_value(kept, "direct", whole) if can_be_judged else without(kept, "direct")
