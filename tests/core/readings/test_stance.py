import pytest

from core.documents.entries import EntryError
from core.readings.stance import STATEMENTS, failures


def test_every_statement_answered_with_no_holds_back():
    answers = dict.fromkeys(STATEMENTS, False)
    assert failures({"stance": answers}) == tuple(f"stance.{name}" for name in STATEMENTS)


def test_what_was_not_answered_or_is_so_does_not():
    assert failures({}) == ()
    assert failures({"stance": {"level_floor": True, "ride_height": {"left": "21 in"}}}) == ()


def test_an_answer_that_is_neither_is_refused_with_its_place():
    with pytest.raises(EntryError, match=r"^\[stance\] settled: "):
        failures({"stance": {"settled": "yes"}})
