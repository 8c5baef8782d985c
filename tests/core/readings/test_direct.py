"""The direct check as a document holds it, and every fault of it in one line."""

import pytest

from core.documents.entries import EntryError
from core.readings.direct import direct_at
from core.text.quantity import INCH


def row(height, **changed):
    """A row of the left wheel with a board."""
    return {
        "side": "left",
        "height": [height],
        "front": ["12 1/16 in"],
        "rear": ["12 1/8 in"],
    } | changed


def document(*rows, **changed):
    """A document with a direct check by a board."""
    rows = rows or (row("30 in"), row("28 in"), row("30 in"))
    return {"direct": {"method": "board", "board": "36 in", "line": "left"} | changed}, list(rows)


def read(*rows, **changed):
    """The direct check of such a document."""
    tables, listed = document(*rows, **changed)
    tables["direct"]["rows"] = listed
    return direct_at(tables)


def test_a_board_is_read_with_its_repeats():
    check = read(row(30, front=["12 in", "12 1/8 in"], going="down"), row("28 in"), row("30 in"))
    assert check.length == pytest.approx(36 * INCH)
    assert check.rows[0].front == pytest.approx((12 * INCH, 12.125 * INCH))
    assert check.rows[0].going == "down"
    assert check.rows[0].mean_height == pytest.approx(30 * INCH)  # a bare number is in inches
    assert check.sides == ("left",)


def test_a_document_without_rows_has_no_direct_check():
    assert direct_at({}) is None
    assert direct_at({"direct": {"method": "board"}}) is None


def test_a_turn_plate_needs_no_line_and_no_length():
    rows = [{"side": "right", "height": [h], "angle": ["0.3 deg"]} for h in ("30 in", "28 in")]
    check = direct_at({"direct": {"method": "turn-plate", "rows": rows}})
    assert check.length is None
    assert check.sides == ("right",)


@pytest.mark.parametrize(
    ("rows", "changed", "message"),
    [
        ((), {"method": "string"}, r"\[direct\] method: “string” is not known; .* board, laser"),
        ((), {"board": "0 in"}, r"\[direct\] board: should be more than 0 .*36 in"),
        ((), {"board": None}, r"\[direct\] board: is missing.*36 in"),
        ((), {"line": "ahead"}, r"\[direct\] line: “ahead” is not known; .* left, right"),
        ((row("30 in"), row("30 in")), {}, r"\[direct\] rows: .* one height only"),
        ((row("30 in"), row("58 in")), {}, r"\[direct\] rows: .* 711 mm apart.*600 mm"),
        ((row("30 in", front=[]),), {}, r"\[direct.rows 1\] front: is missing"),
        ((row("30 in", rear="12 in"),), {}, r"\[direct.rows 1\] rear: is a text.*list"),
        ((row("30 in"), row("x")), {}, r"\[direct.rows 2\] height: “x” is not a length"),
        ((row("30 in", side="both"),), {}, r"\[direct.rows 1\] side: “both” is not known"),
        ((row("30 in", going="off"),), {}, r"\[direct.rows 1\] going: “off” is not known"),
        ((row("40 m"),), {}, r"\[direct.rows 1\] height: is more than 30 m"),
        (("30 in",), {}, r"\[direct\] rows: should be tables of their own"),
    ],
)
def test_a_fault_is_said_in_one_line(rows, changed, message):
    with pytest.raises(EntryError, match=message) as error:
        read(*rows, **changed)
    assert "\n" not in str(error.value)


def test_a_direct_entry_that_is_no_table_is_refused():
    with pytest.raises(EntryError, match="should be a table"):
        direct_at({"direct": "board"})
