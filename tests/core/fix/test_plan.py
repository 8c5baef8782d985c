"""Plans: moves and arms of other lengths, with their predicted result."""

import pytest

from core.fix.moves import Move
from core.fix.plan import plan_of
from core.kinematics.raising import raised
from core.statistics.conformity import SURE
from tests.geometries import INCH, parallel_pair
from tests.plans import COARSE, verdict_on


@pytest.fixture(scope="module")
def verdict():
    """A verdict on parallel links whose pitman ball was put 3 in too high."""
    return verdict_on(raised(parallel_pair(), "drag_link.frame", 3 * INCH))


def test_without_moves_the_prediction_is_the_verdict(verdict):
    after = plan_of(verdict, ()).after
    assert after.parallel == pytest.approx(verdict.rules.parallel.value)
    assert after.peak_steer == pytest.approx(verdict.steer.ruling.value)
    assert after.length_changes == pytest.approx((0, 0))
    assert after.worse == ()


def test_the_corrections_of_a_plan_are_those_of_its_moves(verdict):
    plan = plan_of(verdict, (Move(COARSE[1], -INCH), Move(COARSE[2], INCH)))
    assert plan.corrections == (COARSE[1], COARSE[2])


@pytest.mark.parametrize(("rise", "expected"), [(-3.0, True), (-1.0, False)])
def test_a_plan_steers_true_where_it_is_likely_enough(verdict, rise, expected):
    plan = plan_of(verdict, (Move(COARSE[1], rise * INCH),))
    assert plan.steers_true == expected == (plan.after.p_true >= SURE)


def test_a_longer_arm_steers_less(verdict):
    measured = verdict.measured.linkage.arm
    plan = plan_of(verdict, (), {"steering.arm": 2 * measured})
    assert plan.after.peak_steer < 0.6 * verdict.steer.ruling.value
    assert plan.after.linkage.arm == 2 * measured
    assert plan.after.worse == ()


def test_a_longer_arm_makes_a_true_vehicle_likelier(verdict):
    moves = (Move(COARSE[1], -2.25 * INCH),)
    longer = {"steering.arm": 1.5 * verdict.measured.linkage.arm}
    chances = [plan_of(verdict, moves, arms).after.chances.steer for arms in (None, longer)]
    assert chances[0] < chances[1]
