"""Edges; the values are held to scipy.stats in test_against_normal."""

import pytest

from core.statistics.distributions import chi_square_limit, chi_square_sf, normal_cdf


def test_far_out_nothing_is_lost():
    assert normal_cdf(-30.0) > 0.0
    assert normal_cdf(30.0) == 1.0
    assert normal_cdf(0.0) == 0.5


def test_with_nothing_redundant_there_is_no_limit_to_exceed():
    assert chi_square_limit(0) == 0.0


@pytest.mark.parametrize("degrees", [1, 2, 7, 30])
def test_a_limit_is_exceeded_at_its_own_risk(degrees):
    assert chi_square_sf(chi_square_limit(degrees), degrees) == pytest.approx(0.001)
    assert chi_square_sf(0.0, degrees) == 1.0
