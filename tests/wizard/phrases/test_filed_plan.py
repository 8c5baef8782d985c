"""What a record says was planned."""

from core.documents.document import with_value
from wizard.phrases.fact import LOOK
from wizard.phrases.filed_plan import planned_facts

PLAN = {
    "moves": [
        {"correction": "a bracket", "pivot": "track_bar.axle", "rise": "1 3/4 in"},
        {"correction": "", "pivot": "ride_height", "rise": "-1 in"},
    ],
    "arms": {"steering": {"arm": "7 in"}},
    "expected": {
        "parallel": "-0.8 deg",
        "peak_steer": "0.34 deg",
        "peak_toe_change": "0 deg",
        "length_ratio": 0.86,
        "p_true": 0.93,
    },
}


def said(document):
    """Facts as lines."""
    return [(fact.name, fact.text) for fact in planned_facts(document, "in")]


def test_moves_arms_and_what_is_expected():
    assert said({"plan": PLAN}) == [
        ("up 1 3/4 in", "a bracket: the track bar's axle end"),
        ("down 1 in", "the ride height"),
        ("7 in", "steering arm of this length"),
        (
            "expected",
            "parallel 0.8 deg, peak steer 0.34 deg, near in length 0.86; chance of steering true: "
            "about 9 in 10",
        ),
    ]


def test_without_a_plan_nothing_is_said():
    assert said({}) == []


def test_a_chance_that_is_none_is_left_out():
    document = with_value({"plan": PLAN}, "plan.expected.p_true", "often")
    assert said(document)[-1][1].endswith("near in length 0.86")


def test_a_plan_that_cannot_be_read_is_said_in_a_line():
    (fact,) = planned_facts({"plan": {"moves": "one"}}, "in")
    assert fact.mark == LOOK
    assert fact.text.startswith("the plan cannot be read: [plan] moves")
