import numpy as np
import pytest

from core.adjustment.least_squares import adjust
from core.statistics.conformity import Conformity
from core.uncertainty.measured_linkage import measured_linkage
from core.verdict.rules import length_ratio, parallel_angle, rules_of, slopes
from tests.geometries import document_of, parallel_pair, session_of, true_readings


def ruled(linkage):
    session = session_of(document_of(linkage, true_readings(linkage)))
    subject = measured_linkage(
        session, adjust(session.readings, session.instruments, session.layout)
    )
    return rules_of(subject, session.limits)


def test_parallel_is_the_drag_links_slope_less_the_track_bars():
    linkage = parallel_pair(slope_deg=8.0, parallel_deg=-2.0)
    np.testing.assert_allclose(np.degrees(slopes(linkage)), [8.0, 6.0])
    assert np.degrees(parallel_angle(linkage)) == pytest.approx(-2.0)
    assert np.degrees(ruled(linkage).parallel.value) == pytest.approx(-2.0)


@pytest.mark.parametrize(
    ("parallel_deg", "verdict"),
    [
        (0.0, Conformity.WITHIN),
        (-4.0, Conformity.OUT),
        (1.6, Conformity.TOO_CLOSE),
        (-1.4, Conformity.TOO_CLOSE),
    ],
)
def test_parallel_is_held_on_both_sides(parallel_deg, verdict):
    assert ruled(parallel_pair(parallel_deg=parallel_deg)).parallel.verdict == verdict


@pytest.mark.parametrize(
    ("slope_deg", "verdict"),
    [(2.0, Conformity.WITHIN), (-15.0, Conformity.OUT), (10.0, Conformity.TOO_CLOSE)],
)
def test_flat_is_as_good_as_the_worse_link(slope_deg, verdict):
    rules = ruled(parallel_pair(slope_deg=slope_deg))
    assert rules.flat_track_bar.verdict == rules.flat_drag_link.verdict == rules.flat == verdict


def test_flat_with_one_link_steep():
    rules = ruled(parallel_pair(slope_deg=2.0, parallel_deg=15.0))
    assert (rules.flat_track_bar.verdict, rules.flat_drag_link.verdict) == (
        Conformity.WITHIN,
        Conformity.OUT,
    )
    assert rules.flat == Conformity.OUT


@pytest.mark.parametrize("run_ratio", [0.8, 1 / 0.8])
def test_length_is_the_shorter_to_the_longer_whichever_that_is(run_ratio):
    linkage = parallel_pair(run_ratio=run_ratio)
    assert length_ratio(linkage) == pytest.approx(0.8)
    ruling = ruled(linkage).length
    assert ruling.value == pytest.approx(0.8)
    assert ruling.verdict == Conformity.OUT


def test_links_of_equal_length_are_within():
    ruling = ruled(parallel_pair(run_ratio=1.0)).length
    assert ruling.value == pytest.approx(1.0)
    assert ruling.verdict == Conformity.WITHIN
    assert 0 < ruling.u < 0.01
