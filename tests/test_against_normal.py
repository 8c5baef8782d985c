"""Probabilities of conformity and limits of chi-square checked against scipy.stats.

JCGM 106:2012, 7.4: for a normal distribution the probability of conformity with a two-sided
tolerance is Phi((upper - y) / u) - Phi((lower - y) / u).
"""

import numpy as np
import pytest
from scipy import stats

from core.statistics.conformity import decide, magnitude_ruling, probability_between
from core.statistics.distributions import chi_square_limit, chi_square_sf, normal_cdf


def test_probability_of_conformity():
    rng = np.random.default_rng(106)
    for _ in range(500):
        value, u = rng.normal(0, 2), rng.uniform(0.01, 2)
        low, high = np.sort(rng.normal(0, 2, 2))
        expected = stats.norm.cdf(high, value, u) - stats.norm.cdf(low, value, u)
        assert probability_between(value, u, low, high) == pytest.approx(expected, abs=1e-12)


def test_a_magnitude_has_a_limit_on_both_sides():
    for value, u, limit in ((1.2, 0.5, 1.5), (-1.2, 0.5, 1.5), (0.0, 2.0, 1.5), (-4.0, 0.7, 1.5)):
        expected = stats.norm.cdf(limit, value, u) - stats.norm.cdf(-limit, value, u)
        assert magnitude_ruling(value, u, limit).p_within == pytest.approx(expected, abs=1e-12)


def test_without_uncertainty_the_value_alone_decides():
    assert magnitude_ruling(1.5, 0.0, 1.5).p_within == 1.0
    assert magnitude_ruling(-1.5001, 0.0, 1.5).p_within == 0.0


@pytest.mark.parametrize(
    ("margin", "verdict"),
    [
        (1.6449, "within"),
        (1.6448, "too close to call"),
        (0.0, "too close to call"),
        (-1.6448, "too close to call"),
        (-1.6449, "out"),
    ],
)
def test_a_decision_falls_at_its_margin(margin, verdict):
    """One-sided 95 % of a normal distribution: 1.6449 standard uncertainties from the limit."""
    assert stats.norm.ppf(0.95) == pytest.approx(1.64485, abs=5e-6)
    u = 0.1
    assert decide(probability_between(5.0 - margin * u, u, -5.0, 5.0)) == verdict


def test_normal_distribution():
    for z in np.linspace(-8, 8, 81):
        assert normal_cdf(z) == pytest.approx(stats.norm.cdf(z), rel=1e-12)


@pytest.mark.parametrize("degrees", range(1, 31))
def test_chi_square(degrees):
    for x in (0.01, 0.5, 3.0, 12.0, 40.0):
        assert chi_square_sf(x, degrees) == pytest.approx(stats.chi2.sf(x, degrees), abs=1e-13)
    for risk in (0.001, 0.05):
        limit = chi_square_limit(degrees, risk)
        assert limit == pytest.approx(stats.chi2.isf(risk, degrees), rel=1e-10)


def test_published_values_of_chi_square():
    """Upper 0.1 % points, tables of the chi-square distribution (from memory): 10.828, 29.588."""
    assert chi_square_limit(1) == pytest.approx(10.828, abs=5e-4)
    assert chi_square_limit(10) == pytest.approx(29.588, abs=5e-4)
    assert chi_square_limit(0) == 0.0
