"""The doubt of a peak, by linear propagation where it is clear and drawn where it is not."""

import numpy as np
import pytest

from core.adjustment.least_squares import adjust
from core.uncertainty.measured_linkage import measured_linkage
from core.verdict.curves import peak_values
from core.verdict.peak import Method, peaks_of
from tests.geometries import (
    LAYOUTS,
    as_read,
    document_of,
    parallel_pair,
    random_linkage,
    session_of,
    true_readings,
)

DRAWS = 20_000


def subject_of(linkage, read=None):
    session = session_of(document_of(linkage, read or true_readings(linkage)))
    adjustment = adjust(session.readings, session.instruments, session.layout)
    return measured_linkage(session, adjustment), session.limits


def test_a_clear_peak_is_linear():
    subject, limits = subject_of(parallel_pair(parallel_deg=4.0))
    steer, toe = peaks_of(subject, limits, DRAWS)
    assert steer.method == toe.method == Method.LINEAR
    assert steer.at_heave == -limits.working_droop
    assert steer.ruling.verdict == "out"
    assert (toe.ruling.value, toe.ruling.u, toe.ruling.verdict) == (0.0, 0.0, "within")


def test_a_curve_near_zero_is_drawn():
    """Its largest magnitude is never below zero: the doubt makes it larger, not smaller."""
    subject, limits = subject_of(parallel_pair())
    steer, _ = peaks_of(subject, limits, DRAWS)
    assert steer.method == Method.MONTE_CARLO
    assert steer.ruling.value == pytest.approx(0.0, abs=1e-9)
    quick, _ = peaks_of(subject, limits, 0)
    assert quick.method == Method.LINEAR


def test_the_same_readings_always_give_the_same_answer():
    one, other = (
        peaks_of(*subject_of(parallel_pair(parallel_deg=1.6)), 2000)[0].ruling for _ in range(2)
    )
    assert (one.value, one.u, one.p_within) == (other.value, other.u, other.p_within)


@pytest.mark.parametrize("seed", range(30))
def test_both_ways_agree_wherever_the_linear_one_is_taken(seed):
    rng = np.random.default_rng(seed)
    linkage = random_linkage(
        rng, LAYOUTS[seed % 3], parallel=np.radians(rng.uniform(-3, 3)), same_side=True
    )
    subject, limits = subject_of(linkage, as_read(true_readings(linkage), rng))
    drawn = subject.draw(DRAWS, seed)
    for peak, by_draws, limit in zip(
        peaks_of(subject, limits, DRAWS),
        peak_values(drawn, limits),
        (limits.steer, limits.toe_change),
        strict=True,
    ):
        if peak.method == Method.LINEAR and peak.ruling.u:
            assert peak.ruling.u == pytest.approx(by_draws.std(), rel=0.03)
            assert peak.ruling.p_within == pytest.approx(np.mean(by_draws <= limit), abs=0.01)
