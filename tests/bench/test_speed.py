"""Speed of the mathematics and of the command line: python -m pytest tests/bench/test_speed.py

Each test prints its times beside their bounds. None asserts a time, because times depend on the
machine and on its load.
"""

import subprocess
import sys
import time
from dataclasses import replace

import numpy as np
import pytest

from core.adjustment.slips import slips_of
from core.kinematics.motion import motion_at
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
from tests.measured import measure_session
from tests.test_against_root_finder import steered
from wizard.locations import DEMO_SESSIONS

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
def report(capsys):
    """A function that prints a line although pytest captures the output."""

    def print_line(line):
        with capsys.disabled():
            print(f"\n  {line}", end="")

    return print_line


def best(work, rounds: int = 7, seconds: float = 0.05) -> float:
    """Time of one call, s: the best of some rounds, each long enough for the clock."""
    work()  # the first call may load something
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


def test_time_of_a_sweep_against_a_root_finder(benchmark, linkage, report):
    """The root finder solves the distance equations at each heave, starting from ride height."""

    def by_root_finder():
        return [steered(linkage, heave, 0.0) for heave in HEAVES]

    steer = [np.mean(unknown[1:]) for unknown in by_root_finder()]
    np.testing.assert_allclose(motion_at(linkage, HEAVES).steer, steer, atol=1e-7)
    closed_form = best(lambda: motion_at(linkage, HEAVES))
    root_finder = best(by_root_finder, rounds=3)
    report(
        f"41-point sweep, {linkage.layout}: {closed_form * 1e6:.0f} us against "
        f"{root_finder * 1e3:.1f} ms, {root_finder / closed_form:.0f} times faster (bound: 500)"
    )
    benchmark(motion_at, linkage, HEAVES)


def test_time_of_ten_thousand_geometries(benchmark, session, report):
    """Motion of each at 41 heaves, and their peaks alone as in the search and the Monte Carlo."""
    many = measure_session(session).measured.draw(10_000, 1)
    motion = best(lambda: motion_at(many.with_heave_axis(), HEAVES), rounds=3)
    peaks = best(lambda: peak_values(many, session.limits), rounds=3)
    report(
        f"10,000 geometries x 41 heaves, {session.layout}: {motion * 1e3:.0f} ms; "
        f"their peaks alone {peaks * 1e3:.0f} ms (bound: 200 ms)"
    )
    benchmark.pedantic(lambda: motion_at(many.with_heave_axis(), HEAVES), rounds=3)


def test_time_of_adjustment_and_linear_propagation(benchmark, session, report):
    """The computation that follows a key in a reading."""

    def key_press():
        measured = measure_session(session).measured
        return rules_of(measured, session.limits), peaks_of(measured, session.limits, 0)

    taken = best(key_press)
    report(f"adjustment and propagation, {session.layout}: {taken * 1e3:.2f} ms (bound: 5 ms)")
    benchmark(key_press)


def test_time_of_the_search_for_slips(benchmark, session, report):
    """The search where a height is 2 in wrong."""
    height = session.readings[0]
    wrong = replace(height, repeats=tuple(repeat + 50.8 for repeat in height.repeats))
    closure = measure_session(replace(session, readings=(wrong, *session.readings[1:])))
    readings, adjustment = closure.session.readings, closure.adjustment

    def search():
        return slips_of(readings, session.instruments, adjustment.pivots, adjustment.priors)

    assert search()
    report(f"search for slips, {session.layout}: {best(search, 3) * 1e3:.0f} ms (bound: 500 ms)")
    benchmark.pedantic(search, rounds=3)


def test_time_of_the_monte_carlo(benchmark, session, report):
    """Drawn geometries and their peaks, as for a curve without a clear peak."""
    measured = measure_session(session).measured

    def drawn():
        return peak_values(measured.draw(DRAWS, SEED), session.limits)

    taken = best(drawn, rounds=3)
    report(f"Monte Carlo of {DRAWS} draws, {session.layout}: {taken * 1e3:.0f} ms (bound: 150 ms)")
    benchmark.pedantic(drawn, rounds=3)


def test_time_of_a_verdict_without_draws(benchmark, session, report):
    """All results but the Monte Carlo."""
    taken = best(lambda: evaluate(session, 0))
    report(f"full verdict, {session.layout}: {taken * 1e3:.2f} ms (bound: 10 ms)")
    benchmark(evaluate, session, 0)


def test_time_of_check_against_the_import_of_numpy(report):
    """Both as whole processes: `evenarc check RECORD --json`, and Python importing numpy."""
    record = next(path for path in sorted(DEMO_SESSIONS.rglob("*.toml")))

    def process(*arguments):
        subprocess.run([sys.executable, *arguments], stdout=subprocess.DEVNULL, check=False)

    check = best(lambda: process("-m", "wizard.commands", "check", str(record), "--json"))
    numpy = best(lambda: process("-c", "import numpy"))
    report(f"check --json: {check:.2f} s, {check / numpy:.1f} times import numpy (bound: 2)")
