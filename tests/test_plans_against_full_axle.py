"""Plans against a mechanical model of the whole axle: the first plan cures the true vehicle.

A plan is made from a record alone. Its moves are then done to the true vehicle of
`tests.full_axle`, which settles on its own bushes and kingpins.
"""

import numpy as np
import pytest

from core.fix.search import search
from core.verdict.assess import assess
from tests.full_axle.coverage import GUIDES, fleets, shipped_profile
from tests.full_axle.moves import peak_after
from tests.full_axle.records import PROFILES, STEER_LIMIT, documents

pytestmark = pytest.mark.slow

VEHICLES = 20
"""Vehicles of each guide. About half of them have bump steer and get a plan."""


def test_first_plans_reach_the_limit(capsys):
    peaks = np.array([peak for guide in GUIDES for peak in peaks_after_first_plans(guide)])
    reached = np.mean(peaks <= STEER_LIMIT)
    with capsys.disabled():
        print(
            f"\n{len(peaks)} first plans: {reached:.1%} reach the limit; "
            f"largest peak after them {np.degrees(peaks.max()):.2f} deg"
        )
    assert len(peaks) >= 10
    assert reached >= 0.9


def peaks_after_first_plans(guide) -> list[float]:
    """True peak steer, rad, of every vehicle with a plan that steers true, after its first plan."""
    rng = np.random.default_rng(7)
    peaks = []
    for vehicle in fleets(guide, VEHICLES, seed=7):
        corrections = shipped_profile(PROFILES[vehicle.layout]).corrections
        for i, document in enumerate(documents(vehicle, rng)):
            verdict = assess(document, shipped_profile)
            plans = [plan for plan in search(verdict, corrections).plans if plan.steers_true]
            if plans:
                moves = [(move.correction.pivot, move.rise) for move in plans[0].moves]
                peaks.append(float(peak_after(vehicle.at(i), moves)[0]))
    return peaks
