"""Tables of a TOML file: unknown keys, missing quantities and ranges are refused by name."""

import pytest

from core.documents import tables
from core.documents.entries import EntryError
from core.text.quantity import QuantityError


def test_a_quantity_of_a_file_needs_its_unit():
    assert tables.length_with_unit("2 in") == 50.8
    with pytest.raises(QuantityError, match="needs its unit: in or mm"):
        tables.length_with_unit("2")
    with pytest.raises(QuantityError, match="needs its unit: deg"):
        tables.angle_with_unit("2")


def test_an_unknown_key_is_refused_with_the_known_ones():
    known = ("limits.flat", "limits.steer")
    tables.refuse_unknown({"limits": {"flat": "10 deg"}}, known)
    with pytest.raises(EntryError, match=r"\[limits\] flta: is not known; .* flat, steer"):
        tables.refuse_unknown({"limits": {"flta": "10 deg"}}, known)
    with pytest.raises(EntryError, match="limits: should be a table"):
        tables.refuse_unknown({"limits": "10 deg"}, known)


@pytest.mark.parametrize(
    ("text", "message"),
    [(None, "is missing"), ("-1 mm", "cannot be negative"), ("0 mm", "cannot be 0")],
)
def test_a_quantity_above_zero_is_required(text, message):
    document = {} if text is None else {"limits": {"flat": text}}
    with pytest.raises(EntryError, match=rf"\[limits\] flat: {message}"):
        tables.quantity_above_zero(document, "limits.flat", tables.length_with_unit, "1 mm")


def test_a_range_has_its_smallest_end_first():
    example = ("18 in", "30 in")
    ends = {"ranges": {"arm": ["1 in", "2 in"], "back": ["2 in", "1 in"], "one": ["1 in"]}}
    read = (tables.length_with_unit, example)
    assert tables.range_at(ends, "ranges.arm", *read) == (25.4, 50.8)
    with pytest.raises(EntryError, match="upside down"):
        tables.range_at(ends, "ranges.back", *read)
    with pytest.raises(EntryError, match=r'two quantities such as \["18 in", "30 in"\]'):
        tables.range_at(ends, "ranges.one", *read)


def test_tables_of_a_list_are_counted_from_1():
    (first, second) = tables.tables_at({"events": [{"name": "dip"}, {}]}, "events")
    assert first == ("events 1", {"name": "dip"})
    assert second[0] == "events 2"
    with pytest.raises(EntryError, match=r"\[\[events\]\]"):
        tables.tables_at({"events": "dip"}, "events")
