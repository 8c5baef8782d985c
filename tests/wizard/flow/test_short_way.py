"""The order of the short way, and the ways out of it."""

import pytest

from core.documents.document import value_at
from core.readings.survey import SURVEY
from tests.wizard.tui.driving import TRUE_TRUCK, first_choice
from tests.wizard.tui.technician import HABITS, readings_of
from wizard.flow import drafts
from wizard.flow.answering import answer_question
from wizard.flow.answers import applicable_answers
from wizard.flow.flow import Flow, step_reached
from wizard.flow.usual_answers import keep_usual_answers, usual_answers, usual_answers_file
from wizard.flow.ways import enough, on_the_other_way, read_on
from wizard.locations import PROFILES
from wizard.questions.short_way import ENOUGH, HELPS_MOST, SHORT_STEPS
from wizard.questions.steps import QUESTIONS

TEXTS = {**TRUE_TRUCK, **HABITS, **readings_of(3.0)}


def short_flow(usual=None):
    return Flow(drafts.on_short_way(drafts.new_session(drafts.now()), usual or {}))


def answered_until(flow, path, texts=TEXTS):
    """Answer questions in the order of the flow until one is reached."""
    for _ in range(120):
        question = flow.question
        if question.path == path:
            return flow
        if question.path in texts:
            given = texts[question.path]
        elif question.kind == "profile":
            given = "coil-crossover"
        elif question.choices and question.is_answered_by_a_value:
            usual = getattr(flow.profile, question.usual) if question.usual else None
            given = [] if question.kind == "any of" else usual or first_choice(question)
        else:
            flow = flow.skipped()
            continue
        answered = answer_question(flow, given, [PROFILES])
        assert isinstance(answered, Flow), f"{question.path}: {answered}"
        flow = answered
    raise AssertionError(f"{path} was never asked")


@pytest.fixture(scope="module")
def at_help():
    """The first question after the pivots."""
    return answered_until(short_flow(), "readings.drag_link.slope")


def test_every_question_of_the_long_way_has_a_place_on_the_short_way():
    places = {question.path for step in SHORT_STEPS for question in step.questions}
    assert set(QUESTIONS) <= places


def test_pivots_come_in_walking_order_and_before_everything_that_only_helps(at_help):
    paths = [question.path for question in at_help.asked]
    heights = [path for path in paths if path.endswith((".frame.height", ".axle.height"))]
    assert [path.split(".")[1:3] for path in heights if "guide" not in path] == [
        ["track_bar", "frame"],
        ["drag_link", "frame"],
        ["track_bar", "axle"],
        ["drag_link", "axle"],
    ]
    assert paths.index("layout.steering_box") < paths.index("readings.steering.arm")


def test_the_verdict_stands_from_the_pivots_on(at_help):
    before = answered_until(short_flow(), "readings.drag_link.axle.offset")
    assert before.standing is None
    assert at_help.standing is not None
    assert at_help.standing.left


def test_the_next_question_is_the_one_that_helps_most(at_help):
    assert at_help.question.path == f"readings.{at_help.standing.left[0].reading}"


def test_it_is_enough_once_both_links_are_checked_on_a_clear_vehicle(at_help):
    flow = answered_until(at_help, ENOUGH.path)
    assert flow.standing.is_decided
    taken = [q.path for q in flow.asked if flow.step_of(q) is HELPS_MOST and flow.is_settled(q)]
    assert sorted(taken) == ["readings.drag_link.slope", "readings.track_bar.slope"]
    assert read_on(flow, "verdict").question.path == "verdict"


def test_refining_offers_the_rest_one_by_one(at_help):
    flow = read_on(answered_until(at_help, ENOUGH.path), "refine")
    assert flow.step is HELPS_MOST
    more = flow.skipped()
    assert more.step is HELPS_MOST
    assert more.question.path != flow.question.path
    assert enough(more).question.path == "verdict"


