"""Advice on the next readings to take."""

import numpy as np
import pytest

from core.readings.reading import standard_uncertainty
from core.statistics.conformity import Conformity, magnitude_ruling
from core.uncertainty.next_reading import (
    MOST_READINGS,
    MOST_REPEATS,
    Advice,
    ContestedRuling,
    advice,
    variances_with_repeats,
)
from core.verdict.rules import parallel_angle, rules_of
from core.verdict.verdict import Overall, evaluate
from tests.geometries import (
    INSTRUMENTS,
    as_read,
    document_of,
    parallel_pair,
    session_of,
    true_readings,
)
from tests.measured import measure


def contested_parallel(linkage, readings=None):
    """The adjustment of a linkage, and the ruling on its parallel angle with its gradient."""
    session, adjustment, measured = measure(linkage, readings)
    gradient = measured.gradient(parallel_angle)[: 3 * len(adjustment.pivots)]
    return adjustment, ContestedRuling(rules_of(measured, session.limits).parallel, gradient)


@pytest.mark.parametrize("parallel_deg", [1.14, 1.15, 1.17, 1.82, 1.85])
def test_the_advised_repeats_settle_the_ruling_and_fewer_do_not(parallel_deg):
    """The repeats are entered with the values of the earlier readings."""
    linkage = parallel_pair(parallel_deg=parallel_deg)
    readings = true_readings(linkage)
    adjustment, contested = contested_parallel(linkage, readings)
    assert contested.ruling.verdict == Conformity.TOO_CLOSE
    advised = advice(adjustment, [contested])
    assert advised.readings

    def verdict_after(repeats):
        repeated = {name: [readings[name]] * (1 + repeats) for name in advised.readings}
        return contested_parallel(linkage, {**readings, **repeated})[1].ruling.verdict

    assert verdict_after(advised.repeats) != Conformity.TOO_CLOSE
    assert verdict_after(advised.repeats - 1) == Conformity.TOO_CLOSE


@pytest.mark.parametrize("parallel_deg", [1.1, 1.9])
def test_advice_settles_the_verdict_where_readings_disagree_and_repeats_equal_them(parallel_deg):
    """A repeat with the same residual pulls the value towards its reading."""
    rng = np.random.default_rng(5)
    linkage = parallel_pair(parallel_deg=parallel_deg)
    settled = 0
    for _ in range(60):
        readings = as_read(true_readings(linkage), rng)
        advised = evaluate(session_of(document_of(linkage, readings)), draws=0).advice
        if advised is None or not advised.readings:
            continue
        repeated = {name: [readings[name]] * (1 + advised.repeats) for name in advised.readings}
        after = evaluate(session_of(document_of(linkage, {**readings, **repeated})), draws=0)
        assert after.overall != Overall.TOO_CLOSE
        settled += 1
    assert settled >= 3


@pytest.mark.parametrize("parallel_deg", [1.25, 1.5, 1.75])
def test_near_the_limit_no_number_of_repeats_is_advised(parallel_deg):
    """The readings keep half of the sighting's variance and the floor, however often taken."""
    linkage = parallel_pair(parallel_deg=parallel_deg)
    readings = true_readings(linkage)
    adjustment, contested = contested_parallel(linkage, readings)
    assert advice(adjustment, [contested]) == Advice((), 0, settles=False)
    many_times = {
        name: [value] * 1000 if name.endswith("height") else value
        for name, value in readings.items()
    }
    assert contested_parallel(linkage, many_times)[1].ruling.verdict == Conformity.TOO_CLOSE


def test_the_variance_after_repeats_is_that_of_the_readings_with_repeats():
    linkage = parallel_pair()
    adjustment = measure(linkage).adjustment
    for item in adjustment.items:
        times = variances_with_repeats(item)
        for further in (1, 4, MOST_REPEATS):
            u = standard_uncertainty(item.reading.repeated(further), INSTRUMENTS)
            assert times[further - 1] == pytest.approx(u**2)


def test_repeats_change_no_station_that_was_not_taken():
    linkage = parallel_pair(parallel_deg=1.15)
    read = {name: value for name, value in true_readings(linkage).items() if "station" not in name}
    adjustment, contested = contested_parallel(linkage, read)
    advised = advice(adjustment, [contested])
    assert not any(name.endswith("station") for name in advised.readings)


def test_an_advice_that_fails_its_trial_is_not_given():
    adjustment, contested = contested_parallel(parallel_pair(parallel_deg=1.15))
    tried = []

    def settles(advised):
        tried.append(advised)
        return advised in (tried[0], *tried[2:3])  # the most work, and the second least

    assert advice(adjustment, [contested], settles) == tried[2]
    effort = [len(advised.readings) * advised.repeats for advised in tried]
    assert effort[1] <= effort[2] <= effort[0]


def test_where_the_most_work_settles_nothing_no_repeats_are_advised():
    adjustment, contested = contested_parallel(parallel_pair(parallel_deg=1.15))
    tried = []
    assert advice(adjustment, [contested], lambda each: bool(tried.append(each))).readings == ()
    assert len(tried) == 1


def test_few_readings_and_few_repeats_are_advised():
    rng = np.random.default_rng(3)
    advised = []
    for _ in range(20):
        linkage = parallel_pair(parallel_deg=rng.uniform(0.5, 2.5))
        adjustment, contested = contested_parallel(linkage, as_read(true_readings(linkage), rng))
        if contested.ruling.verdict == Conformity.TOO_CLOSE:
            advised.append(advice(adjustment, [contested]))
    assert any(each.readings for each in advised)
    for each in advised:
        assert len(each.readings) <= MOST_READINGS
        assert each.repeats <= MOST_REPEATS


def test_repeats_do_not_reduce_uncertainty_from_other_sources():
    adjustment, contested = contested_parallel(parallel_pair(parallel_deg=1.2))
    other_sources = magnitude_ruling(np.radians(1.2), np.radians(2.0), np.radians(1.5))
    advised = advice(adjustment, [ContestedRuling(other_sources, contested.gradient)])
    assert advised.readings == ()
