import pytest

from core.documents.entries import EntryError
from core.readings.stance import STATEMENTS, failures


def test_every_statement_answered_with_no_is_a_failure():
    answers = dict.fromkeys(STATEMENTS, False)
    assert failures({"stance": answers}) == tuple(f"stance.{name}" for name in STATEMENTS)


def test_a_missing_answer_and_a_yes_are_no_failures():
    assert failures({}) == ()
    assert failures({"stance": {"level_floor": True, "ride_height": {"left": "21 in"}}}) == ()


def test_an_answer_other_than_true_or_false_is_refused_with_its_path():
    with pytest.raises(EntryError, match=r"^\[stance\] settled: "):
        failures({"stance": {"settled": "yes"}})
