"""The questions: everything the record holds is asked for, and each says what to do and why."""

import pytest

from core.entry_checks.check import check
from core.entry_checks.outcome import Refused
from core.profiles.profile import load_profile
from core.readings.survey import SURVEY, WHEELS
from wizard.flow.drafts import new_session, now
from wizard.locations import PROFILES
from wizard.phrases.answer_words import answer_in_words, assumed_words, hint, typed_length_words
from wizard.questions.steps import STEPS

QUESTIONS = [question for step in STEPS for question in step.questions]
PROFILE = load_profile("coil-crossover", [PROFILES])


def by_path(path):
    return next(question for question in QUESTIONS if question.path == path)


def test_no_path_is_asked_for_twice():
    paths = [question.path for question in QUESTIONS]
    assert len(paths) == len(set(paths))


@pytest.mark.parametrize("name", [*SURVEY, *WHEELS])
def test_every_reading_of_the_survey_is_asked_for(name):
    assert by_path(f"readings.{name}").repeats


@pytest.mark.parametrize(
    "path",
    [
        *("session.technician", "session.profile", "session.units", "vehicle.tag"),
        *("vehicle.description", "vehicle.odometer", "vehicle.wheelbase", "complaint.reported"),
        *("complaint.note", "walk_round.steering_wheel_diameter", "walk_round.rim_play"),
        *("walk_round.linkage_play", "stance.level_floor", "stance.tyres_set"),
        *("stance.usual_load", "stance.settled", "stance.wheels_on_ground"),
        *("stance.straight_ahead", "stance.ride_height.left", "stance.ride_height.right"),
        *("layout.steering", "layout.arm", "layout.pitman", "instruments.tape"),
        *("instruments.sighting", "instruments.floor", "instruments.angle_finder"),
        *("instruments.seating", "readings.track_bar.bent", "readings.drag_link.bent"),
        *("readings.tie_rod.joint_from_far_ball", "readings.tie_rod.near_arm"),
        *("readings.steering.arm", "readings.steering.pitman_arm", "readings.steering.ratio"),
        *("readings.travel.bump", "readings.travel.droop"),
    ],
)
def test_every_entry_of_the_record_is_asked_for(path):
    assert by_path(path).ask


@pytest.mark.parametrize("question", QUESTIONS, ids=lambda question: question.path)
def test_each_says_what_to_do_and_why(question):
    assert question.guidance
    assert question.reason or not question.is_answered_by_a_value
    assert len(question.name) <= 30
    assert len(question.ask) <= 90


@pytest.mark.parametrize(
    "question",
    [question for question in QUESTIONS if question.kind in ("one of", "yes or no")],
    ids=lambda question: question.path,
)
def test_the_core_knows_every_choice(question):
    for choice in question.choices:
        outcome = check(question.path, choice.value, new_session(now()), PROFILE)
        hanging = question.path == "stance.wheels_on_ground" and choice.value is False
        assert isinstance(outcome, Refused) == hanging


@pytest.mark.parametrize(
    "question",
    [question for question in QUESTIONS if question.kind in ("length", "angle", "number")],
    ids=lambda question: question.path,
)
def test_what_is_no_quantity_is_refused_with_what_would_be_one(question):
    outcome = check(question.path, "about so", new_session(now()), PROFILE)
    assert isinstance(outcome, Refused)
    assert "\n" not in outcome.message


@pytest.mark.parametrize(
    "question", [q for q in QUESTIONS if q.assumed], ids=lambda question: question.path
)
def test_a_skip_says_what_is_assumed(question):
    assert f"skipped: {assumed_words(question, PROFILE, 'in')} is assumed" in hint(
        question, PROFILE, "in"
    )


def test_lengths_are_shown_in_both_units_where_they_were_typed_in_the_other():
    assert typed_length_words("17 5/8 in", "in") == "17 5/8 in"
    assert typed_length_words("17 5/8 in", "mm") == "448 mm (17 5/8 in)"
    assert typed_length_words("448 mm", "in") == "17 5/8 in (448 mm)"
    assert typed_length_words("nonsense", "mm") == "nonsense"


def test_answers_in_words():
    assert answer_in_words(by_path("complaint.reported"), [], "in") == "nothing"
    assert answer_in_words(by_path("complaint.reported"), ["wanders"], "in") == "it wanders"
    assert answer_in_words(by_path("readings.track_bar.bent"), False, "in") == "no"
    height = by_path("readings.track_bar.frame.height")
    assert answer_in_words(height, ["24 1/2 in", "24 9/16 in"], "in") == "24 1/2 in; 24 9/16 in"


def test_the_hint_of_a_re_measure_begins_with_the_value_before():
    earlier = {"readings": {"track_bar": {"frame": {"height": ["24 1/2 in"]}}}}
    height = by_path("readings.track_bar.frame.height")
    assert hint(height, PROFILE, "mm", earlier).startswith("before: 622 mm (24 1/2 in)")


def test_what_was_altered_is_asked_beside_what_was_planned():
    move = {"correction": "bracket", "pivot": "track_bar.axle", "rise": "1 in"}
    earlier = {"session": {"altered": ["lengths"]}, "plan": {"moves": [move]}}
    altered = by_path("session.altered")
    assert hint(altered, PROFILE, "in", earlier) == "planned: track bar's axle end"
    assert hint(altered, PROFILE, "in", {"session": {"altered": ["lengths"]}}) == ""
    assert hint(altered, PROFILE, "in", {"plan": {"moves": 5}}) == ""
