"""The search: its order, what it says where nothing is to be found, and its shortcut."""

from dataclasses import replace

import numpy as np
import pytest

from core.fix.chances import chances_of
from core.fix.moves import Move, correction_sets, with_moves
from core.fix.plan import plan_of
from core.fix.ranking import STEP, Candidate
from core.fix.search import MOST_PLANS, search
from core.profiles.corrections import Correction
from core.statistics.conformity import SURE
from core.verdict.curves import Curves
from core.verdict.rules import parallel_angle, slopes
from core.verdict.verdict import Overall
from tests.geometries import INCH, LAYOUTS, parallel_pair
from tests.plans import COARSE, done, vehicle, verdict_on

PARALLEL = parallel_pair()
CROSSED = PARALLEL.raised("drag_link.frame", 3 * INCH)
"""A vehicle whose links are parallel, and the same with the pitman ball too high."""


def candidate(count=1, p_true=1.0, rise=10.0, flatness=0.1, excess=0.5, place=0):
    """Something to be ordered."""
    move = Move(Correction("x", "track_bar.axle", (rise,)), rise)
    return Candidate((move,) * count, p_true, excess, flatness, place)


class TestOrder:
    """corrections: fewest, then the highest p_true in steps, then rises, then flatness."""

    @pytest.mark.parametrize(
        ("first", "second"),
        [
            (candidate(count=1, p_true=0.95), candidate(count=2, p_true=1.0)),
            (candidate(p_true=1.0, rise=90.0), candidate(p_true=0.9, rise=10.0)),
            (candidate(p_true=0.98, rise=10.0), candidate(p_true=1.0, rise=20.0)),
            (candidate(rise=-10.0, flatness=0.3), candidate(rise=20.0, flatness=0.1)),
            (candidate(flatness=0.1), candidate(flatness=0.2)),
            (candidate(p_true=0.0, excess=2.0, rise=50.0), candidate(p_true=0.0, excess=3.0)),
        ],
    )
    def test_one_goes_before_the_other(self, first, second):
        assert first.order < second.order

    def test_plans_come_in_that_order_the_first_of_each_set(self):
        fix = search(verdict_on(CROSSED), COARSE)
        sets = [frozenset(one.name for one in plan.corrections) for plan in fix.plans]
        assert len(set(sets)) == len(sets) <= MOST_PLANS
        keys = [
            (len(p.moves), -round(p.after.p_true / STEP), sum(abs(m.rise) for m in p.moves))
            for p in fix.plans
        ]
        assert keys == sorted(keys)
        assert all(plan.after.p_true >= SURE for plan in fix.plans)


class TestInsteadOfPlans:
    @pytest.mark.parametrize(
        ("linkage", "overall"),
        [(PARALLEL, Overall.STEERS_TRUE), (parallel_pair(parallel_deg=1.5), Overall.TOO_CLOSE)],
    )
    def test_only_bump_steer_is_searched(self, linkage, overall):
        verdict = verdict_on(linkage)
        assert verdict.overall == overall
        fix = search(verdict, COARSE)
        assert (fix.searched, fix.plans) == (0, ())

    def test_held_back_is_not_searched_whatever_its_geometry(self):
        verdict = replace(verdict_on(CROSSED), overall=Overall.HELD_BACK)
        assert verdict.geometry == Overall.BUMP_STEER
        assert search(verdict, COARSE).plans == ()

    def test_a_shop_that_can_do_nothing_has_no_plan(self):
        assert search(verdict_on(CROSSED), ()).plans == ()

    def test_none_steers_true_the_nearest_is_shown(self):
        # raising the pitman ball further makes it worse; the least of it is nearest
        wrong = Correction("less drop", "drag_link.frame", (1 * INCH, 2 * INCH))
        fix = search(verdict_on(CROSSED), [wrong])
        assert fix.searched == 2
        assert [done(plan.moves) for plan in fix.plans] == [(("less drop", 25.4),)]
        assert not fix.plans[0].steers_true
        assert {"parallel", "steer", "drag_link"} <= set(fix.plans[0].after.worse)

    def test_none_steers_true_the_likeliest_is_shown(self):
        near = Correction("more drop", "drag_link.frame", (-2 * INCH, -1 * INCH))
        fix = search(verdict_on(CROSSED), [near])
        (plan,) = fix.plans
        assert done(plan.moves) == (("more drop", -50.8),)
        assert 0 < plan.after.p_true < SURE


