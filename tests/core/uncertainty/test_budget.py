"""The uncertainty budget of a result."""

import numpy as np
import pytest

from core.uncertainty.budget import THE_MODEL, Part, budget, largest_first, part_of
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


def shares_of_parallel(measured):
    """Shares in the variance of the parallel angle."""
    return budget(measured, measured.gradient(parallel_angle))


def test_shares_add_up_and_come_largest_first():
    measured = measure(LINKAGE, HEIGHTS_AND_OFFSETS).measured
    shares = shares_of_parallel(measured)
    assert sum(share.share for share in shares) == pytest.approx(1.0)
    assert [share.share for share in shares] == sorted((s.share for s in shares), reverse=True)
    # A slope depends mainly on heights; an offset counts with the square of the slope.
    assert all(share.of.endswith("height") for share in shares[:4])


def test_a_share_is_the_loss_of_variance_without_the_uncertainty_of_its_reading():
    _, adjustment, measured = measure(LINKAGE, HEIGHTS_AND_OFFSETS)
    variance = measured.standard_uncertainty(measured.gradient(parallel_angle)) ** 2
    shares = shares_of_parallel(measured)
    by_name = {share.of: share.share for share in shares}
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
        shares = shares_of_parallel(measured)
        by_name = {share.of: share.share for share in shares}
        ratios.append(by_name[name] / by_name["track_bar.axle.height"])
        variances.append(next(item.u**2 for item in adjustment.items if item.name == name))
    assert ratios[1] / ratios[0] == pytest.approx(variances[1] / variances[0])
    assert ratios[1] < ratios[0]


def test_shares_that_differ_by_rounding_alone_keep_their_order():
    assert largest_first(np.array([0.25, 0.5, 0.25 + 1e-15])) == [1, 0, 2]


def test_the_model_is_a_source_of_its_own():
    measured = measure(LINKAGE, HEIGHTS_AND_OFFSETS).measured
    gradient = measured.gradient(parallel_angle)
    u = float(measured.standard_uncertainty(gradient))
    shares = budget(measured, gradient, u_model=u)
    assert shares[0].of == THE_MODEL
    assert part_of(shares, Part.MODEL) == pytest.approx(0.5)
    assert part_of(shares, Part.READINGS) == pytest.approx(0.5)
