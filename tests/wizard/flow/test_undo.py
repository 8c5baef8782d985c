"""Words for an answer that was undone."""

from datetime import UTC, datetime

from wizard.flow.drafts import new_session
from wizard.flow.flow import Flow
from wizard.flow.undo import describe_undo

OPENED = datetime(2026, 11, 25, 14, 12, 5, tzinfo=UTC)


def test_a_first_answer_is_put_back_into_the_field():
    before = Flow(new_session(OPENED))
    message, field_text = describe_undo(before.answered("FG-3"), before)
    assert message.endswith(": FG-3")
    assert field_text == "FG-3"


def test_a_changed_answer_is_restored_and_the_field_is_left_alone():
    before = Flow(new_session(OPENED)).answered("FG-3").going_to("vehicle.tag")
    message, field_text = describe_undo(before.answered("FG-4"), before)
    assert message.endswith(": FG-4; it is FG-3 again")
    assert field_text == ""


def test_a_chosen_answer_is_not_put_back_into_a_field():
    before = Flow(new_session(OPENED)).answered("FG-3").skipped().answered("AB").skipped()
    assert before.question.path == "session.profile"
    message, field_text = describe_undo(before.answered("coil-crossover"), before)
    assert "coil-crossover" in message
    assert field_text == ""


def test_a_skipped_question_has_no_message():
    before = Flow(new_session(OPENED)).answered("FG-3")
    assert describe_undo(before.skipped(), before) == ("", "")
