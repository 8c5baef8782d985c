"""Choosing a plan: the plan at hand, plans made by hand, corrections that the shop can make."""

import pytest

from core.documents.document import value_at
from core.fix.moves import Move
from core.fix.plan import plan_of
from core.fix.search import search
from core.kinematics.raising import raised
from tests.geometries import INCH, parallel_pair
from tests.plans import COARSE, verdict_on
from wizard.flow.planning import (
    BENCH,
    CHANGED,
    KEPT,
    Planning,
    adjusters_in,
    are_same_plan,
    kept_plan,
    switched_on,
    with_filed_plan,
    with_switched_on,
)


@pytest.fixture(scope="module")
def planning():
    verdict = verdict_on(raised(parallel_pair(), "drag_link.frame", 3 * INCH))
    return Planning(verdict, search(verdict, COARSE))


def plan_by_hand(planning, rise):
    """Plan made by hand, with one move."""
    return plan_of(planning.verdict, (Move(COARSE[1], rise * INCH),))


def test_stepping_stops_at_the_first_and_the_last_plan(planning):
    last = len(planning.plans) - 1
    assert planning.stepped(-1).index == 0
    assert planning.stepped(99).index == last
    assert planning.stepped(99).stepped(-1).index == last - 1


def test_a_plan_made_by_hand_is_added_at_the_end_and_is_at_hand(planning):
    changed = planning.with_plan_by_hand(CHANGED, plan_by_hand(planning, -2.9))
    assert changed.plans[-1][0] == CHANGED
    assert changed.plan is changed.plans[-1][1]


def test_a_second_plan_of_the_same_title_replaces_the_first(planning):
    both = planning.with_plan_by_hand(CHANGED, plan_by_hand(planning, -2.9)).with_plan_by_hand(
        BENCH, plan_by_hand(planning, -2.8)
    )
    again = both.with_plan_by_hand(CHANGED, plan_by_hand(planning, -2.7))
    assert [title for title, _ in again.made_by_hand] == [BENCH, CHANGED]
    assert again.plan.moves[0].rise == pytest.approx(-2.7 * INCH)


def test_a_kept_plan_is_recognised_among_the_plans_of_the_search(planning):
    index = len(planning.plans) - 1
    last = planning.plans[index][1]
    same = plan_of(planning.verdict, last.moves)
    assert planning.with_kept(same).index == index
    assert planning.with_kept(plan_by_hand(planning, -2.9)).plans[-1][0] == KEPT
    assert planning.with_kept(None) is planning


def test_plans_with_different_arms_are_not_the_same(planning):
    plain = plan_by_hand(planning, -3)
    longer = plan_of(planning.verdict, plain.moves, {"steering.arm": 200.0})
    assert are_same_plan(plain, plan_by_hand(planning, -3))
    assert not are_same_plan(plain, longer)
    assert not are_same_plan(plain, plan_by_hand(planning, -2))


def test_without_plans_no_plan_is_at_hand(planning):
    empty = Planning(planning.verdict, search(planning.verdict, ()))
    assert empty.plan is None
    assert empty.stepped(1).index == 0


def test_switched_off_corrections_are_stored_in_the_draft():
    names = ["less drop", "ride height"]
    document = with_switched_on({"draft": {"at": "fix"}}, COARSE, names)
    assert [correction.name for correction in switched_on(document, COARSE)] == names
    assert value_at(document, "draft.at") == "fix"
    everything = with_switched_on(document, COARSE, [correction.name for correction in COARSE])
    assert everything == {"draft": {"at": "fix"}}


def test_a_plan_is_put_into_the_document_and_removed(planning):
    document = with_filed_plan({"session": {"units": "mm"}}, planning.plans[0][1])
    assert value_at(document, "plan.moves")[0]["rise"].endswith(" mm")
    assert with_filed_plan(document, None) == {"session": {"units": "mm"}}


def test_a_faulty_plan_is_ignored_and_a_faulty_adjuster_is_replaced_by_the_profiles(planning):
    class Usual:
        adjusters = {"track_bar": "as the profile has it"}

    assert kept_plan({"plan": {"moves": 3}}, planning.verdict, COARSE) is None
    faulty = {"adjusters": {"track_bar": {"kind": "glue", "pitch": "1 mm"}}}
    assert adjusters_in(faulty, Usual()) == Usual.adjusters
