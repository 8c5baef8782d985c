"""What speaks against an answer that only the files or the earlier session know of."""

import pytest

from core.documents.document import value_at, with_value, without
from core.documents.record import read_document
from core.entry_checks.outcome import Queried
from tests.wizard.tui.looking import DEMO, workshop
from wizard.flow import drafts
from wizard.flow.answering import answer_question
from wizard.flow.flow import Flow
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.tui.widgets.answer_list import shortened


def record(name):
    return read_document(DEMO[name].path_in(DEMO_SESSIONS))


class TestAKnownTag:
    def test_in_other_letters_is_queried_too(self, tmp_path):
        flow = Flow(drafts.new_session(drafts.now()))
        outcome = answer_question(flow, "fg-5", [PROFILES], workshop(tmp_path))
        assert isinstance(outcome, Queried)
        assert "measured before, last on 2026-09-15" in outcome.message

    def test_of_a_re_measure_is_meant(self, tmp_path):
        flow = Flow(drafts.new_re_measure(record("toe"), drafts.now())).going_to("vehicle.tag")
        assert isinstance(answer_question(flow, "FG-5", [PROFILES], workshop(tmp_path)), Flow)

    def test_that_is_new_is_taken(self, tmp_path):
        flow = Flow(drafts.new_session(drafts.now()))
        assert isinstance(answer_question(flow, "FG-7", [PROFILES], workshop(tmp_path)), Flow)


class TestNothingAltered:
    @pytest.fixture
    def flow(self):
        again = drafts.new_re_measure(record("lifted"), drafts.now())
        return Flow(with_value(again, "draft.at", "session.altered"))

    def ask(self, flow, given, earlier):
        assert flow.question.path == "session.altered"
        return answer_question(flow, given, [PROFILES], None, earlier)

    def test_is_queried_where_something_was_planned(self, flow):
        outcome = self.ask(flow, [], record("lifted"))
        assert isinstance(outcome, Queried)
        assert "planned the track bar's axle end up 3/4 in" in outcome.message

    def test_is_taken_where_nothing_was(self, flow):
        outcome = self.ask(flow, [], without(record("lifted"), "plan"))
        assert isinstance(outcome, Flow)
        assert value_at(outcome.document, "session.altered") == []

    def test_what_is_ticked_is_taken(self, flow):
        assert isinstance(self.ask(flow, ["track_bar.axle"], record("lifted")), Flow)


class TestAltered:
    def test_only_what_is_ticked_anew_has_to_be_measured_again(self):
        again = drafts.new_re_measure(record("lifted"), drafts.now())
        flow = Flow(with_value(again, "draft.at", "session.altered"))
        first = answer_question(flow, ["drag_link.frame"], [PROFILES])
        path = "readings.steering.pitman_arm"
        assert value_at(first.document, path) is None
        taken = first.with_document(with_value(first.document, path, ["5 in"]))
        both = answer_question(
            taken.going_to("session.altered"), ["drag_link.frame", "lengths"], [PROFILES]
        )
        assert value_at(both.document, path) == ["5 in"]


@pytest.mark.parametrize(
    ("words", "room", "shown"),
    [
        ("25 in; 25 1/16 in; 25 1/8 in", 40, "25 in; 25 1/16 in; 25 1/8 in"),
        ("25 in; 25 1/16 in; 25 1/8 in", 21, "25 in; 25 1/16 in; …"),
        ("25 in; 25 1/16 in", 12, "25 in; …"),
        ("an invented truck with a long name", 12, "an invented …"),
    ],
)
def test_readings_are_not_cut_in_the_middle(words, room, shown):
    assert shortened(words, room) == shown
