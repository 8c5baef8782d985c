"""The order of the questions: next, back, skip, undo, and the answers that are kept."""

from datetime import UTC, datetime

import pytest

from core.documents.document import value_at, with_value
from core.profiles.profile import load_profile
from wizard.flow.answers import applicable_answers
from wizard.flow.drafts import new_session
from wizard.flow.flow import Flow, step_of
from wizard.locations import PROFILES
from wizard.questions.steps import STEPS

OPENED = datetime(2026, 11, 25, 14, 12, 5, tzinfo=UTC)


@pytest.fixture
def fresh():
    return Flow(new_session(OPENED))


@pytest.fixture
def chosen():
    """Flow with a tag and a profile."""
    flow = Flow(new_session(OPENED), load_profile("coil-inverted-y", [PROFILES]))
    flow = flow.answered("FG-3").skipped().answered("AB").skipped()
    return flow.answered("coil-inverted-y")


def answered_all(flow, stop="file"):
    """Answer every question with a value of its kind until `stop` is at hand."""
    while flow.question.path != stop:
        question = flow.question
        if not question.is_answered_by_a_value:
            flow = flow.skipped()
        elif question.choices:
            value = question.choices[0].value
            flow = flow.answered([] if question.kind == "any of" else value)
        else:
            flow = flow.answered(["1 in"] if question.repeats else "1 in")
    return flow


def test_the_steps_and_their_order():
    assert [step.name for step in STEPS] == [
        *("Vehicle", "Walk-round", "Stance", "Layout", "Photographs", "Pivots", "Cross-checks"),
        *("Guide and kingpin", "Steering and travel", "Verdict", "Fix", "File"),
    ]


def test_the_first_question_is_the_tag_and_an_answer_leads_to_the_next(fresh):
    assert fresh.question.path == "vehicle.tag"
    flow = fresh.answered("FG-3")
    assert flow.question.path == "vehicle.description"
    assert value_at(flow.document, "vehicle.tag") == "FG-3"


def test_every_question_is_reached_once_and_filing_is_the_last(chosen):
    flow = answered_all(chosen)
    assert flow.missing == ()
    assert all(flow.is_settled(question) for question in flow.asked[:-1])
    assert len(flow.past) == len(flow.asked) - 1


def test_a_skipped_question_is_settled_and_leaves_no_answer(chosen):
    flow = chosen.going_to("complaint.note").skipped()
    assert value_at(flow.document, "complaint.note") is None
    assert "complaint.note" in value_at(flow.document, "draft.passed")


def test_skipping_removes_an_earlier_answer(fresh):
    flow = fresh.answered("FG-3").answered("a truck").going_by(-1).skipped()
    assert value_at(flow.document, "vehicle.description") is None


def test_an_answer_to_an_earlier_question_leads_to_the_first_open_question(chosen):
    reached = chosen.question
    back = chosen.going_by(-2)
    assert back.question.path == "vehicle.odometer"
    assert back.answered("48210 km").question == reached


def test_a_changed_answer_returns_to_the_question_that_was_left(chosen):
    flow = chosen.going_to_step("Cross-checks")  # with open questions before it
    changed = flow.going_to("vehicle.odometer").going_by(-1).answered("CD")
    assert changed.question == flow.question
    assert changed.left == ""
    assert flow.going_by(-2).going_by(2).left == ""


def test_an_open_question_does_not_return_to_the_question_that_was_left(chosen):
    flow = chosen.going_to_step("Cross-checks").going_to_step("Pivots").answered(["24 in"])
    assert flow.question.path == "readings.track_bar.frame.offset"


def test_a_change_that_opens_questions_goes_to_them(chosen):
    knuckle = chosen.with_document(
        with_value(chosen.document, "layout.steering", "knuckle")
    ).going_to("verdict")
    changed = knuckle.going_to("layout.steering").answered("inverted-y")
    assert changed.question.path != "verdict"


def test_undo_restores_the_question_and_the_document(fresh):
    flow = fresh.answered("FG-3").answered("a truck")
    assert flow.undone().question.path == "vehicle.description"
    assert value_at(flow.undone().document, "vehicle.description") is None
    assert flow.undone().undone().undone().document == fresh.document


def test_undo_does_not_change_the_units(fresh):
    flow = fresh.answered("FG-3")
    flow = flow.with_document(with_value(flow.document, "session.units", "mm"))
    assert value_at(flow.undone().document, "session.units") == "mm"


