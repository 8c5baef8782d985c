"""The three rules, by linear propagation."""

import numpy as np
import pytest

from core.statistics.conformity import Conformity
from core.verdict.rules import length_ratio, parallel_angle, rules_of, slopes
from tests.geometries import parallel_pair
from tests.measured import measure


def rulings_on(linkage):
    """The rules of a linkage with every true reading."""
    session, _, measured = measure(linkage)
    return rules_of(measured, session.limits)


def test_parallel_is_the_slope_of_the_drag_link_less_the_slope_of_the_track_bar():
    linkage = parallel_pair(slope_deg=8.0, parallel_deg=-2.0)
    np.testing.assert_allclose(np.degrees(slopes(linkage)), [8.0, 6.0])
    assert np.degrees(parallel_angle(linkage)) == pytest.approx(-2.0)
    assert np.degrees(rulings_on(linkage).parallel.value) == pytest.approx(-2.0)


@pytest.mark.parametrize(
    ("parallel_deg", "verdict"),
    [
        (0.0, Conformity.WITHIN),
        (-4.0, Conformity.OUT),
        (1.6, Conformity.TOO_CLOSE),
        (-1.4, Conformity.TOO_CLOSE),
    ],
)
def test_parallel_has_a_limit_on_both_sides(parallel_deg, verdict):
    assert rulings_on(parallel_pair(parallel_deg=parallel_deg)).parallel.verdict == verdict


@pytest.mark.parametrize(
    ("slope_deg", "verdict"),
    [(2.0, Conformity.WITHIN), (-15.0, Conformity.OUT), (10.0, Conformity.TOO_CLOSE)],
)
def test_both_links_at_one_slope_have_one_verdict(slope_deg, verdict):
    rules = rulings_on(parallel_pair(slope_deg=slope_deg))
    assert rules.flat_track_bar.verdict == rules.flat_drag_link.verdict == rules.flat == verdict


def test_flat_has_the_verdict_of_the_steeper_link():
    rules = rulings_on(parallel_pair(slope_deg=2.0, parallel_deg=15.0))
    assert (rules.flat_track_bar.verdict, rules.flat_drag_link.verdict) == (
        Conformity.WITHIN,
        Conformity.OUT,
    )
    assert rules.flat == Conformity.OUT


@pytest.mark.parametrize("run_ratio", [0.8, 1 / 0.8])
def test_length_is_the_ratio_of_the_shorter_link_to_the_longer(run_ratio):
    linkage = parallel_pair(run_ratio=run_ratio)
    assert length_ratio(linkage) == pytest.approx(0.8)
    ruling = rulings_on(linkage).length
    assert ruling.value == pytest.approx(0.8)
    assert ruling.verdict == Conformity.OUT


def test_links_of_equal_length_are_within():
    ruling = rulings_on(parallel_pair(run_ratio=1.0)).length
    assert ruling.value == pytest.approx(1.0)
    assert ruling.verdict == Conformity.WITHIN
    assert 0 < ruling.u < 0.01
