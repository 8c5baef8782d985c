"""The search against brute force, each plan against scipy and against a long Monte Carlo.

Brute force combines the same corrections with itertools. It solves the distance equations of each
combination with scipy's root finder. It uses no part of the search, of the closed form, of the
rules or of the Chebyshev nodes. The uncertainties of the readings and of setting a pivot are made
negligible for it, so that a combination either steers true or does not.
"""

from collections.abc import Sequence
from dataclasses import astuple, dataclass, replace
from itertools import combinations, product

import numpy as np
import pytest
from scipy.stats import multivariate_normal

from core.fix.chances import DRAWS, SETTING
from core.fix.plan import Plan
from core.fix.possible import conversion_of
from core.fix.search import MOST_PLANS, search
from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at
from core.kinematics.pivots import PIVOTS, Layout
from core.kinematics.raising import raised
from core.profiles.conversions import Change, Conversion
from core.profiles.corrections import Correction, PivotStep
from core.profiles.limits import Limits
from core.statistics.conformity import SURE
from core.uncertainty.propagation import parameters, with_parameters
from core.verdict.verdict import Overall, Verdict
from tests.geometries import INCH, LAYOUTS, parallel_pair
from tests.plans import COARSE, done, vehicle, verdict_on
from tests.test_against_root_finder import steered

EXACT = {
    "tape": "0.01 mm",
    "sighting": "0 mm",
    "floor": "0 mm",
    "angle_finder": "0.01 deg",
    "seating": "0 deg",
}
"""Instruments of negligible uncertainty."""

VEHICLES = {"knuckle": (0, 1), "tie-rod": (2,), "inverted-y": (0, 3)}
"""Seeds of vehicles with bump steer, by layout."""

LONG_DRAWS = 40_000
"""Draws of the long Monte Carlo."""

WIDE = {
    "parallel": "2 deg",
    "flat": "10 deg",
    "length_ratio": 0.85,
    "steer": "0.6 deg",
    "toe_change": "0.4 deg",
    "working_travel": {"bump": "2 in", "droop": "2 in"},
}
"""Limits that several combinations of every vehicle meet, so that the order is tested."""


def slope(frame: np.ndarray, axle: np.ndarray) -> float:
    """Slope of a link as a line in the front view."""
    return float(np.arctan((frame[2] - axle[2]) / (frame[1] - axle[1])))


def both_slopes(linkage: Linkage) -> tuple[float, float]:
    """Slopes of the track bar and the drag link, rad."""
    return (
        slope(linkage.track_bar_frame, linkage.track_bar_axle),
        slope(linkage.drag_link_frame, linkage.drag_link_axle),
    )


def moved_to(linkage: Linkage, moves: Sequence[tuple[Change, float]]) -> Linkage:
    """The linkage after some corrections, each with its rise in mm, and conversions."""
    points = {name: np.array(linkage.pivot(name)) for name in PIVOTS}
    for correction, rise in moves:
        if isinstance(correction, Conversion):
            linkage = replace(linkage, layout=correction.steering or linkage.layout)
            if linkage.layout != Layout.INVERTED_Y:
                linkage = replace(linkage, near_ball=None)
            linkage = replace(linkage, arm=correction.readings.get("steering.arm", linkage.arm))
            for step in correction.moves:
                points[step.pivot] = points[step.pivot] + [0.0, 0.0, step.rise]
                if step.to_station is not None:
                    points[step.pivot][0] = step.to_station
                if step.to_offset is not None:
                    points[step.pivot][1] = correction.middle - step.to_offset
            continue
        pivot = correction.pivot
        for name in ("track_bar.frame", "drag_link.frame") if pivot == "ride_height" else (pivot,):
            points[name] = points[name] + [0.0, 0.0, rise]
    return linkage.with_pivots(points)


def peaks(linkage: Linkage, limits: Limits) -> tuple[float, float]:
    """Peak mean steer and peak toe-in change over 41 heaves, by the root finder; rad."""
    heaves = np.linspace(-limits.working_droop, limits.working_bump, 41)
    far_is_left = linkage.drag_link_axle[1] > 0
    steer, toe = 0.0, 0.0
    for heave in heaves:
        _, far, near = steered(linkage, float(heave), 0.0)
        left, right = (far, near) if far_is_left else (near, far)
        steer, toe = max(steer, abs(far + near) / 2), max(toe, abs(right - left))
    return steer, toe