def test_no_question_after_tag_and_profile_is_reached_without_them(fresh):
    assert fresh.going_to_step("Pivots").question.path == "vehicle.tag"
    named = fresh.answered("FG-3").skipped().answered("AB")
    assert named.going_to_step("Pivots").question.path == "session.profile"


def test_a_step_is_entered_at_its_first_open_question(chosen):
    flow = chosen.going_to_step("Pivots").answered(["24 in"]).going_to_step("Stance")
    assert flow.question.path == "stance.level_floor"
    assert flow.going_to_step("Pivots").question.path == "readings.track_bar.frame.offset"


def test_the_near_ball_is_asked_for_only_with_an_inverted_y(chosen):
    knuckle = with_value(chosen.document, "layout.steering", "knuckle")
    inverted = with_value(chosen.document, "layout.steering", "inverted-y")
    near = "readings.tie_rod.near.height"
    assert near not in {question.path for question in chosen.with_document(knuckle).asked}
    assert near in {question.path for question in chosen.with_document(inverted).asked}


def test_the_slope_of_a_bent_bar_is_not_asked_for(chosen):
    bent = with_value(chosen.document, "readings.track_bar.bent", True)
    paths = {question.path for question in chosen.with_document(bent).asked}
    assert "readings.track_bar.slope" not in paths
    assert "readings.drag_link.slope" in paths


def test_rim_size_is_asked_for_only_with_heavy_trucks(chosen):
    heavy = chosen.with_profile(load_profile("heavy-truck", [PROFILES]))
    assert "walk_round.rim_size" not in {question.path for question in chosen.asked}
    assert "walk_round.rim_size" in {question.path for question in heavy.asked}


def test_answers_that_no_longer_apply_stay_in_the_draft_and_out_of_the_record(chosen):
    flow = answered_all(chosen.going_to("layout.steering").answered("inverted-y"))
    near = "readings.tie_rod.near.height"
    changed = flow.going_to("layout.steering").answered("knuckle")
    assert value_at(changed.document, near) == ["1 in"]
    assert value_at(applicable_answers(changed.document, changed.profile), near) is None
    back = changed.going_to("layout.steering").answered("inverted-y")
    assert value_at(applicable_answers(back.document, back.profile), near) == ["1 in"]


def test_the_record_has_no_draft_table(chosen):
    assert "draft" not in applicable_answers(chosen.document, chosen.profile)


def test_a_kept_reading_is_in_the_record_with_its_reason(chosen):
    path = "readings.track_bar.frame.height"
    flow = chosen.going_to(path).answered(["40 in"], reason="lifted, seen")
    kept = [{"reading": "track_bar.frame.height", "reason": "lifted, seen"}]
    assert flow.document["kept"] == kept
    assert "kept" not in flow.going_to(path).answered(["24 in"]).document


def test_a_changed_reading_shows_the_verdict_again(chosen):
    flow = answered_all(chosen)
    assert "verdict" in value_at(flow.document, "draft.passed")
    changed = flow.going_to("readings.track_bar.frame.height").answered(["25 in"])
    assert changed.question.path == "verdict"


def test_a_draft_is_resumed_at_its_place(chosen):
    flow = chosen.going_to_step("Pivots").answered(["24 in"])
    assert Flow(flow.document, flow.profile).question == flow.question


def test_a_place_that_is_no_longer_a_question_is_replaced_by_the_first_open_one(chosen):
    document = with_value(chosen.document, "draft.at", "readings.gone")
    assert Flow(document, chosen.profile).question.path == "complaint.reported"


def test_progress_has_counts_and_states(chosen):
    flow = chosen.going_to_step("Walk-round").skipped()
    vehicle, walk_round, stance, *_ = flow.progress
    assert (vehicle.state, vehicle.done, vehicle.total) == ("open", 5, 7)
    assert (walk_round.state, walk_round.done) == ("here", 1)
    assert stance.state == "to come"
    assert step_of(flow.question).name == "Walk-round"


def test_a_lengthwise_drag_link_needs_both_stations(chosen):
    """A station that was skipped before the layout was changed is asked for again."""
    flow = answered_all(chosen, "readings.drag_link.frame.station")
    assert flow.question.optional
    skipped = flow.skipped()
    assert skipped.is_settled(flow.question)
    changed = skipped.with_document(with_value(skipped.document, "layout.steering", "fore-aft"))
    paths = [question.path for question in changed.missing]
    assert "readings.drag_link.frame.station" in paths
    assert "readings.drag_link.axle.station" in paths
    assert not changed.going_to("readings.drag_link.frame.station").question.optional
    assert "readings.track_bar.frame.station" not in paths
