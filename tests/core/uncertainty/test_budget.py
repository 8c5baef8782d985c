"""The uncertainty budget of a result."""

import numpy as np
import pytest

from core.uncertainty.budget import budget, largest_first
from core.verdict.rules import parallel_angle
from tests.geometries import parallel_pair, true_readings
from tests.measured import measure

LINKAGE = parallel_pair(parallel_deg=1.0)
HEIGHTS_AND_OFFSETS = {
    name: value
    for name, value in true_readings(LINKAGE).items()
    if not name.endswith(("station", "length", "slope")) and not name.startswith("brace")
}

MANY = 10_000
"""Repeats that leave a reading next to nothing but the uncertainty common to all of them."""


def gradient_of_parallel(adjustment, measured):
    """Derivative of the parallel angle with respect to the coordinates of the pivots."""
    return measured.gradient(parallel_angle)[: 3 * len(adjustment.pivots)]


def test_shares_add_up_and_come_largest_first():
    _, adjustment, measured = measure(LINKAGE, HEIGHTS_AND_OFFSETS)
    shares = budget(adjustment, gradient_of_parallel(adjustment, measured))
    assert sum(share.share for share in shares) == pytest.approx(1.0)
    assert [share.share for share in shares] == sorted((s.share for s in shares), reverse=True)
    # A slope depends mainly on heights; an offset counts with the square of the slope.
    assert all(share.reading.endswith("height") for share in shares[:4])


def test_a_share_is_the_loss_of_variance_without_the_uncertainty_of_its_reading():
    _, adjustment, measured = measure(LINKAGE, HEIGHTS_AND_OFFSETS)
    variance = measured.standard_uncertainty(measured.gradient(parallel_angle)) ** 2
    shares = budget(adjustment, gradient_of_parallel(adjustment, measured))
    by_name = {share.reading: share.share for share in shares}
    for item in adjustment.items:
        repeats = [HEIGHTS_AND_OFFSETS[item.name]] * MANY
        _, _, certain = measure(LINKAGE, {**HEIGHTS_AND_OFFSETS, item.name: repeats})
        left = certain.standard_uncertainty(certain.gradient(parallel_angle)) ** 2
        lost = by_name[item.name] * (1 - item.least_u**2 / item.u**2)
        assert lost == pytest.approx(1 - left / variance, abs=1e-3)


def test_a_reading_taken_more_often_has_a_smaller_share():
    name = "track_bar.frame.height"
    ratios, variances = [], []
    for repeats in (1, 4):
        readings = {**HEIGHTS_AND_OFFSETS, name: [HEIGHTS_AND_OFFSETS[name]] * repeats}
        _, adjustment, measured = measure(LINKAGE, readings)
        shares = budget(adjustment, gradient_of_parallel(adjustment, measured))
        by_name = {share.reading: share.share for share in shares}
        ratios.append(by_name[name] / by_name["track_bar.axle.height"])
        variances.append(next(item.u**2 for item in adjustment.items if item.name == name))
    assert ratios[1] / ratios[0] == pytest.approx(variances[1] / variances[0])
    assert ratios[1] < ratios[0]


def test_shares_that_differ_by_rounding_alone_keep_their_order():
    assert largest_first(np.array([0.25, 0.5, 0.25 + 1e-15])) == [1, 0, 2]
