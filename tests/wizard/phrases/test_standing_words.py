"""Words for the verdict as it stands and for the worth of a reading."""

from dataclasses import replace
from math import radians

import numpy as np
import pytest

from core.statistics.conformity import Ruling
from core.verdict.standing import Standing, Worth
from core.verdict.verdict import Overall
from wizard.phrases.standing import (
    enough_ask,
    enough_guidance,
    skip_words,
    strip_words,
    worth_words,
)


def ruling(p_within):
    return Ruling(0.01, 0.0087, radians(0.3), p_within)


def worth(name, *shares, checks=""):
    return Worth(name, np.array([*shares, 0.0]), checks)


OPEN = Standing(
    geometry=Overall.TOO_CLOSE,
    rulings=(ruling(0.99), ruling(0.4), ruling(1.0)),
    closes=True,
    unchecked=(),
    worths=(worth("steering.arm", 0.0, 0.75), worth("kingpin.castor", 0.0, 0.001)),
    can_change=True,
)
DECIDED = replace(
    OPEN,
    geometry=Overall.BUMP_STEER,
    rulings=(ruling(0.001), ruling(0.03), ruling(1.0)),
    can_change=False,
)


def test_the_strip_counts_the_readings_that_could_change_it():
    assert strip_words(OPEN) == (
        "so far ≈ too close to call, chance that it steers true 0.40; "
        "1 reading left could change it"
    )
    assert "the rest refines only" in strip_words(DECIDED)


@pytest.mark.parametrize("geometry", [Overall.BUMP_STEER, Overall.STEERS_TRUE, Overall.TOO_CLOSE])
@pytest.mark.parametrize("held_back_by", [(), ("walk_round.rim_play",)])
def test_readings_that_do_not_close_get_neither_verdict_nor_chance(geometry, held_back_by):
    wrong = replace(DECIDED, geometry=geometry, closes=False, held_back_by=held_back_by)
    for words in (strip_words(wrong), enough_ask(wrong)):
        assert "do not close" in words
        assert geometry.value not in words
        assert "chance" not in words


@pytest.mark.parametrize(
    ("geometry", "p_within", "words"),
    [
        (Overall.BUMP_STEER, 0.03, "chance 0.97"),
        (Overall.BUMP_STEER, 0.0, "chance over 0.99"),
        (Overall.STEERS_TRUE, 0.96, "chance 0.96"),
        (Overall.STEERS_TRUE, 1.0, "chance over 0.99"),
    ],
)
def test_no_chance_is_called_certain(geometry, p_within, words):
    rulings = (ruling(p_within), ruling(p_within), ruling(p_within))
    assert f", {words};" in strip_words(replace(OPEN, geometry=geometry, rulings=rulings))


@pytest.mark.parametrize(
    ("share", "words"),
    [
        (0.75, "would halve the doubt of the peak steer"),
        (0.55, "would take a third of the doubt of the peak steer"),
        (0.36, "would take 20 % of the doubt of the peak steer"),
        (0.93, "would take 75 % of the doubt of the peak steer"),
    ],
)
def test_worth_is_told_in_the_doubt_of_an_open_rule(share, words):
    assert worth_words(OPEN, worth("steering.arm", 0.99, share)) == words


def test_a_reading_that_is_not_needed_refines_only():
    assert worth_words(DECIDED, worth("steering.arm", 0.0, 0.75)).startswith("refines only: ")


def test_the_first_check_of_a_link_is_named():
    check = worth("track_bar.slope", 0.0, 0.0, checks="track_bar")
    assert worth_words(OPEN, check) == "would be the first check of the track bar"


def test_a_skip_is_told_in_the_doubt_of_the_peak_steer():
    said = skip_words(OPEN, worth("track_bar.axle.station", 0.9, 0.75))
    assert said == "skipped, the peak steer has a doubt of 0.60 deg, else of 0.30 deg"


def test_every_end_says_what_to_do_next():
    assert "It is decided" in enough_ask(DECIDED)
    assert "Enter shows the verdict" in enough_guidance(DECIDED)
    stuck = replace(OPEN, worths=(), can_change=False, unchecked=("track_bar",))
    assert "would hardly settle it" in enough_ask(stuck)
    assert "No reading checks the track bar" in enough_guidance(stuck)
    assert "what to take again" in enough_guidance(stuck)
    assert "F3" in enough_guidance(None)


def test_a_failed_walk_round_is_not_hidden_by_the_geometry():
    held = replace(DECIDED, held_back_by=("walk_round.tyres_alike",))
    assert strip_words(held).startswith("so far ■ held back; by its geometry ✗ bump steer")
    assert "held back" in enough_ask(held)
