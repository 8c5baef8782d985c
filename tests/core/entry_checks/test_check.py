import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.entry_checks.check import BENT, NOTES, check
from core.entry_checks.choices import ANY_OF, ONE_OF
from core.entry_checks.instruments import QUANTITIES as INSTRUMENTS
from core.entry_checks.outcome import Accepted, Queried, Refused
from core.entry_checks.single_reading import QUANTITIES
from core.entry_checks.walk_round_and_stance import LENGTHS, STATEMENTS
from core.text.quantity import LengthUnit

from .conftest import AS_BUILT, built

HEIGHT = "readings.track_bar.frame.height"

EVERY_PATH = [
    *(*QUANTITIES, *INSTRUMENTS, *LENGTHS, *STATEMENTS, *BENT, *ONE_OF, *ANY_OF, *NOTES),
    *("vehicle.tag", "vehicle.odometer", "session.technician", "session.profile"),
    *("walk_round.joints.drag_link_axle", "something.else"),
]

LIKE_A_READING = st.text(st.sampled_from("0123456789 ./-+;'\"inmcdegftpx°"), max_size=30)
UNITS: tuple[LengthUnit, ...] = ("in", "mm")


@pytest.mark.parametrize("path", AS_BUILT)
def test_every_answer_of_a_usual_truck_is_accepted(path, document, profile):
    assert check(path, AS_BUILT[path], document, profile) == Accepted(AS_BUILT[path])


class TestAnyText:
    @given(
        path=st.sampled_from(EVERY_PATH),
        answer=st.one_of(st.text(max_size=60), LIKE_A_READING, st.lists(st.text(), max_size=3)),
        units=st.sampled_from(UNITS),
    )
    def test_any_text_has_an_outcome_with_one_line(self, path, answer, units, profile):
        outcome = check(path, answer, built({"session.units": units}), profile)
        if not isinstance(outcome, Accepted):
            assert outcome.message
            assert outcome.message.isprintable()

    @given(answer=LIKE_A_READING)
    def test_a_kept_value_is_accepted_again(self, answer, profile):
        outcome = check(HEIGHT, answer, {}, profile)
        if isinstance(outcome, Accepted):
            assert check(HEIGHT, outcome.value, {}, profile) == outcome
            assert check(HEIGHT, outcome.value, {"session": {"units": "mm"}}, profile) == outcome

    @given(path=st.sampled_from(list(QUANTITIES)), value=st.floats(-100, 100))
    def test_a_query_has_sentences_of_at_most_25_words(self, path, value, inverted_y):
        document = built({"layout.steering": "inverted-y", "readings.track_bar.length": ["33 in"]})
        outcome = check(path, f"{value:.3f}", document, inverted_y)
        if isinstance(outcome, Queried):
            for sentence in re.split(r"(?<=[.?]) ", outcome.message):
                assert len(sentence.split()) <= 25

    def test_answers_spoilt_by_hand_are_ignored(self, profile):
        document = {
            "readings": {"track_bar": {"frame": {"height": 5, "offset": ["x"]}, "axle": 7}},
            "instruments": {"tape": []},
            "walk_round": {"joints": 3, "rim_play": {}},
        }
        outcome = check("readings.track_bar.length", "33 1/4", document, profile)
        assert outcome == Accepted(["33 1/4 in"])
        assert check("walk_round.linkage_play", "1/8", document) == Accepted("1/8 in")


class TestProfileName:
    def test_the_name_of_the_loaded_profile_is_accepted(self, profile):
        assert check("session.profile", profile.name, {}, profile) == Accepted(profile.name)

    @pytest.mark.parametrize("name", ["other", "../other"])
    @pytest.mark.parametrize("is_loaded", [True, False])
    def test_another_name_is_refused(self, name, is_loaded, profile):
        outcome = check("session.profile", name, {}, profile if is_loaded else None)
        assert isinstance(outcome, Refused)
        assert name in outcome.message


class TestChoices:
    @pytest.mark.parametrize("path", ONE_OF)
    def test_one_of_the_words_is_accepted(self, path):
        for word in ONE_OF[path]:
            assert check(path, word, {}) == Accepted(word)
        assert isinstance(check(path, "other", {}), Refused)

    @pytest.mark.parametrize("path", ANY_OF)
    def test_any_of_the_words_are_accepted(self, path):
        assert check(path, ANY_OF[path], {}) == Accepted(list(ANY_OF[path]))
        assert check(path, [], {}) == Accepted([])
        assert isinstance(check(path, ["other"], {}), Refused)
