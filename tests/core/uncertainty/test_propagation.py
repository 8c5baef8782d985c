import numpy as np
import pytest
from scipy import stats

from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at
from core.uncertainty.propagation import MeasuredLinkage, parameters, with_parameters
from core.verdict.rules import parallel_angle
from tests.geometries import LAYOUTS, parallel_pair, random_linkage


def measured(linkage: Linkage, u: float = 2.0) -> MeasuredLinkage:
    """All parameters equally sure, and tied to each other as those of one tape would be."""
    count = len(parameters(linkage))
    rng = np.random.default_rng(count)
    mixed = np.eye(count) + 0.3 * rng.normal(size=(count, count)) / count
    return MeasuredLinkage(linkage, u**2 * mixed @ mixed.T)


@pytest.fixture(params=LAYOUTS)
def subject(request):
    return measured(random_linkage(np.random.default_rng(1), request.param, same_side=True))


def test_parameters_go_in_and_come_out(subject):
    values = parameters(subject.linkage)
    np.testing.assert_array_equal(parameters(with_parameters(subject.linkage, values)), values)


def test_draws_have_the_mean_and_the_covariance(subject):
    """Both are matched, so that few draws already give a result that is as good as linear its u."""
    drawn = parameters(subject.draw(1000, 1))
    np.testing.assert_allclose(drawn.mean(axis=0), parameters(subject.linkage), atol=1e-9)
    np.testing.assert_allclose(np.cov(drawn.T, ddof=0), subject.covariance, atol=1e-9)


def test_draws_are_normal(subject):
    drawn = parameters(subject.draw(20_000, 1))
    for column, u in zip(drawn.T, np.sqrt(np.diag(subject.covariance)), strict=True):
        assert stats.kstest((column - column.mean()) / u, "norm").pvalue > 0.001


def test_draws_a_portion_at_a_time_are_the_same_draws(subject):
    whole = parameters(subject.draw(2500, 1))
    portions = [parameters(some) for some in subject.draw_portions(2500, 1)]
    np.testing.assert_array_equal(np.concatenate(portions), whole)


def test_the_same_seed_draws_the_same(subject):
    one, other = (parameters(subject.draw(100, 7)) for _ in range(2))
    np.testing.assert_array_equal(one, other)
    assert (parameters(subject.draw(100, 8)) != one).any()


def test_what_has_no_doubt_is_not_drawn_apart():
    linkage = parallel_pair()
    covariance = np.zeros((len(parameters(linkage)),) * 2)
    covariance[0, 0] = 4.0
    drawn = parameters(MeasuredLinkage(linkage, covariance).draw(1000, 1))
    assert drawn[:, 0].std() == pytest.approx(2.0)
    np.testing.assert_allclose(drawn[:, 1:] - parameters(linkage)[1:], 0.0, atol=1e-9)
    nothing = MeasuredLinkage(linkage, 0 * covariance).draw(1000, 1)
    np.testing.assert_allclose(parameters(nothing) - parameters(linkage), 0.0, atol=1e-12)


def test_linear_and_drawn_doubt_agree_where_they_should(subject):
    """The parallel angle and the steer at one heave are as good as linear in the pivots."""

    def steer(linkage):
        return motion_at(linkage, 30.0).steer

    drawn = subject.draw(100_000, 3)
    for result in (parallel_angle, steer):
        linear = subject.standard_uncertainty(subject.gradient(result))
        assert linear == pytest.approx(np.std(result(drawn)), rel=0.01)


def test_a_gradient_of_many_results(subject):
    heave = np.linspace(-50, 50, 5)
    gradient = subject.gradient(lambda linkage: motion_at(linkage.with_heave_axis(), heave).steer)
    assert gradient.shape == (len(parameters(subject.linkage)), 5)
    alone = subject.gradient(lambda linkage: motion_at(linkage, heave[4]).steer)
    np.testing.assert_allclose(gradient[:, 4], alone, atol=1e-12)
    assert subject.standard_uncertainty(gradient)[4] == pytest.approx(float(subject.standard_uncertainty(alone)))