def out_of_square(linkage: Linkage) -> float:
    """Angle by which the drag link is out of square to the path of its ball, rad.

    An axle that does not pitch goes along (0, -tan(slope of the track bar), 1).
    """
    path = np.array([0.0, -np.tan(both_slopes(linkage)[0]), 1.0])
    link = linkage.drag_link_frame - linkage.drag_link_axle
    link = link * np.sign(link[1])
    return float(np.arcsin(path @ link / np.linalg.norm(path) / np.linalg.norm(link)))


def peak_if_true(linkage: Linkage, limits: Limits) -> float | None:
    """Peak steer, rad, if all three deciding rules are within their limits; else None."""
    if abs(out_of_square(linkage)) > limits.parallel:
        return None
    steer, toe = peaks(linkage, limits)
    return steer if steer <= limits.steer and toe <= limits.toe_change else None


@dataclass(frozen=True)
class TrueCombination:
    """A combination that steers true, with its sort key."""

    moves: tuple[tuple[str, float], ...]
    order: tuple[float, ...]


def rises_of(change: Change) -> tuple[float, ...]:
    """Rises on offer; a conversion is made as it is."""
    return (0.0,) if isinstance(change, Conversion) else change.rises


def size_of_moves(chosen: Sequence[Change], rises: Sequence[float]) -> float:
    """Sum of the magnitudes of all rises, mm."""
    of_conversions = sum(
        abs(step.rise)
        for change in chosen
        if isinstance(change, Conversion)
        for step in change.moves
    )
    return of_conversions + sum(map(abs, rises))


def brute_force(
    verdict: Verdict, corrections: Sequence[Correction], conversions: Sequence[Conversion] = ()
) -> tuple[int, list[TrueCombination]]:
    """Number of combinations, and the first that steers true of each set."""
    linkage, limits = verdict.measured.linkage, verdict.session.limits
    count, first_of_set, true = 0, {}, set()
    for size in (1, 2, 3):
        with_conversion = product(conversions, combinations(corrections, size - 1))
        for chosen in (
            *combinations(corrections, size),
            *((conversion, *others) for conversion, others in with_conversion),
        ):
            if any(a.name in b.not_with for a, b in product(chosen, repeat=2)):
                continue
            for rises in product(*map(rises_of, chosen)):
                count += 1
                moved = moved_to(linkage, list(zip(chosen, rises, strict=True)))
                peak = peak_if_true(moved, limits)
                if peak is None:
                    continue
                flatness = round(sum(map(abs, both_slopes(moved))), 6)
                peak_step = round(peak / limits.steer * 10)
                order = (size, peak_step, round(size_of_moves(chosen, rises), 6), flatness)
                names = tuple(correction.name for correction in chosen)
                moves = tuple(zip(names, np.round(rises, 6).tolist(), strict=True))
                true.add(moves)
                if names not in first_of_set or order < first_of_set[names].order:
                    first_of_set[names] = TrueCombination(moves, order)
    by_order = sorted(
        (best for best in first_of_set.values() if not true & set(without_a_move(best.moves))),
        key=lambda combination: combination.order,
    )
    return count, by_order[:MOST_PLANS]


def without_a_move(moves: tuple) -> list[tuple]:
    """The moves without each of them in turn."""
    return [moves[:i] + moves[i + 1 :] for i in range(len(moves))]


@pytest.mark.slow
@pytest.mark.parametrize(
    ("layout", "seed"), [(layout, seed) for layout in LAYOUTS for seed in VEHICLES[layout]]
)
def test_the_search_has_the_plans_of_brute_force(layout, seed, monkeypatch):
    monkeypatch.setattr("core.fix.chances.SETTING", 1e-6)
    monkeypatch.setattr("core.fix.chances.model_uncertainty", np.zeros_like)
    verdict = verdict_on(vehicle(seed, layout), limits=WIDE, instruments=EXACT)
    assert verdict.overall == Overall.BUMP_STEER
    count, expected = brute_force(verdict, COARSE)
    result = search(verdict, COARSE)
    assert result.searched == count
    assert len(expected) > 1, "one plan alone tests no order"
    assert [done(plan.moves) for plan in result.plans] == [best.moves for best in expected]


