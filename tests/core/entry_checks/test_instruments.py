"""Resolutions of instruments. Usual figures are common practice, no source."""

import pytest

from core.entry_checks.check import check
from core.entry_checks.outcome import Accepted, Queried, Refused


@pytest.mark.parametrize(
    ("path", "answer", "value"),
    [
        ("instruments.tape", "1/16", "1/16 in"),
        ("instruments.tape", "1/2", "1/2 in"),
        ("instruments.floor", "0.5 mm", "0.5 mm"),
        ("instruments.angle_finder", "0.5", "0.5 deg"),
    ],
)
def test_a_usual_resolution_is_accepted(path, answer, value):
    assert check(path, answer, {}) == Accepted(value)


@pytest.mark.parametrize(
    ("path", "answer", "words"),
    [
        ("instruments.sighting", "0", "No instrument is that exact"),
        ("instruments.seating", "0", "No instrument is that exact"),
        ("instruments.tape", "1", "1 in is coarse: up to 1/2 in is usual"),
        ("instruments.angle_finder", "5", "5.0 deg is coarse: up to 2.0 deg is usual"),
    ],
)
def test_a_resolution_too_good_or_too_coarse_is_queried(path, answer, words):
    outcome = check(path, answer, {})
    assert isinstance(outcome, Queried)
    assert words in outcome.message


@pytest.mark.parametrize(
    ("path", "answer", "words"),
    [
        ("instruments.tape", "0", "more than 0"),
        ("instruments.angle_finder", "0", "more than 0"),
        ("instruments.tape", "-1/16", "more than 0"),
        ("instruments.tape", "20", "too coarse"),
        ("instruments.seating", "45", "too coarse"),
        ("instruments.floor", "x", "length"),
        ("instruments.tape", "1/16; 1/8", "single one"),
    ],
)
def test_an_impossible_resolution_is_refused(path, answer, words):
    outcome = check(path, answer, {})
    assert isinstance(outcome, Refused)
    assert words in outcome.message


def test_messages_are_in_the_unit_of_the_session():
    outcome = check("instruments.tape", "20", {"session": {"units": "mm"}})
    assert "20 mm is coarse: up to 13 mm is usual" in outcome.message
