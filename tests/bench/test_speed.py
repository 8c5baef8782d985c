"""How fast the mathematics is: python -m pytest tests/bench

Prints what it measures beside what is aimed at, and asserts nothing about time: that depends on
the machine and on what else it does.
"""

import time

import numpy as np
import pytest

from core.adjustment.least_squares import adjust
from core.kinematics.motion import motion_at
from core.uncertainty.measured_linkage import measured_linkage
from core.verdict.curves import peak_values
from core.verdict.peak import SEED, peaks_of
from core.verdict.rules import rules_of
from core.verdict.verdict import DRAWS, evaluate
from tests.geometries import (
    LAYOUTS,
    as_read,
    document_of,
    random_linkage,
    session_of,
    true_readings,
)
from tests.test_against_root_finder import steered

HEAVES = np.linspace(-127.0, 101.6, 41)


@pytest.fixture(params=LAYOUTS)
def linkage(request):
    return random_linkage(
        np.random.default_rng(8), request.param, parallel=np.radians(1.0), same_side=True
    )


@pytest.fixture
def session(linkage):
    read = as_read(true_readings(linkage, datum=700.0), np.random.default_rng(8))
    return session_of(document_of(linkage, read))


@pytest.fixture
def say(capsys):
    def aloud(line):
        with capsys.disabled():
            print(f"\n  {line}", end="")

    return aloud


def best(work, rounds: int = 7, seconds: float = 0.05) -> float:
    """Seconds that one call takes: the best of some rounds, each long enough for the clock."""
    work()
    start = time.perf_counter()
    work()
    calls = max(1, int(seconds / (time.perf_counter() - start)))
    times = []
    for _ in range(rounds):
        start = time.perf_counter()
        for _ in range(calls):
            work()
        times.append((time.perf_counter() - start) / calls)
    return min(times)


def test_sweep_against_a_root_finder_point_by_point(benchmark, linkage, say):
    """The same distance equations at each heave, started from ride height."""

    def by_root_finder():
        return [steered(linkage, heave, 0.0) for heave in HEAVES]

    steer = [np.mean(unknown[1:]) for unknown in by_root_finder()]
    np.testing.assert_allclose(motion_at(linkage, HEAVES).steer, steer, atol=1e-7)
    ours = best(lambda: motion_at(linkage, HEAVES))
    theirs = best(by_root_finder, rounds=3)
    say(
        f"41-point sweep, {linkage.layout}: {ours * 1e6:.0f} us against {theirs * 1e3:.1f} ms, "
        f"{theirs / ours:.0f} times faster (aim: 1000)"
    )
    benchmark(motion_at, linkage, HEAVES)


def test_ten_thousand_geometries(benchmark, session, say):
    """Each at all 41 heaves, as the search for a fix and the Monte Carlo need them."""
    subject = measured_linkage(
        session, adjust(session.readings, session.instruments, session.layout)
    )
    many = subject.draw(10_000, 1)
    every = best(lambda: motion_at(many.with_heave_axis(), HEAVES), rounds=3)
    peaks = best(lambda: peak_values(many, session.limits), rounds=3)
    say(
        f"10,000 geometries x 41 heaves, {session.layout}: {every * 1e3:.0f} ms; "
        f"their peaks alone {peaks * 1e3:.0f} ms (aim: 200)"
    )
    benchmark.pedantic(lambda: motion_at(many.with_heave_axis(), HEAVES), rounds=3)


def test_adjustment_and_linear_propagation(benchmark, session, say):
    """What a key press in a reading sets off."""

    def key_press():
        adjustment = adjust(session.readings, session.instruments, session.layout)
        subject = measured_linkage(session, adjustment)
        return rules_of(subject, session.limits), peaks_of(subject, session.limits, 0)

    say(f"adjustment and propagation, {session.layout}: {best(key_press) * 1e3:.2f} ms (aim: 5)")
    benchmark(key_press)


def test_monte_carlo(benchmark, session, say):
    """Drawn geometries and their peaks, as where no one point of a curve is clearly its peak."""
    subject = measured_linkage(
        session, adjust(session.readings, session.instruments, session.layout)
    )

    def drawn():
        return peak_values(subject.draw(DRAWS, SEED), session.limits)

    taken = best(drawn, rounds=3)
    say(f"Monte Carlo of {DRAWS} draws, {session.layout}: {taken * 1e3:.0f} ms (aim: 150)")
    benchmark.pedantic(drawn, rounds=3)


def test_full_answer(benchmark, session, say):
    """Everything but the Monte Carlo: sweep, articulation, steering wheel, events, derivatives."""
    taken = best(lambda: evaluate(session, 0))
    say(f"full verdict, {session.layout}: {taken * 1e3:.2f} ms (aim: 3)")
    benchmark(evaluate, session, 0)
