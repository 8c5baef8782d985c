"""Plans while one is chosen: which one is at hand, plans by hand, what the shop has."""

import pytest

from core.documents.document import value_at
from core.fix.moves import Move
from core.fix.plan import plan_of
from core.fix.search import search
from tests.geometries import INCH, parallel_pair
from tests.plans import COARSE, verdict_on
from wizard.flow.planning import (
    BENCH,
    CHANGED,
    KEPT,
    Planning,
    adjusters_in,
    are_same,
    kept_plan,
    switched_on,
    with_filed_plan,
    with_only,
)


@pytest.fixture(scope="module")
def planning():
    verdict = verdict_on(parallel_pair().raised("drag_link.frame", 3 * INCH))
    return Planning(verdict, search(verdict, COARSE))


def own(planning, rise):
    """A plan by hand."""
    return plan_of(planning.verdict, (Move(COARSE[1], rise * INCH),))


def test_steps_stop_at_both_ends(planning):
    last = len(planning.plans) - 1
    assert planning.stepped(-1).at == 0
    assert planning.stepped(99).at == last
    assert planning.stepped(99).stepped(-1).at == last - 1


def test_a_plan_by_hand_comes_last_and_is_at_hand(planning):
    changed = planning.with_own(CHANGED, own(planning, -2.9))
    assert changed.plans[-1][0] == CHANGED
    assert changed.plan is changed.plans[-1][1]


def test_a_second_one_of_a_title_takes_the_place_of_the_first(planning):
    both = planning.with_own(CHANGED, own(planning, -2.9)).with_own(BENCH, own(planning, -2.8))
    again = both.with_own(CHANGED, own(planning, -2.7))
    assert [title for title, _ in again.own] == [BENCH, CHANGED]
    assert again.plan.moves[0].rise == pytest.approx(-2.7 * INCH)


def test_the_kept_plan_is_found_among_the_others(planning):
    index = len(planning.plans) - 1
    found = planning.plans[index][1]
    same = plan_of(planning.verdict, found.moves)
    assert planning.with_kept(same).at == index
    assert planning.with_kept(own(planning, -2.9)).plans[-1][0] == KEPT
    assert planning.with_kept(None) is planning


def test_arms_tell_plans_apart(planning):
    plain = own(planning, -3)
    longer = plan_of(planning.verdict, plain.moves, {"steering.arm": 200.0})
    assert are_same(plain, own(planning, -3))
    assert not are_same(plain, longer)
    assert not are_same(plain, own(planning, -2))


def test_without_plans_none_is_at_hand(planning):
    empty = Planning(planning.verdict, search(planning.verdict, ()))
    assert empty.plan is None
    assert empty.stepped(1).at == 0


def test_what_is_switched_off_stays_in_the_draft():
    document = with_only({"draft": {"at": "fix"}}, COARSE, ["less drop", "ride height"])
    assert [one.name for one in switched_on(document, COARSE)] == ["less drop", "ride height"]
    assert value_at(document, "draft.at") == "fix"
    everything = with_only(document, COARSE, [one.name for one in COARSE])
    assert everything == {"draft": {"at": "fix"}}


def test_a_plan_is_noted_and_taken_out(planning):
    document = with_filed_plan({"session": {"units": "mm"}}, planning.plans[0][1])
    assert value_at(document, "plan.moves")[0]["rise"].endswith(" mm")
    assert with_filed_plan(document, None) == {"session": {"units": "mm"}}


def test_a_faulty_plan_or_adjuster_is_passed_over(planning):
    class Usual:
        adjusters = {"track_bar": "as the profile has it"}

    assert kept_plan({"plan": {"moves": 3}}, planning.verdict, COARSE) is None
    faulty = {"adjusters": {"track_bar": {"kind": "glue", "pitch": "1 mm"}}}
    assert adjusters_in(faulty, Usual()) == Usual.adjusters
