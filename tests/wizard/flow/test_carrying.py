"""What a re-measure on the short way asks again, and what it carries over."""

import pytest

from core.documents.document import value_at, with_value
from core.documents.record import read_document
from core.entry_checks.outcome import Queried
from core.fix.comparison import compare
from core.profiles.profile import load_profile
from core.verdict.assess import assess
from tests.conftest import ROOT
from wizard.flow.answering import answer_question, keep_queried
from wizard.flow.carrying import CARRIED, control_points
from wizard.flow.filing import finished_record
from wizard.flow.flow import Flow
from wizard.flow.opening import open_re_measure
from wizard.flow.ways import read_on
from wizard.locations import PROFILES

RECORD = next((ROOT / "demo_sessions" / "FG-2").glob("*.toml"))


@pytest.fixture(scope="module")
def earlier():
    return read_document(RECORD)


def given(earlier, path, shift_in=0.0):
    """The answer of the session before, as it is typed; offsets are moved across by inches."""
    value = value_at(earlier, path)
    if shift_in and path.endswith("offset"):
        return f"{float(value_in(value[0])) + shift_in} in"
    return value if isinstance(value, str | bool) else "; ".join(map(str, value))


def value_in(text):
    """Inches of a text such as "17 5/8 in"."""
    total = 0.0
    for part in text.removesuffix(" in").split():
        top, _, bottom = part.partition("/")
        total += float(top) / float(bottom or 1)
    return total


def re_measured(altered, earlier, shift_in=0.0):
    """A re-measure until its verdict, and the paths that it asked in order."""
    opened = open_re_measure(RECORD, [PROFILES], {})
    flow, asked = opened.flow, []
    while flow.question.path != "verdict":
        question = flow.question
        asked.append(question.path)
        if question.kind == "read":
            flow = read_on(flow, question.choices[0].value)
            continue
        if question.path == "session.altered":
            answer = altered
        elif question.path == "session.technician":
            answer = "T. Invented"
        elif value_at(earlier, question.path) is None or question.kind in ("castor", "any of"):
            flow = flow.skipped()
            continue
        else:
            answer = given(earlier, question.path, shift_in)
        outcome = answer_question(flow, answer, [PROFILES], None, opened.earlier)
        if isinstance(outcome, Queried) and shift_in:
            assert "In the session before it was" in outcome.message
            outcome = keep_queried(flow, outcome.value, "another chalk line", opened.earlier)
        assert isinstance(outcome, Flow), f"{question.path}: {outcome}"
        flow = outcome
        assert len(asked) < 90
    return flow, asked


def pivots_in(asked):
    """Pivots whose height or offset was asked, in order."""
    ends = [path.removeprefix("readings.").rpartition(".") for path in asked]
    return list(
        dict.fromkeys(pivot for pivot, _, kind in ends if kind in ("height", "offset") and pivot)
    )


def test_the_moved_pivot_two_controls_and_a_check_of_the_moved_link_are_asked(earlier):
    _, asked = re_measured(["drag_link.frame"], earlier)
    assert pivots_in(asked) == ["drag_link.frame", "track_bar.axle", "drag_link.axle"]
    assert "readings.drag_link.slope" in asked
    assert "readings.track_bar.slope" not in asked
    assert {"stance.ride_height.left", "stance.ride_height.right"} <= set(asked)


def test_the_rest_is_carried_over_and_named(earlier):
    flow, _ = re_measured(["drag_link.frame"], earlier)
    carried = value_at(flow.document, CARRIED)
    assert "track_bar.frame.height" in carried
    for name in carried:
        path = f"readings.{name}"
        assert value_at(flow.document, path) == value_at(earlier, path)
    assert not [name for name in carried if name.startswith("drag_link.frame")]


def test_a_raised_vehicle_is_measured_anew(earlier):
    flow, asked = re_measured(["ride_height"], earlier)
    assert value_at(flow.document, CARRIED) is None
    assert len(pivots_in(asked)) >= 4


def test_offsets_that_are_carried_follow_the_datum_line(earlier):
    """The chalk line lies 2 in further to the left: every offset is 2 in more."""
    flow, _ = re_measured(["drag_link.frame"], earlier, shift_in=2.0)
    path = "readings.track_bar.frame.offset"
    before = value_in(value_at(earlier, path)[0])
    (now,) = value_at(flow.document, path)
    assert float(now.removesuffix(" in")) == pytest.approx(before + 2.0, abs=0.001)


def test_carried_pivots_are_no_control_points(earlier):
    flow, _ = re_measured(["drag_link.frame"], earlier)
    profile = load_profile("coil-crossover", [PROFILES])
    record = finished_record(flow.document, flow.profile, value_at(earlier, "session.closed"))
    pair = [assess(each, lambda _: profile, draws=0) for each in (earlier, record)]
    controls = compare(*pair, {"drag_link.frame"}).controls
    assert [control.pivots for control in controls] == [("track_bar.axle", "drag_link.axle")]
    record = with_value(record, CARRIED, [])
    pair = [assess(each, lambda _: profile, draws=0) for each in (earlier, record)]
    assert len(compare(*pair, {"track_bar.axle"}).controls) == 1


@pytest.mark.parametrize(
    ("altered", "controls"),
    [
        (["drag_link.frame"], ("track_bar.axle", "drag_link.axle")),
        (["track_bar.axle"], ("track_bar.frame", "drag_link.frame")),
        (["track_bar.frame", "drag_link.axle"], ("track_bar.axle", "drag_link.frame")),
    ],
)
def test_controls_are_two_ends_that_keep_their_places_to_each_other(altered, controls, earlier):
    assert control_points(earlier, altered) == controls
