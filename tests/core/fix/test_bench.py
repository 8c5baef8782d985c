"""The bench: trial positions of pivots and lengths, as a plan."""

from dataclasses import replace

import numpy as np
import pytest

from core.fix.bench import SHORTEST_ARM, STEPS, Bench, nudged_names
from core.fix.moves import Move
from core.fix.plan import plan_of
from core.fix.search import search
from core.kinematics.guide import RadiusArms
from core.kinematics.pivots import GUIDE_PIVOTS
from core.kinematics.raising import raised
from core.profiles.corrections import Correction
from core.verdict.verdict import Overall
from tests.axles import KINDS, random_axle
from tests.geometries import INCH, parallel_pair
from tests.plans import COARSE, verdict_on

PARALLEL = parallel_pair(slope_deg=4)
ON_ARMS = replace(
    PARALLEL,
    guide=RadiusArms(frame_height=PARALLEL.hub_height + 3 * INCH, frame_station=-36 * INCH),
)
CROSSED = raised(parallel_pair(), "drag_link.frame", 3 * INCH)


@pytest.fixture(scope="module")
def bench():
    return Bench(verdict_on(PARALLEL))


@pytest.mark.parametrize("name", nudged_names(PARALLEL))
def test_nudges_add_up_and_can_be_undone(bench, name):
    nudged = bench.nudged(name, 10.0).nudged(name, -2.5)
    assert nudged.change(name) == pytest.approx(7.5)
    assert nudged.undone().change(name) == pytest.approx(10.0)
    assert nudged.reset().nudges == ()
    assert bench.nudges == ()


def test_undo_without_nudges_does_nothing(bench):
    assert bench.undone().nudges == ()


def test_nudges_of_a_pivot_become_one_move(bench):
    nudged = bench.nudged("track_bar.axle", 10.0).nudged("ride_height", 5.0)
    nudged = nudged.nudged("track_bar.axle", 10.0)
    moves = {move.correction.pivot: move.rise for move in nudged.moves}
    assert moves == {"track_bar.axle": 20.0, "ride_height": 5.0}


def test_nudges_that_cancel_are_no_move(bench):
    assert bench.nudged("track_bar.axle", 10.0).nudged("track_bar.axle", -10.0).moves == ()


def test_without_nudges_the_prediction_is_the_verdict(bench):
    after = bench.plan().after
    assert after.peak_steer == pytest.approx(bench.verdict.steer.ruling.value, abs=1e-12)
    assert after.parallel == pytest.approx(bench.verdict.rules.parallel.value, abs=1e-12)


def test_a_lift_alone_keeps_the_links_parallel_and_makes_them_steeper():
    # common practice, no source: a lift moves both frame ends; links of one length stay parallel
    bench = Bench(verdict_on(PARALLEL)).nudged("ride_height", 4 * INCH)
    after = bench.plan().after
    assert after.parallel == pytest.approx(0, abs=1e-9)
    assert after.slopes[0] > bench.verdict.rules.flat_track_bar.value
    assert {"track_bar", "drag_link"} <= set(after.worse)


@pytest.mark.parametrize(("layout", "guide", "has_track_bar"), KINDS)
def test_the_bench_has_the_pivots_of_the_vehicle(layout, guide, has_track_bar):
    linkage = random_axle(np.random.default_rng(1), layout, guide, has_track_bar)
    names = nudged_names(linkage)
    assert ("track_bar.axle" in names) == has_track_bar
    assert [name for name in names if name.startswith("guide.")] == list(GUIDE_PIVOTS[guide])


def test_a_pivot_of_the_guide_turns_the_axle_otherwise_through_its_travel():
    bench = Bench(verdict_on(ON_ARMS))
    lowered = bench.nudged("guide.frame", -2 * INCH).plan()
    assert lowered.moved == ("guide.frame",)
    assert lowered.after.castor == lowered.after.castor_before  # the arm is set to length
    bump = np.s_[-1]
    before, after = bench.verdict.sweep.axle_pitch[bump], lowered.after.motion.axle_pitch[bump]
    assert before < 0
    assert after != pytest.approx(before, abs=1e-4)


def test_a_bench_that_starts_with_a_plan_keeps_the_order_of_its_moves():
    # The frame rises on the arms as they are then, so the order counts.
    verdict = verdict_on(ON_ARMS)
    lift = Move(Correction("lift", "ride_height", (4 * INCH,)), 4 * INCH)
    bracket = Move(Correction("bracket", "guide.frame", (-3 * INCH,)), -3 * INCH)
    for moves in ((lift, bracket), (bracket, lift)):
        plan = plan_of(verdict, moves)
        after = Bench.of(verdict, plan).plan().after
        assert after.castor == plan.after.castor
        assert after.chances == plan.after.chances


def test_an_arm_is_tried_in_another_length(bench):
    longer = bench.nudged("steering.arm", 25.4)
    assert longer.arms == {"steering.arm": pytest.approx(PARALLEL.arm + 25.4)}
    assert longer.plan().arms == longer.arms
    assert longer.moves == ()


def test_an_arm_stops_at_its_shortest(bench):
    short = bench.nudged("steering.arm", -10_000.0)
    assert short.arms["steering.arm"] == pytest.approx(SHORTEST_ARM)
    assert short.nudged("steering.arm", -1.0).arms["steering.arm"] == pytest.approx(SHORTEST_ARM)


def test_a_bench_can_start_with_a_plan():
    verdict = verdict_on(CROSSED)
    assert verdict.overall == Overall.BUMP_STEER
    plan = plan_of(verdict, (Move(COARSE[1], -2 * INCH),), {"steering.arm": 180.0})
    bench = Bench.of(verdict, plan)
    assert bench.change("drag_link.frame") == pytest.approx(-2 * INCH)
    assert bench.plan().after.peak_steer == pytest.approx(plan.after.peak_steer)
    assert bench.plan().after.chances == plan.after.chances


def test_the_bench_and_the_search_predict_the_same():
    verdict = verdict_on(CROSSED)
    (plan,) = search(verdict, [COARSE[1]]).plans
    tried = Bench(verdict).nudged("drag_link.frame", plan.moves[0].rise).plan()
    assert tried.after.chances == plan.after.chances
    assert tried.after.lengths == plan.after.lengths


def test_steps_in_inches_are_those_of_a_tape():
    assert [step / INCH for step in STEPS["in"]] == [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1]
    assert len(STEPS["mm"]) == len(STEPS["in"])