class TestPlan:
    def test_chances_together_are_no_more_than_each(self):
        verdict = verdict_on(CROSSED)
        for rise in (-1.5, -2.0, -2.5):
            plan = plan_of(verdict, (Move(COARSE[1], rise * INCH),))
            chances = plan.after.chances
            assert chances.together <= min(chances.parallel, chances.steer, chances.toe)
            assert chances.toe == 1.0  # a layout that cannot change it

    def test_the_same_plan_has_the_same_chances(self):
        verdict, moves = verdict_on(CROSSED), (Move(COARSE[1], -2 * INCH),)
        assert chances_of(verdict, moves) == chances_of(verdict, moves)

    def test_no_moves_bring_what_is_there_now(self):
        verdict = verdict_on(CROSSED)
        after = plan_of(verdict, ()).after
        assert after.parallel == pytest.approx(verdict.rules.parallel.value)
        assert after.peak_steer == pytest.approx(verdict.steer.ruling.value)
        assert after.length_changes == pytest.approx((0, 0))
        assert after.worse == ()

    def test_a_longer_arm_steers_less(self):
        verdict = verdict_on(CROSSED)
        now = verdict.measured.linkage.arm
        plan = plan_of(verdict, (), {"steering.arm": 2 * now})
        assert plan.after.peak_steer < 0.6 * verdict.steer.ruling.value
        assert plan.after.linkage.arm == 2 * now
        assert plan.after.worse == ()

    def test_setting_a_pivot_has_a_doubt_of_its_own(self, monkeypatch):
        # more of it can only spread the outcomes: a sure plan becomes less sure
        verdict, moves = verdict_on(CROSSED), (Move(COARSE[1], -2.5 * INCH),)
        monkeypatch.setattr("core.fix.chances.SETTING", 1e-9)
        sure = chances_of(verdict, moves).together
        monkeypatch.setattr("core.fix.chances.SETTING", 40.0)
        assert chances_of(verdict, moves).together < sure - 0.2


def test_progress_ends_at_the_whole():
    said = []
    search(verdict_on(CROSSED), COARSE, said.append)
    assert said == sorted(said)
    assert said[-1] == 1.0


def test_a_portion_at_a_time_finds_the_same(monkeypatch):
    verdict = verdict_on(vehicle(0, "inverted-y"))
    whole = search(verdict, COARSE)
    said = []
    monkeypatch.setattr("core.fix.combinations.PORTION", 5)
    portions = search(verdict, COARSE, said.append)
    assert portions.searched == whole.searched
    assert [done(plan.moves) for plan in portions.plans] == [done(p.moves) for p in whole.plans]
    assert len(said) > 60


def every_combination_drawn_in_full(verdict, corrections):
    """Plans by the contract's order with no shortcut: every combination is drawn."""
    limits, found = verdict.session.limits, []
    for place, one in enumerate(correction_sets(corrections)):
        for row in range(len(one.rises)):
            moves = one.moves(row)
            linkage = with_moves(verdict.measured.linkage, moves)
            steer, toe = Curves.of(linkage, limits).peaks()
            excess = max(
                abs(parallel_angle(linkage)) / limits.parallel,
                steer / limits.steer,
                toe / limits.toe_change,
            )
            p_true = chances_of(verdict, moves).together if excess < 2 else 0.0
            flatness = round(float(np.abs(slopes(linkage)).sum()), 6)
            found.append(Candidate(moves, p_true, float(excess), flatness, place))
    first_of_set = {}
    for one in sorted((one for one in found if one.p_true >= SURE), key=lambda one: one.order):
        first_of_set.setdefault(one.place, one)
    best = min(found, key=lambda one: (one.likeliest, one.order))
    return list(first_of_set.values())[:MOST_PLANS] or [best]


@pytest.mark.slow
@pytest.mark.parametrize("layout", LAYOUTS)
@pytest.mark.parametrize("seed", range(4))
def test_the_shortcut_gives_the_plans_of_drawing_everything(layout, seed):
    verdict = verdict_on(vehicle(seed, layout))
    if verdict.overall != Overall.BUMP_STEER:
        pytest.skip("nothing to search for")
    expected = every_combination_drawn_in_full(verdict, COARSE)
    found = search(verdict, COARSE)
    assert [done(plan.moves) for plan in found.plans] == [done(one.moves) for one in expected]