def test_enough_leads_to_the_verdict_and_a_retake_back_to_it(at_help):
    flow = enough(at_help)
    assert flow.question.path == "verdict"
    again = flow.going_to("readings.track_bar.frame.height")
    answered = answer_question(again, TEXTS["readings.track_bar.frame.height"], [PROFILES])
    assert answered.question.path == "verdict"
    assert flow.undone().question.path == at_help.question.path


def test_passing_on_offers_the_next_best(at_help):
    flow = at_help.skipped()
    assert flow.step is HELPS_MOST
    assert flow.question.path != at_help.question.path
    assert flow.going_by(-1).question.path == at_help.question.path


def test_both_ways_have_the_same_answers(at_help):
    other = on_the_other_way(at_help)
    assert not other.is_short
    assert applicable_answers(other.document, other.profile) == applicable_answers(
        at_help.document, at_help.profile
    )
    assert on_the_other_way(other).question.path == at_help.question.path


def test_only_the_draft_knows_the_way(at_help):
    assert "draft" not in applicable_answers(at_help.document, at_help.profile)
    assert step_reached(at_help.document) == HELPS_MOST.name


def test_a_link_that_was_seen_to_be_bent_has_no_slope_to_check_it():
    texts = {**TEXTS}
    flow = answered_until(short_flow(), "readings.drag_link.bent", texts)
    bent = answer_question(flow, True, [PROFILES])
    flow = answered_until(bent, "readings.track_bar.slope", texts)
    paths = [question.path for question in flow.asked]
    assert "readings.drag_link.slope" not in paths


def test_a_lengthwise_drag_link_has_its_stations_asked_with_the_pivots():
    texts = {**TEXTS, "session.profile": "leaf-fore-aft", "layout.steering": "fore-aft"}
    flow = answered_until(short_flow(), "layout.steering", texts)
    while flow.step.name in ("Layout",):
        question = flow.question
        given = texts.get(question.path)
        if given is None:
            given = getattr(flow.profile, question.usual) if question.usual else question.choices[0]
        flow = answer_question(flow, given, [PROFILES])
        assert isinstance(flow, Flow)
    stations = [q for q in flow.asked if q.path == "readings.drag_link.frame.station"]
    assert [flow.step_of(question).name for question in stations] == ["Pivots"]
    assert not stations[0].optional


class TestUsualAnswers:
    def test_they_are_kept_and_offered_with_the_next_session(self, tmp_path):
        record = {
            "session": {"technician": "A. B.", "units": "mm"},
            "instruments": {"tape": "1 mm"},
            "vehicle": {"tag": "FG-1"},
        }
        keep_usual_answers(tmp_path, record)
        usual = usual_answers(tmp_path)
        assert usual == {
            "session": {"technician": "A. B.", "units": "mm"},
            "instruments": {"tape": "1 mm"},
        }
        flow = answered_until(short_flow(usual), "tools")
        flow = read_on(flow, "keep")
        assert value_at(flow.document, "instruments.tape") == "1 mm"
        assert value_at(flow.document, "session.units") == "mm"

    def test_changed_instruments_are_asked_one_by_one(self):
        flow = read_on(answered_until(short_flow(), "tools"), "change")
        assert flow.question.path == "session.units"
        paths = [question.path for question in flow.asked]
        assert "instruments.tape" in paths

    @pytest.mark.parametrize("text", ["not toml [", "session = 3", "[session]\ntechnician = 5"])
    def test_a_faulty_file_means_no_usual_answers(self, tmp_path, text):
        path = usual_answers_file(tmp_path)
        path.parent.mkdir(parents=True)
        path.write_text(text)
        assert usual_answers(tmp_path) == {}

    def test_a_folder_that_cannot_be_written_is_no_fault(self, tmp_path):
        (tmp_path / "shop").write_text("in the way")
        keep_usual_answers(tmp_path, {"session": {"technician": "A. B."}})
        assert usual_answers(tmp_path) == {}


def test_the_survey_names_of_worths_have_a_question():
    assert {f"readings.{name}" for name in SURVEY} <= set(QUESTIONS)
