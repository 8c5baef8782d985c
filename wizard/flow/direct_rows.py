"""The direct check as it is typed: first the method, then one line for each row.

    board; 36 in; left
    left; 30 1/2; 12 1/16; 12 1/8; down

A draft keeps the lines under `draft.direct`. They become the `direct` table of the session as soon
as they can be judged.
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
    OneHeightOnly,
    direct_at,
)
from core.text.plain_text import plain

TYPED = "draft.direct"


def typed_check(document: Document) -> dict[str, Any]:
    """The direct check as far as it is typed; empty before the method is known."""
    table = value_at(document, TYPED, value_at(document, "direct", {}))
    return dict(table) if isinstance(table, Mapping) else {}


def typed_rows(document: Document) -> list[Mapping[str, Any]]:
    """Rows that were typed, in order."""
    rows = typed_check(document).get("rows", [])
    return list(rows) if isinstance(rows, list) else []


def line_hint(document: Document) -> str:
    """Example of the next line."""
    table = typed_check(document)
    if not table:
        return "board; 36 in; left     laser; 120 in; right     turn-plate"
    readings = "; ".join(EXAMPLES[key].rpartition(" ")[0] for key in READ_IN[table["method"]])
    return f"left; 30 1/2; {readings}; down"


def with_line(document: Document, text: str) -> Document:
    """The document with one more line: the method, or a row.

    Raises
    ------
    core.documents.entries.EntryError
        The line cannot be read, or no axle can have moved so.
    """
    parts = [part.strip() for part in text.split(";")]
    table = typed_check(document)
    if not table:
        return with_value(document, TYPED, _method_from(document, parts))
    row = _row_from(document, table, parts)
    return _with_table(document, {**table, "rows": [*typed_rows(document), row]})


def without_last_line(document: Document) -> Document:
    """The document without the last row; without the method where there is no row."""
    rows = typed_rows(document)
    if not rows:
        return without(without(document, TYPED), "direct")
    return _with_table(document, {**typed_check(document), "rows": rows[:-1]})


def _method_from(document: Document, parts: Sequence[str]) -> dict[str, Any]:
    method, *others = parts
    if method not in METHODS:
        raise EntryError("method", f"“{plain(method)}” should be one of {', '.join(METHODS)}")
    table: dict[str, Any] = {"method": method}
    if method in LENGTH_ENTRIES:
        key = LENGTH_ENTRIES[method]
        if not others:
            raise EntryError(key, f'is missing; type it after the method: "{method}; 36 in; left"')
        table[key] = _with_unit(document, others.pop(0))
    if method == "board" and not others:
        raise EntryError("line", 'is missing; end with the side of the chalk line, "left"')
    if others:
        table["line"] = others.pop(0)
    if others:
        raise EntryError("method", "has more parts than it needs; the hint shows a whole line")
    some_rows = [{"side": "left", "height": [f"{n} in"]} | _EXAMPLE_READINGS for n in (30, 31)]
    direct_at({"session": {"units": units_of(document)}, "direct": {**table, "rows": some_rows}})
    return table


_EXAMPLE_READINGS = {key: [EXAMPLES[key]] for keys in READ_IN.values() for key in keys}


def _row_from(document: Document, table: Mapping[str, Any], parts: Sequence[str]) -> dict[str, Any]:
    keys = ("height", *READ_IN[table["method"]])
    side, *readings = parts
    going = readings.pop() if len(readings) > len(keys) else ""
    if side not in SIDES:
        raise EntryError("side", f"“{plain(side)}” should be left or right")
    if going not in GOINGS:
        raise EntryError("going", f"“{plain(going)}” should be up, down, or left out")
    if len(readings) != len(keys):
        raise EntryError("row", f"should have {' and '.join(keys)} after the side, with ; between")
    row: dict[str, Any] = {"side": side}
    for key, text in zip(keys, readings, strict=True):
        row[key] = [text if key == "angle" else _with_unit(document, text)]
    return row | ({"going": going} if going else {})


def _with_unit(document: Document, text: str) -> str:
    """A length with the unit of the session where it is a bare number."""
    return (
        text
        if not text or text[-1].isalpha() or text[-1] in "\"'"
        else (f"{text} {units_of(document)}")
    )


def _with_table(document: Document, table: Mapping[str, Any]) -> Document:
    """The document with a table as it is typed, judged as soon as that can be."""
    kept = with_value(document, TYPED, table)
    judged = {"session": {"units": units_of(document)}, "direct": table}
    try:
        check = direct_at(judged)
    except OneHeightOnly:
        check = None
    return with_value(kept, "direct", table) if check else without(kept, "direct")
