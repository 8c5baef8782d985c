"""Answers that are queried because of the files or of the earlier session."""

import pytest

from core.documents.document import value_at, with_value, without
from core.documents.record import read_document
from core.entry_checks.outcome import Queried
from core.profiles.profile import load_profile
from core.text.quantity import INCH, parse_length
from tests.wizard.tui.looking import DEMO, workshop
from wizard.flow import drafts
from wizard.flow.answering import answer_question
from wizard.flow.flow import Flow
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.tui.widgets.answer_list import shortened


def record(name):
    return read_document(DEMO[name].path_in(DEMO_SESSIONS))


class TestTag:
    def test_a_known_tag_is_queried_in_any_case_of_letters(self, tmp_path):
        flow = Flow(drafts.new_session(drafts.now()))
        outcome = answer_question(flow, "fg-5", [PROFILES], workshop(tmp_path))
        assert isinstance(outcome, Queried)
        assert "measured before, last on 2026-09-15" in outcome.message

    def test_a_known_tag_of_a_re_measure_is_taken(self, tmp_path):
        flow = Flow(drafts.new_re_measure(record("toe"), drafts.now())).going_to("vehicle.tag")
        assert isinstance(answer_question(flow, "FG-5", [PROFILES], workshop(tmp_path)), Flow)

    def test_a_new_tag_is_taken(self, tmp_path):
        flow = Flow(drafts.new_session(drafts.now()))
        assert isinstance(answer_question(flow, "FG-90", [PROFILES], workshop(tmp_path)), Flow)


class TestAlteredParts:
    @pytest.fixture
    def flow(self):
        again = drafts.new_re_measure(record("lifted"), drafts.now())
        return Flow(with_value(again, "draft.at", "session.altered"))

    def outcome(self, flow, answer, earlier):
        assert flow.question.path == "session.altered"
        return answer_question(flow, answer, [PROFILES], None, earlier)

    def test_nothing_altered_is_queried_after_a_plan(self, flow):
        outcome = self.outcome(flow, [], record("lifted"))
        assert isinstance(outcome, Queried)
        assert "planned the drag link's frame end down 1 in" in outcome.message

    def test_nothing_altered_is_taken_without_a_plan(self, flow):
        outcome = self.outcome(flow, [], without(record("lifted"), "plan"))
        assert isinstance(outcome, Flow)
        assert value_at(outcome.document, "session.altered") == []

    def test_a_ticked_part_is_taken(self, flow):
        assert isinstance(self.outcome(flow, ["track_bar.axle"], record("lifted")), Flow)


class TestUnalteredPivots:
    HEIGHT = "readings.track_bar.frame.height"
    OFFSETS = ("readings.track_bar.frame.offset", "readings.drag_link.frame.offset")

    def answered(self, path, answer, altered=(), **others):
        """Outcome of an answer in a re-measure of a session that reads the frame end at 24 in."""
        earlier = record("lifted")
        again = drafts.new_re_measure(earlier, drafts.now())
        again = with_value(again, "session.altered", list(altered))
        for other, value in others.items():
            again = with_value(again, other.replace("__", "."), value)
        flow = Flow(again, load_profile("coil-crossover", [PROFILES])).going_to(path)
        assert flow.question.path == path
        return answer_question(flow, answer, [PROFILES], None, earlier)

    def before(self, path, add):
        """Reading of the session before, and some inches more."""
        (first, *_) = value_at(record("lifted"), path)
        return f"{(parse_length(first)) / INCH + add:.3f} in"

    def test_a_difference_is_queried_with_both_readings(self):
        outcome = self.answered(self.HEIGHT, self.before(self.HEIGHT, 1.0))
        assert isinstance(outcome, Queried)
        assert "In the session before it was" in outcome.message
        assert "nobody altered the track bar's frame end" in outcome.message

    def test_the_doubt_of_both_readings_is_allowed(self):
        assert isinstance(self.answered(self.HEIGHT, self.before(self.HEIGHT, 0.125)), Flow)

    @pytest.mark.parametrize("altered", [("track_bar.frame",), ("ride_height",)])
    def test_an_altered_pivot_may_differ(self, altered):
        assert isinstance(self.answered(self.HEIGHT, self.before(self.HEIGHT, 1.0), altered), Flow)

    def test_another_datum_line_is_queried_once(self):
        first, second = self.OFFSETS
        assert isinstance(self.answered(second, self.before(second, 2.0)), Queried)
        moved = {first.replace(".", "__"): [self.before(first, 2.0)]}
        assert isinstance(self.answered(second, self.before(second, 2.0), **moved), Flow)

    def test_a_track_bar_moves_the_axle_to_a_side(self):
        path = "readings.drag_link.axle.offset"
        assert isinstance(self.answered(path, self.before(path, 1.0)), Queried)
        assert isinstance(self.answered(path, self.before(path, 1.0), ("track_bar.axle",)), Flow)


class TestNewlyAlteredParts:
    def test_only_parts_ticked_now_have_to_be_measured_again(self):
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
    ("words", "room", "expected"),
    [
        ("25 in; 25 1/16 in; 25 1/8 in", 40, "25 in; 25 1/16 in; 25 1/8 in"),
        ("25 in; 25 1/16 in; 25 1/8 in", 21, "25 in; 25 1/16 in; …"),
        ("25 in; 25 1/16 in", 12, "25 in; …"),
        ("an invented truck with a long name", 12, "an invented …"),
    ],
)
def test_a_shortened_answer_keeps_whole_readings(words, room, expected):
    assert shortened(words, room) == expected
