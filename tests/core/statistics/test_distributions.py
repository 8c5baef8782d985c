"""Edge cases; test_against_normal checks the values."""

import pytest

from core.statistics.distributions import chi_square_limit, chi_square_sf, normal_cdf


def test_the_normal_distribution_keeps_its_far_tails():
    assert normal_cdf(-30.0) > 0.0
    assert normal_cdf(30.0) == 1.0
    assert normal_cdf(0.0) == 0.5


def test_the_limit_is_0_without_degrees_of_freedom():
    assert chi_square_limit(0) == 0.0


@pytest.mark.parametrize("degrees", [1, 2, 7, 30])
def test_a_limit_is_exceeded_with_its_probability(degrees):
    assert chi_square_sf(chi_square_limit(degrees), degrees) == pytest.approx(0.001)
    assert chi_square_sf(0.0, degrees) == 1.0
