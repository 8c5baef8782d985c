"""A photograph is asked what it can show: a bad joint, never a tight one, and no play."""

import pytest

from core.readings.walk_round import failures
from wizard.flow.answers import asked_on_long_way
from wizard.questions.steps import QUESTIONS

OF_PHOTOGRAPHS = {"session": {"means": "photographs"}}
JOINTS = [path for path in QUESTIONS if path.startswith("walk_round.joints.")]
STATEMENTS = [path for path in QUESTIONS if path.startswith("stance.") and "height" not in path]
NEEDS_HANDS = (
    "walk_round.steering_wheel_diameter",
    "walk_round.rim_play",
    "walk_round.linkage_play",
    "walk_round.bolts_torqued",
)


def asked(document):
    return {question.path: question for question in asked_on_long_way(document, None)}


@pytest.mark.parametrize("path", NEEDS_HANDS)
def test_nothing_that_needs_hands_is_asked_of_a_photograph(path):
    assert path in asked({})
    assert path not in asked(OF_PHOTOGRAPHS)


@pytest.mark.parametrize("path", JOINTS)
def test_a_joint_in_a_photograph_is_bad_or_not_seen(path):
    values = {choice.value for choice in asked(OF_PHOTOGRAPHS)[path].choices}
    assert values == {"loose", "not checked"}
    assert "tight" in {choice.value for choice in asked({})[path].choices}
    bad = {"walk_round": {"joints": {path.rpartition(".")[2]: "loose"}}}
    assert failures(bad, is_heavy=False) == (path,)


@pytest.mark.parametrize("path", [*JOINTS, *STATEMENTS, "walk_round.tyres_alike"])
def test_what_a_photograph_does_not_show_is_passed_on_as_not_seen(path):
    question = asked(OF_PHOTOGRAPHS)[path]
    assert question.optional
    assert question.skip == "not seen"
    assert any("seen" in choice.words for choice in question.choices)
    assert asked({})[path].skip == "skip"


@pytest.mark.parametrize("path", STATEMENTS)
def test_the_tape_needs_every_statement_of_the_stance(path):
    assert not asked({})[path].optional
