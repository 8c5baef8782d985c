"""The walk-round asks for the joints that the vehicle has."""

import pytest

from wizard.questions.steps import STEPS

JOINTS = [
    question
    for step in STEPS
    for question in step.questions
    if question.path.startswith("walk_round.joints.")
]


@pytest.mark.parametrize(("answer", "links"), [(True, 4), (None, 4), (False, 2)])
def test_joints_of_a_track_bar_are_asked_for_where_there_is_one(answer, links):
    layout = {} if answer is None else {"track_bar": answer}
    asked = [joint for joint in JOINTS if joint.is_asked({"layout": layout}, None)]
    assert len(asked) == links
    assert any("track_bar" in joint.path for joint in asked) is (answer is not False)
