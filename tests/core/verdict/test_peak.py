"""The uncertainty of a peak: linear where the peak is clear, otherwise drawn."""

import numpy as np
import pytest

from core.verdict.curves import peak_values
from core.verdict.model_doubt import model_uncertainty
from core.verdict.peak import Method, peaks_of
from tests.geometries import LAYOUTS, as_read, parallel_pair, random_linkage, true_readings
from tests.measured import measure

DRAWS = 20_000


def measured_and_limits(linkage, readings=None):
    """The measured linkage of a session, and its limits."""
    session, _, measured = measure(linkage, readings)
    return measured, session.limits


def test_a_clear_peak_is_linear():
    measured, limits = measured_and_limits(parallel_pair(parallel_deg=4.0))
    steer, toe = peaks_of(measured, limits, DRAWS)
    assert steer.method == toe.method == Method.LINEAR
    assert steer.at_heave == -limits.working_droop
    assert steer.ruling.verdict == "out"
    assert (toe.ruling.value, toe.ruling.u, toe.ruling.verdict) == (0.0, 0.0, "within")


def test_a_curve_near_zero_is_drawn():
    """Its largest magnitude is never below zero: the uncertainty only makes it larger."""
    measured, limits = measured_and_limits(parallel_pair())
    steer, _ = peaks_of(measured, limits, DRAWS)
    assert steer.method == Method.MONTE_CARLO
    assert steer.ruling.value == pytest.approx(0.0, abs=1e-9)
    without_draws, _ = peaks_of(measured, limits, 0)
    assert without_draws.method == Method.LINEAR


def test_the_same_readings_always_give_the_same_ruling():
    linkage = parallel_pair(parallel_deg=1.6)
    first, second = (peaks_of(*measured_and_limits(linkage), 2000)[0].ruling for _ in range(2))
    assert (first.value, first.u, first.p_within) == (second.value, second.u, second.p_within)


@pytest.mark.parametrize("seed", range(30))
def test_a_clear_peak_has_the_uncertainty_of_drawn_geometries(seed):
    rng = np.random.default_rng(seed)
    linkage = random_linkage(
        rng, LAYOUTS[seed % 3], parallel=np.radians(rng.uniform(-3, 3)), same_side=True
    )
    measured, limits = measured_and_limits(linkage, as_read(true_readings(linkage), rng))
    drawn = measured.draw(DRAWS, seed)
    for peak, drawn_peaks, limit in zip(
        peaks_of(measured, limits, DRAWS),
        peak_values(drawn, limits),
        (limits.steer, limits.toe_change),
        strict=True,
    ):
        if peak.method == Method.LINEAR and peak.ruling.u:
            error = rng.standard_normal(DRAWS) * model_uncertainty(drawn_peaks)
            with_error = drawn_peaks + error
            assert peak.ruling.u == pytest.approx(with_error.std(), rel=0.03)
            assert peak.ruling.p_within == pytest.approx(np.mean(with_error <= limit), abs=0.015)