CONVERSIONS = (
    Conversion("tie rod off", (), steering=Layout.KNUCKLE),
    Conversion(
        "high arms",
        (PivotStep("drag_link.axle", 3 * INCH), PivotStep("track_bar.axle", 4 * INCH)),
        steering=Layout.KNUCKLE,
        readings={"steering.arm": 7 * INCH},
        not_with=("bar up at the axle",),
    ),
    Conversion(
        "both brackets",
        (
            PivotStep("drag_link.frame", -1 * INCH, to_station=150.0),
            PivotStep("track_bar.frame", -2 * INCH, to_offset=600.0),
        ),
    ),
)
"""Two conversions that change the layout of an inverted-Y, and one that keeps any layout."""


@pytest.mark.slow
@pytest.mark.parametrize("seed", [0, 3])
def test_the_search_works_conversions_like_brute_force(seed, monkeypatch):
    monkeypatch.setattr("core.fix.chances.SETTING", 1e-6)
    monkeypatch.setattr("core.fix.chances.model_uncertainty", np.zeros_like)
    verdict = verdict_on(vehicle(seed, Layout.INVERTED_Y), limits=WIDE, instruments=EXACT)
    corrections = COARSE[:4]
    placed = [conversion_of(verdict.session, conversion) for conversion in CONVERSIONS]
    count, expected = brute_force(verdict, corrections, placed)
    result = search(verdict, [*corrections, *CONVERSIONS])
    assert result.searched == count
    names = {name for best in expected for name, _ in best.moves}
    assert names & {"tie rod off", "high arms"}, "no plan tests a change of layout"
    assert [done(plan.moves) for plan in result.plans] == [best.moves for best in expected]
    for plan in result.plans:
        moves = [(move.correction, move.rise) for move in plan.moves]
        steer, toe = peaks(moved_to(verdict.measured.linkage, moves), verdict.session.limits)
        assert plan.after.peak_steer == pytest.approx(steer, abs=np.radians(1e-6))
        assert plan.after.peak_toe_change == pytest.approx(toe, abs=np.radians(1e-6))


@pytest.mark.parametrize("layout", LAYOUTS)
def test_the_prediction_of_a_plan_agrees_with_scipy(layout):
    verdict = verdict_on(vehicle(3, layout))
    limits = verdict.session.limits
    plans = search(verdict, COARSE).plans
    assert plans
    for plan in plans:
        moves = [(move.correction, move.rise) for move in plan.moves]
        moved, after = moved_to(verdict.measured.linkage, moves), plan.after
        steer, toe = peaks(moved, limits)
        assert after.peak_steer == pytest.approx(steer, abs=np.radians(1e-7))
        assert after.peak_toe_change == pytest.approx(toe, abs=np.radians(1e-7))
        bar, link = both_slopes(moved)
        assert after.slopes == pytest.approx((bar, link), abs=1e-12)
        assert after.parallel == pytest.approx(link - bar, abs=1e-12)
        lengths = [
            np.linalg.norm(moved.pivot(f"{name}.frame") - moved.pivot(f"{name}.axle"))
            for name in ("track_bar", "drag_link")
        ]
        assert after.lengths == pytest.approx(lengths, abs=1e-9)
        assert after.length_ratio == pytest.approx(min(lengths) / max(lengths))
        assert after.effective == pytest.approx(out_of_square(moved), abs=1e-10)
        for walk, heave in zip(
            after.walk, (-verdict.session.droop, verdict.session.bump), strict=True
        ):
            assert walk == pytest.approx(steered(moved, heave, 0.0)[0], abs=1e-6)
        rise = crossing(moved) - crossing(verdict.measured.linkage)
        assert after.roll_centre_rise == pytest.approx(rise, abs=1e-6)


def crossing(linkage: Linkage) -> float:
    """Height at which the line of the track bar crosses the centre plane, mm."""
    (_, y_frame, z_frame), (_, y_axle, z_axle) = linkage.track_bar_frame, linkage.track_bar_axle
    return float(np.polyfit([y_frame, y_axle], [z_frame, z_axle], 1)[1])


