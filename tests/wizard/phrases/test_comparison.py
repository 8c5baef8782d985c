"""What is said of two sessions beside each other."""

import numpy as np
import pytest

from core.documents.record import read_document
from core.fix.comparison import Comparison, Control
from core.fix.plan_record import FiledPlan
from core.fix.reached import ReachedMove
from core.profiles.profile import load_profile
from tests.wizard.tui.looking import DEMO
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.phrases.comparison import control_facts
from wizard.phrases.fact import LOOK
from wizard.phrases.reached_plan import plan_of_earlier, reached_move_fact, reached_plan_facts
from wizard.views.changes_table import change_rows, figure
from wizard.views.two_sessions import two_sessions


def both(before, after):
    """Two demo sessions compared."""
    documents = (read_document(DEMO[name].path_in(DEMO_SESSIONS)) for name in (before, after))
    return two_sessions(*documents, lambda name: load_profile(name, [PROFILES]), draws=0)


class TestControlPoints:
    def test_two_ends_that_nobody_moved_and_that_differ(self):
        control = Control(("track_bar.frame", "drag_link.frame"), 19.05, 1.0, 3.0, 3.0)
        (fact,) = control_facts(Comparison("shown", (), (control,)), {"track_bar.axle"}, "in")
        assert fact.mark == LOOK
        assert "which nobody moved, differ by 3/4 in across from before" in fact.text
        assert "the datum line lies elsewhere" in fact.text

    def test_two_ends_that_still_stand(self):
        control = Control(("track_bar.frame", "drag_link.frame"), 1.0, 1.0, 3.0, 3.0)
        (fact,) = control_facts(Comparison("shown", (), (control,)), set(), "in")
        assert fact.mark == "✓"

    def test_it_is_said_why_there_is_none(self):
        nothing = Comparison("shown", (), ())
        (unknown,) = control_facts(nothing, None, "in")
        (all_moved,) = control_facts(nothing, {"track_bar.frame"}, "in")
        assert "not known what was moved" in unknown.text
        assert "none is left" in all_moved.text


class TestPlannedAndReached:
    def test_a_move_that_fell_short_says_by_how_much(self):
        fact = reached_move_fact(ReachedMove("drag_link.frame", -50.8, -38.1, 2.0), "in")
        assert fact.mark == LOOK
        assert fact.text == (
            "planned 2 in down, reached 1 1/2 in down, give or take 3/16 in: it fell short by "
            "1/2 in"
        )

    def test_a_move_that_went_too_far(self):
        assert reached_move_fact(
            ReachedMove("drag_link.frame", 25.4, 38.1, 2.0), "in"
        ).text.endswith("it went 1/2 in too far")

    def test_a_move_as_planned(self):
        assert reached_move_fact(ReachedMove("drag_link.frame", 25.4, 26.0, 2.0), "in").mark == "✓"

    def test_every_rule_of_the_plan_is_laid_beside_what_was_reached(self):
        found = both("lifted", "fixed")
        names = [
            fact.name for fact in reached_plan_facts(found.planned, found.moves, found.after, "in")
        ]
        assert names[0] == "drag link's frame end"
        assert {"parallel", "peak steer", "near in length"} <= set(names)

    def test_an_arm_of_another_length(self):
        found = both("lifted", "fixed")
        planned = FiledPlan((), {}, {"steering.arm": 177.8})
        (fact,) = reached_plan_facts(planned, (), found.after, "in")
        assert fact.name == "steering arm"
        assert fact.text.startswith("planned 7 in, reached ")

    def test_without_a_plan_nothing_is_said(self):
        assert list(reached_plan_facts(None, (), both("as built", "lifted").after, "in")) == []

    def test_a_plan_that_cannot_be_read_counts_as_none(self):
        assert plan_of_earlier({"plan": {"moves": "one"}}) is None


class TestChanges:
    def test_each_rule_has_its_verdict_before_and_after(self):
        found = both("lifted", "fixed")
        rows = {
            row.name: row for row in change_rows(found.before, found.after, found.comparison, "in")
        }
        assert rows["peak steer"].verdicts == ("out", "within")
        assert rows["peak steer"].changed
        assert "toe change" not in rows
        assert rows["steer for each inch"].verdicts == ("", "")

    def test_an_angle_is_said_as_it_was_before(self):
        found = both("as built", "lifted")
        rows = {
            row.name: row for row in change_rows(found.before, found.after, found.comparison, "in")
        }
        (parallel,) = (one for one in found.comparison.changes if one.name == "parallel")
        row = rows["parallel"]
        assert row.before == pytest.approx(abs(np.degrees(parallel.before)))
        assert row.after - row.before == pytest.approx(
            np.sign(parallel.before) * np.degrees(parallel.after - parallel.before)
        )

    @pytest.mark.parametrize(
        ("value", "text"),
        [(1.24, "+1.2"), (-0.04, "0.0"), (0.0, "0.0"), (float("nan"), "not known")],
    )
    def test_figures_have_their_sign_and_nothing_has_none(self, value, text):
        assert figure(value, 1) == text
