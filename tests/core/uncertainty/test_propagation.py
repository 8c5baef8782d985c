"""Linear propagation and drawn geometries of a measured linkage."""

import numpy as np
import pytest
from scipy import stats

from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at
from core.uncertainty.propagation import MeasuredLinkage, parameters, with_parameters
from core.verdict.rules import parallel_angle
from tests.geometries import LAYOUTS, parallel_pair, random_linkage
from tests.measured import with_covariance


def correlated(linkage: Linkage, u: float = 2.0) -> MeasuredLinkage:
    """A measured linkage with correlated parameters; `u` is that of the pivots, mm."""
    count = len(parameters(linkage))
    rng = np.random.default_rng(count)
    mixed = np.eye(count) + 0.3 * rng.normal(size=(count, count)) / count
    scale = u * np.where(np.arange(count) < 3 * len(linkage.pivots), 1.0, 1e-3)
    return with_covariance(linkage, (mixed @ mixed.T) * np.outer(scale, scale))


@pytest.fixture(params=LAYOUTS)
def measured(request):
    return correlated(random_linkage(np.random.default_rng(1), request.param, same_side=True))


def test_parameters_set_in_a_linkage_are_read_back(measured):
    values = parameters(measured.linkage)
    np.testing.assert_array_equal(parameters(with_parameters(measured.linkage, values)), values)


def test_draws_have_exactly_the_mean_and_the_covariance(measured):
    drawn = parameters(measured.draw(1000, 1))
    np.testing.assert_allclose(drawn.mean(axis=0), parameters(measured.linkage), atol=1e-9)
    np.testing.assert_allclose(np.cov(drawn.T, ddof=0), measured.covariance, atol=1e-9)


def test_draws_are_normal(measured):
    drawn = parameters(measured.draw(20_000, 1))
    for column, u in zip(drawn.T, np.sqrt(np.diag(measured.covariance)), strict=True):
        assert stats.kstest((column - column.mean()) / u, "norm").pvalue > 0.001


def test_portions_of_draws_are_the_same_draws(measured):
    drawn = parameters(measured.draw(2500, 1))
    portions = [parameters(portion) for portion in measured.draw_portions(2500, 1)]
    np.testing.assert_array_equal(np.concatenate(portions), drawn)


def test_the_same_seed_draws_the_same(measured):
    first, second = (parameters(measured.draw(100, 7)) for _ in range(2))
    np.testing.assert_array_equal(first, second)
    assert (parameters(measured.draw(100, 8)) != first).any()


def test_a_parameter_without_uncertainty_does_not_vary():
    linkage = parallel_pair()
    covariance = np.zeros((len(parameters(linkage)),) * 2)
    covariance[0, 0] = 4.0
    drawn = parameters(with_covariance(linkage, covariance).draw(1000, 1))
    assert drawn[:, 0].std() == pytest.approx(2.0)
    np.testing.assert_allclose(drawn[:, 1:] - parameters(linkage)[1:], 0.0, atol=1e-9)
    certain = with_covariance(linkage, 0 * covariance).draw(1000, 1)
    np.testing.assert_allclose(parameters(certain) - parameters(linkage), 0.0, atol=1e-12)


def test_linear_and_drawn_uncertainty_agree_for_nearly_linear_results(measured):
    """The parallel angle and the steer at one heave are nearly linear in the pivots."""

    def steer(linkage):
        return motion_at(linkage, 30.0).steer

    drawn = measured.draw(100_000, 3)
    for result in (parallel_angle, steer):
        linear = measured.standard_uncertainty(measured.gradient(result))
        assert linear == pytest.approx(np.std(result(drawn)), rel=0.01)


def test_a_gradient_of_several_results_has_the_gradient_of_each(measured):
    heave = np.linspace(-50, 50, 5)
    gradient = measured.gradient(lambda linkage: motion_at(linkage.with_heave_axis(), heave).steer)
    assert gradient.shape == (len(parameters(measured.linkage)), 5)
    alone = measured.gradient(lambda linkage: motion_at(linkage, heave[4]).steer)
    np.testing.assert_allclose(gradient[:, 4], alone, atol=1e-12)
    u = measured.standard_uncertainty(gradient)
    assert u[4] == pytest.approx(float(measured.standard_uncertainty(alone)))
