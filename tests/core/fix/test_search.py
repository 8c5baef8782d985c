"""The search: the order of its plans, searches without a cure, and its estimates."""

from dataclasses import replace

import numpy as np
import pytest

from core.fix.chances import chances_of
from core.fix.moves import correction_sets, with_moves
from core.fix.ranking import PROBABILITY_STEP, Candidate
from core.fix.search import MOST_IMPROVED, MOST_PLANS, search
from core.kinematics.ball_path import effective_angle
from core.kinematics.raising import raised
from core.profiles.corrections import Correction
from core.statistics.conformity import SURE
from core.verdict.curves import peak_values
from core.verdict.rules import slopes
from core.verdict.verdict import Overall
from tests.geometries import INCH, LAYOUTS, parallel_pair
from tests.plans import COARSE, done, vehicle, verdict_on

PARALLEL = parallel_pair()
CROSSED = raised(PARALLEL, "drag_link.frame", 3 * INCH)
"""A vehicle with parallel links, and the same with its pitman ball 3 in too high."""


@pytest.fixture(scope="module")
def crossed():
    return verdict_on(CROSSED)


def test_plans_come_in_order_with_one_for_each_set(crossed):
    result = search(crossed, COARSE)
    sets = [frozenset(correction.name for correction in plan.corrections) for plan in result.plans]
    assert 1 < len(set(sets)) == len(sets) <= MOST_PLANS
    keys = [
        (
            len(plan.moves),
            -round(plan.after.p_true / PROBABILITY_STEP),
            round(plan.after.peak_steer / crossed.session.limits.steer * 10),
            sum(abs(move.rise) for move in plan.moves),
        )
        for plan in result.plans
    ]
    assert keys == sorted(keys)
    assert all(plan.after.p_true >= SURE for plan in result.plans)


@pytest.mark.parametrize(
    ("linkage", "overall"),
    [(PARALLEL, Overall.STEERS_TRUE), (parallel_pair(parallel_deg=1.5), Overall.TOO_CLOSE)],
)
def test_only_bump_steer_is_searched(linkage, overall):
    verdict = verdict_on(linkage)
    assert verdict.overall == overall
    result = search(verdict, COARSE)
    assert (result.searched, result.plans) == (0, ())


def test_a_verdict_held_back_is_not_searched(crossed):
    verdict = replace(crossed, overall=Overall.HELD_BACK)
    assert verdict.geometry == Overall.BUMP_STEER
    assert search(verdict, COARSE).plans == ()


def test_without_corrections_there_is_no_plan(crossed):
    assert search(crossed, ()).plans == ()


def test_where_no_plan_has_a_chance_the_nearest_is_offered(crossed):
    # Raising the pitman ball further makes it worse; the smallest rise is the nearest.
    wrong = Correction("less drop", "drag_link.frame", (1 * INCH, 2 * INCH))
    result = search(crossed, [wrong])
    assert result.searched == 2
    assert [done(plan.moves) for plan in result.plans] == [(("less drop", 25.4),)]
    assert not result.plans[0].steers_true
    assert {"parallel", "steer", "drag_link"} <= set(result.plans[0].after.worse)


def test_where_no_plan_steers_true_the_likeliest_is_offered(crossed):
    near = Correction("more drop", "drag_link.frame", (-2 * INCH, -1 * INCH))
    (plan,) = search(crossed, [near]).plans
    assert done(plan.moves) == (("more drop", -50.8),)
    assert 0 < plan.after.p_true < SURE


def test_progress_rises_to_one(crossed):
    progress = []
    search(crossed, COARSE, progress.append)
    assert progress == sorted(progress)
    assert progress[-1] == 1.0


def test_smaller_portions_give_the_same_plans(monkeypatch):
    verdict = verdict_on(vehicle(0, "inverted-y"))
    expected = search(verdict, COARSE)
    progress = []
    monkeypatch.setattr("core.fix.combinations.PORTION", 5)
    result = search(verdict, COARSE, progress.append)
    assert result.searched == expected.searched
    assert [done(p.moves) for p in result.plans] == [done(p.moves) for p in expected.plans]
    assert len(progress) > 60


def plans_of_full_draws(verdict, corrections):
    """The candidates that the order puts first, with every combination drawn in full."""
    limits, candidates = verdict.session.limits, []
    for place, correction_set in enumerate(correction_sets(corrections)):
        for row in range(len(correction_set.rises)):
            moves = correction_set.moves(row)
            linkage = with_moves(verdict.measured.linkage, moves)
            steer, toe = peak_values(linkage, limits)
            excess = max(
                abs(effective_angle(linkage)) / limits.parallel,
                steer / limits.steer,
                toe / limits.toe_change,
            )
            p_true = (
                chances_of(verdict.measured, moves, verdict.session.limits).together
                if excess < 2
                else 0.0
            )
            flatness = round(float(np.abs(slopes(linkage)).sum()), 6)
            peak_step = round(float(steer) / limits.steer * 10)
            candidates.append(Candidate(moves, p_true, float(excess), peak_step, flatness, place))
    first_of_set = {}
    for candidate in sorted(candidates, key=lambda candidate: candidate.order):
        first_of_set.setdefault(candidate.place, candidate)
    true = [
        candidate
        for candidate in first_of_set.values()
        if candidate.p_true >= SURE and not has_token_move(verdict, candidate.moves)
    ]
    best = sorted(
        first_of_set.values(), key=lambda candidate: (candidate.by_probability, candidate.order)
    )
    return sorted(true, key=lambda candidate: candidate.order)[:MOST_PLANS] or best[:MOST_IMPROVED]


def has_token_move(verdict, moves):
    """True if the vehicle would steer true without one of the moves."""
    limits = verdict.session.limits
    return len(moves) > 1 and any(
        chances_of(verdict.measured, moves[:i] + moves[i + 1 :], limits).together >= SURE
        for i in range(len(moves))
    )


@pytest.mark.slow
@pytest.mark.parametrize("layout", LAYOUTS)
@pytest.mark.parametrize("seed", range(4))
def test_estimates_give_the_plans_of_full_draws(layout, seed):
    verdict = verdict_on(vehicle(seed, layout))
    if verdict.overall != Overall.BUMP_STEER:
        pytest.skip("this vehicle has no bump steer")
    expected = plans_of_full_draws(verdict, COARSE)
    result = search(verdict, COARSE)
    assert [done(plan.moves) for plan in result.plans] == [done(best.moves) for best in expected]
