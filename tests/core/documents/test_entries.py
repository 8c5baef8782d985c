"""Typed entries of a document; a faulty one is refused with its table and key."""

import pytest

from core.documents import entries
from core.documents.entries import EntryError
from core.text.quantity import parse_length

DOCUMENT = {
    "session": {"units": "mm", "technician": "T. Invented", "count": 3},
    "stance": {"settled": False},
    "readings": {"height": ["1 in", "2 in"], "arm": "150 mm", "bare": 7},
}


def test_units_are_inches_where_nothing_else_is_said():
    assert entries.units_of(DOCUMENT) == "mm"
    assert entries.units_of({}) == "in"


def test_entries_are_returned_as_their_type():
    assert entries.text_at(DOCUMENT, "session.technician") == "T. Invented"
    assert entries.text_at(DOCUMENT, "session.note", "none") == "none"
    assert entries.choice_at(DOCUMENT, "session.units", ("in", "mm")) == "mm"
    assert entries.flag_at(DOCUMENT, "stance.settled") is False
    assert entries.flag_at(DOCUMENT, "stance.level_floor") is None
    assert entries.quantity_at(DOCUMENT, "readings.arm", parse_length, "6 in") == 150.0
    assert entries.quantity_at(DOCUMENT, "readings.ratio", parse_length, "6 in") is None
    assert entries.repeats_at(DOCUMENT, "readings.height", parse_length, "1 in") == (25.4, 50.8)
    assert entries.repeats_at(DOCUMENT, "readings.offset", parse_length, "1 in") == ()


@pytest.mark.parametrize(
    ("refused", "message"),
    [
        (lambda: entries.text_at(DOCUMENT, "session.count"), r"\[session\] count: is a int"),
        (lambda: entries.text_at(DOCUMENT, "session.id"), r"\[session\] id: is missing"),
        (
            lambda: entries.choice_at(DOCUMENT, "session.units", ("in", "cm")),
            r"\[session\] units: “mm” is not known; it is one of in, cm",
        ),
        (lambda: entries.flag_at(DOCUMENT, "session.count"), "it should be true or false"),
        (
            lambda: entries.repeats_at(DOCUMENT, "readings.arm", parse_length, "6 in"),
            r'is a text; it should be a list of readings such as \["6 in"\]',
        ),
        (
            lambda: entries.quantity_at(DOCUMENT, "readings.height", parse_length, "6 in"),
            'is a list; it should be a quantity such as "6 in"',
        ),
    ],
)
def test_a_faulty_entry_is_refused_with_its_table_and_key(refused, message):
    with pytest.raises(EntryError, match=message):
        refused()
