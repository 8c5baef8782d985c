"""The direct check in words."""

from dataclasses import replace

import numpy as np
import pytest

from core.text.quantity import INCH
from core.verdict.direct_shape import LookAt
from core.verdict.verdict import evaluate
from tests.direct_rows import AT, board_check, steer_of_left
from tests.geometries import document_of, parallel_pair, session_of, true_readings
from wizard.phrases.bench import NOT_ON_CONTRADICTED_PIVOTS, no_bench_words
from wizard.phrases.direct import LOOK_AT, direct_facts

LINKAGE = parallel_pair()


def judged(steer, **options):
    """Verdict with a direct check that reads a steer."""
    session = session_of(document_of(LINKAGE, true_readings(LINKAGE)))
    return evaluate(replace(session, direct=board_check(steer, **options)), 0)


def said(steer, **options):
    """What the report says of a direct check."""
    facts = direct_facts(judged(steer, **options), "in")
    return "\n".join(f"{fact.mark} {fact.name}: {fact.text}" for fact in facts)


def test_a_session_without_a_direct_check_says_nothing():
    session = session_of(document_of(LINKAGE, true_readings(LINKAGE)))
    assert not list(direct_facts(evaluate(session, 0), "in"))


def test_agreement_is_said_with_and_without_the_measured_steer():
    words = said(steer_of_left(LINKAGE))
    assert "✓ direct check: The vehicle does what its pivots say." in words
    assert "by the pivots and the direct check" in words
    assert "look at" not in words


def test_disagreement_says_where_to_look():
    words = said(lambda heave: np.radians(0.4) * heave / INCH)
    assert "✗ direct check: The vehicle does not do what its pivots say." in words
    assert "by the direct check alone" in words
    assert "soft bush" in words
    assert "3 in of" in words


def test_nothing_is_tried_on_pivots_that_the_measured_steer_contradicts():
    contradicted = judged(lambda heave: np.radians(0.4) * heave / INCH)
    assert no_bench_words(contradicted) == NOT_ON_CONTRADICTED_PIVOTS
    assert no_bench_words(judged(steer_of_left(LINKAGE))) == ""


def test_a_last_row_off_ride_height_is_a_caution():
    words = said(steer_of_left(LINKAGE), heave=np.append(AT[:-1], INCH / 2))
    assert "! ride height: The last row is 1/2 in off the first." in words


def test_a_loop_is_said_at_the_steering_wheel():
    heave = np.array([0, 1, 2, 3, 2, 1, -1, -2, -3, -2, -1, 0]) * INCH
    going = ("", *("up",) * 3, *("down",) * 5, *("up",) * 2, "")
    step = {"up": 0.25, "down": -0.25, "": 0.0}
    steer = steer_of_left(LINKAGE)(heave) + np.radians([step[way] for way in going])
    words = said(steer, heave=heave, going=going)
    assert "! play: 0.50 deg" in words
    assert "at the steering wheel" in words


@pytest.mark.parametrize("shape", LookAt)
def test_every_shape_has_its_words(shape):
    assert LOOK_AT[shape]
