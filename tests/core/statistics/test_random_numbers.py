"""Random numbers, checked by scipy's tests of distributions."""

import numpy as np
from scipy import stats

from core.statistics.random_numbers import standard_normal, uniform


def test_uniform_numbers_are_uniform():
    drawn = uniform(100_000, 1)
    assert drawn.min() > 0.0
    assert drawn.max() <= 1.0
    assert stats.kstest(drawn, "uniform").pvalue > 0.01


def test_normal_numbers_are_normal_and_independent():
    drawn = standard_normal((4, 50_000), 3)
    assert stats.kstest(drawn.ravel(), "norm").pvalue > 0.01
    np.testing.assert_allclose(np.cov(drawn), np.eye(4), atol=0.02)
    # Box and Muller make two numbers from each pair of uniform numbers; the two are independent.
    halves = drawn.reshape(2, -1)
    assert abs(stats.spearmanr(*halves).statistic) < 0.01
    assert abs(stats.spearmanr(*np.abs(halves)).statistic) < 0.01


def test_a_seed_always_draws_the_same_numbers():
    np.testing.assert_array_equal(standard_normal((3, 5), 7), standard_normal((3, 5), 7))
    assert (standard_normal((3, 5), 7) != standard_normal((3, 5), 8)).all()


def test_an_odd_count_is_drawn():
    assert standard_normal((1, 1), 1).shape == (1, 1)
    assert standard_normal((3, 3), 1).shape == (3, 3)