@pytest.mark.slow
@pytest.mark.parametrize("layout", LAYOUTS)
def test_the_probability_of_a_plan_is_that_of_a_long_monte_carlo(layout):
    """Every geometry is drawn by scipy and computed at all 41 heaves (JCGM 101:2008)."""
    verdict = verdict_on(vehicle(3, layout))
    plans = list(search(verdict, COARSE).plans[:2])
    plans.append(search(verdict, [COARSE[5]]).plans[0])  # a plan with a low probability
    for plan in plans:
        for p, expected in zip(chances(plan), drawn_long(verdict, plan), strict=True):
            # Four standard deviations of the difference of a share of DRAWS and of LONG_DRAWS.
            variance = max(expected * (1 - expected), 1e-3) * (1 / DRAWS + 1 / LONG_DRAWS)
            assert p == pytest.approx(expected, abs=4 * np.sqrt(variance))


def chances(plan: Plan) -> tuple[float, ...]:
    """Probabilities of a plan: parallel, steer, toe, and all three together."""
    return astuple(plan.after.chances)


def drawn_long(verdict: Verdict, plan: Plan) -> tuple[float, ...]:
    """Shares of geometries within the limits: parallel, steer, toe, and all three together."""
    measured, limits, count = verdict.measured, verdict.session.limits, LONG_DRAWS
    draw = multivariate_normal(
        parameters(measured.linkage), measured.covariance, allow_singular=True
    )
    drawn = with_parameters(measured.linkage, draw.rvs(count, random_state=7))
    points = {name: drawn.pivot(name) for name in drawn.pivots}
    rng = np.random.default_rng(8)
    for move in plan.moves:
        pivot = move.correction.pivot
        rise = move.rise + rng.uniform(-SETTING, SETTING, count)
        for name in ("track_bar.frame", "drag_link.frame") if pivot == "ride_height" else (pivot,):
            points[name] = points[name] + rise[:, None] * [0.0, 0.0, 1.0]
    moved = drawn.with_pivots(points)
    bar = points["track_bar.frame"] - points["track_bar.axle"]
    link = points["drag_link.frame"] - points["drag_link.axle"]
    link = link * np.sign(link[:, 1:2])
    path = np.stack([np.zeros(count), -bar[:, 2] / bar[:, 1], np.ones(count)], axis=-1)
    sine = (path * link).sum(axis=1)
    sine /= np.linalg.norm(path, axis=1) * np.linalg.norm(link, axis=1)
    heaves = np.linspace(-limits.working_droop, limits.working_bump, 41)
    motion = motion_at(moved.with_heave_axis(), heaves)
    steer, toe = (np.abs(curve).max(axis=1) for curve in (motion.steer, motion.toe_in_change))
    error = rng.standard_normal(count)  # of the model: 5 % and 0.02 deg in quadrature
    steer = np.abs(steer + error * np.hypot(0.05 * steer, np.radians(0.02)))
    if toe.any():
        toe = np.abs(toe + error * np.hypot(0.05 * toe, np.radians(0.02)))
    within = np.stack(
        [
            np.abs(np.arcsin(sine)) <= limits.parallel,
            steer <= limits.steer,
            toe <= limits.toe_change,
        ]
    )
    return (*within.mean(axis=1).tolist(), float(within.all(axis=0).mean()))


@pytest.mark.parametrize(
    ("pivot", "rise"),
    [
        ("drag_link.frame", 3.0),
        ("drag_link.frame", -2.5),
        ("track_bar.axle", -3.0),
        ("track_bar.frame", 2.5),
        ("drag_link.axle", 2.25),
    ],
)
def test_the_search_offers_to_undo_a_wrong_move(pivot, rise):
    """Parallel links of one length do not steer, so undoing the wrong move leaves no steer."""
    wrong = raised(parallel_pair(), pivot, rise * INCH)
    verdict = verdict_on(wrong)
    assert verdict.overall == Overall.BUMP_STEER
    undo = Correction("undo it", pivot, tuple(-rise * INCH * part for part in (0.25, 0.5, 1, 1.5)))
    # Without other corrections of the pivot there is one way to undo the move.
    others = [correction for correction in COARSE if correction.pivot != pivot]
    plans = [plan for plan in search(verdict, [*others, undo]).plans if undo in plan.corrections]
    alone = next(plan for plan in plans if plan.corrections == (undo,))
    assert alone.moves[0].rise == pytest.approx(-rise * INCH)
    assert alone.after.p_true > SURE
    assert alone.after.peak_steer < np.radians(1e-6)
    assert abs(alone.after.parallel) < np.radians(1e-6)
    assert alone.after.length_ratio == pytest.approx(1.0)
