"""Corrections that the trade uses against bump steer: common practice, no source.

The vehicles are invented. The corrections come from the delivered profiles.
"""

import pytest

from core.fix.search import search
from core.kinematics.raising import raised
from core.profiles.profile import load_profile
from core.verdict.verdict import Overall
from tests.geometries import INCH, parallel_pair
from tests.plans import verdict_on
from wizard.locations import PROFILES

SOUND = parallel_pair(slope_deg=5)
"""Parallel links alike in length: no bump steer (common practice, no source)."""


def plans_for(linkage, profile="coil-crossover"):
    """Plans for a vehicle, each as names of corrections with their rises in inches."""
    verdict = verdict_on(linkage)
    assert verdict.overall == Overall.BUMP_STEER
    plans = search(verdict, load_profile(profile, [PROFILES]).corrections).plans
    return [[(move.correction.name, move.rise / INCH) for move in plan.moves] for plan in plans]


def test_the_sound_vehicle_steers_true():
    assert verdict_on(SOUND).overall == Overall.STEERS_TRUE


@pytest.mark.parametrize("drop", [2.0, 3.0, 4.0])
def test_an_arm_with_too_much_drop_is_corrected_with_less_drop(drop):
    plans = plans_for(raised(SOUND, "drag_link.frame", -drop * INCH))
    less = [plan for plan in plans if [name for name, _ in plan] == ["pitman arm with less drop"]]
    assert less, plans
    assert less[0][0][1] == pytest.approx(drop, abs=1.0)  # a smaller rise can be enough
    assert not any(name == "pitman arm with more drop" for plan in plans for name, _ in plan)


def test_a_re_mounted_drag_link_is_answered_with_the_track_bar_or_undone():
    plans = plans_for(raised(SOUND, "drag_link.axle", 2.25 * INCH))
    singles = {plan[0][0]: plan[0][1] for plan in plans if len(plan) == 1}
    assert "track bar bracket raised at the axle" in singles
    assert singles["drag link re-mounted below the steering arm"] == -2.25
    assert singles["track bar bracket raised at the axle"] == pytest.approx(2.25, abs=1.0)
    first = {name for name, _ in plans[0]}
    assert first <= {
        "track bar bracket raised at the axle",
        "track bar bracket lowered at the frame",
        "drag link re-mounted below the steering arm",
        "pitman arm with less drop",
    }


def test_a_track_bar_dropped_alone_is_followed_by_the_pitman_arm():
    plans = plans_for(raised(SOUND, "track_bar.frame", -3 * INCH))
    singles = {plan[0][0]: plan[0][1] for plan in plans if len(plan) == 1}
    assert singles["pitman arm with more drop"] == pytest.approx(-3, abs=1.0)


def test_ride_height_does_not_make_links_parallel():
    """Ride height moves both frame ends alike, so the angle between the links stays."""
    verdict = verdict_on(raised(SOUND, "drag_link.axle", 2.25 * INCH))
    corrections = load_profile("coil-crossover", [PROFILES]).corrections
    (best,) = search(verdict, [each for each in corrections if each.name == "ride height"]).plans
    assert not best.steers_true
    now = abs(verdict.rules.parallel.value)
    assert abs(best.after.parallel) == pytest.approx(now, rel=0.1)


def test_no_move_corrects_links_from_opposite_sides():
    """The arcs of the two links add up, even where the links are flat and parallel."""
    linkage = parallel_pair(slope_deg=0)
    mirrored = {
        name: linkage.pivot(name) * [1, -1, 1] for name in ("track_bar.frame", "track_bar.axle")
    }
    verdict = verdict_on(linkage.with_pivots(mirrored))
    assert verdict.overall == Overall.BUMP_STEER
    corrections = load_profile("coil-crossover", [PROFILES]).corrections
    best = search(verdict, corrections).plans[0]
    assert not best.steers_true
    assert best.after.chances.steer < 0.05
