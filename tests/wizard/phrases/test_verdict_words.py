"""Words of verdicts and of their probability."""

from math import nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.fix.comparison import FixOutcome
from core.statistics.conformity import Conformity
from core.verdict.verdict import Overall
from wizard.phrases.verdict_words import (
    UNKNOWN_MARK,
    chance_words,
    give_or_take,
    limit_words,
    mark_and_word,
    mark_of,
    probability_words,
    tone_of,
)


class TestMarks:
    def test_every_verdict_has_a_mark_and_a_tone(self):
        marks_and_tones = {
            word: (mark_of(word), tone_of(word))
            for word in ("steers true", "bump steer", "too close to call", "held back")
        }
        assert marks_and_tones == {
            "steers true": ("✓", "good"),
            "bump steer": ("✗", "bad"),
            "too close to call": ("≈", "open"),
            "held back": ("■", "held"),
        }

    @pytest.mark.parametrize("verdict", [*Overall, *Conformity, *FixOutcome])
    def test_each_verdict_of_core_has_a_mark_before_its_word(self, verdict):
        assert mark_and_word(verdict) == f"{mark_of(verdict)} {verdict}"
        assert mark_of(verdict) != UNKNOWN_MARK

    def test_an_unknown_verdict_gets_a_dash(self):
        assert mark_and_word("[b]new[/b]") == "— [b]new[/b]"
        assert tone_of("[b]new[/b]") == "unknown"


class TestChance:
    @pytest.mark.parametrize(
        ("probability", "words"),
        [
            (0.0, "less than 1 in 100"),
            (0.03, "about 3 in 100"),
            (0.05, "about 5 in 100"),
            (0.06, "about 1 in 10"),
            (0.31, "about 3 in 10"),
            (0.5, "an even chance"),
            (0.949, "about 9 in 10"),
            (0.95, "about 95 in 100"),
            (0.979, "about 97 in 100"),
            (1.0, "more than 99 in 100"),
            (None, "not known"),
            (nan, "not known"),
        ],
    )
    def test_a_probability_as_a_count(self, probability, words):
        assert chance_words(probability) == words

    @given(st.floats(0, 1))
    def test_hundreds_mean_that_the_rule_is_decided(self, probability):
        # readings.md: within from 0.95 up, out from 0.05 down, too close to call between them.
        decided = probability >= 0.95 or probability <= 0.05
        assert ("100" in chance_words(probability)) == decided

    def test_a_probability_as_a_sentence(self):
        assert probability_words(0.88) == "about 9 in 10 that it is within"
        assert probability_words(None) == "how sure is not known"


class TestNumbers:
    @pytest.mark.parametrize(
        ("arguments", "words"),
        [
            ((1.9, 0.5), "1.9 deg, give or take 0.5"),
            ((-0.04, 0.5), "0.0 deg, give or take 0.5"),
            ((1.9, 0.02), "1.90 deg, give or take 0.02"),
            ((0.0, 0.0), "0.0 deg"),
            ((1.9, None), "1.9 deg"),
            ((1.9, nan), "1.9 deg"),
            ((nan, 0.5), "not known"),
            ((0.97, 0.02, "", 2), "0.97, give or take 0.02"),
        ],
    )
    def test_a_value_with_its_doubt(self, arguments, words):
        assert give_or_take(*arguments) == words

    def test_limits(self):
        assert limit_words(1.5) == "at most 1.5 deg"
        assert limit_words(0.85, "", at_least=True) == "at least 0.85"
