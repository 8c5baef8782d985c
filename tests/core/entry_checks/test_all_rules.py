import pytest

from core.entry_checks import all_rules
from core.entry_checks.known import KnownAnswers

from .conftest import AS_BUILT, built

FAULTY = built(
    {
        "readings.track_bar.length": ["35 in"],
        "readings.track_bar.slope": ["11 deg"],
        "readings.steering.arm": ["1 in"],
        "readings.drag_link.frame.height": ["15 in"],
    }
)
"""A length and a slope that do not close, an arm too short, a frame end too low."""


def test_usual_answers_meet_no_objection(document, profile):
    known = KnownAnswers(document, profile)
    names = [path.removeprefix("readings.") for path in AS_BUILT]
    assert [objection for name in names for objection in all_rules.objections(known, name)] == []


@pytest.mark.parametrize(
    ("name", "subjects"),
    [
        ("track_bar.length", ["the length of the track bar is 35 in"]),
        ("track_bar.slope", ["the angle finder reads 11.0 deg"]),
        ("track_bar.frame.height", ["the length of the track bar", "the angle finder reads"]),
        ("steering.arm", ["steering arm is 1 in"]),
        ("drag_link.axle.height", ["is lower than its axle end"]),
        ("wheels.left_offset", []),
        ("session.note", []),
    ],
)
def test_only_rules_with_the_answer_among_their_inputs_object(name, subjects, profile):
    objections = list(all_rules.objections(KnownAnswers(FAULTY, profile), name))
    assert len(objections) == len(subjects)
    for objection, subject in zip(objections, subjects, strict=True):
        assert subject in objection.message
