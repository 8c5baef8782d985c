"""Speed of the search and the bench: python -m pytest tests/bench/test_fix_speed.py -s

Each test prints its times beside their bounds. None asserts a time, because times depend on the
machine and on its load.
"""

import time
from functools import partial
from statistics import median

import pytest
from textual.events import Key

from core.fix.bench import Bench
from core.fix.search import search
from core.profiles.profile import load_profile
from core.verdict.verdict import Overall
from tests.bench.test_screen_speed import KEY_BOUND, WatchedApp, median_and_best
from tests.geometries import LAYOUTS
from tests.plans import vehicle, verdict_on
from wizard.locations import PROFILES
from wizard.tui.screens.bench import BenchScreen

BOUND = 1.5
"""Longest search of 100,000 combinations, s."""


def seconds(work, times):
    """Median time of several calls, s."""
    taken = []
    for _ in range(times):
        begun = time.perf_counter()
        work()
        taken.append(time.perf_counter() - begun)
    return median(taken)


@pytest.mark.parametrize(
    "profile", ["coil-crossover", "coil-tie-rod", "coil-inverted-y", "high-steer", "heavy-truck"]
)
def test_time_of_a_search(profile):
    known = load_profile(profile, [PROFILES])
    for seed in range(4):
        verdict = verdict_on(vehicle(seed, known.steering))
        if verdict.overall == Overall.BUMP_STEER:
            searched = search(verdict, known.corrections).searched
            taken = seconds(partial(search, verdict, known.corrections), 5)
            print(
                f"\n{profile} {seed}: {searched:,} combinations in {taken:.2f} s; 100,000 would "
                f"take {taken / searched * 100_000:.2f} s (bound: {BOUND} s)",
                end="",
            )


@pytest.mark.parametrize("layout", LAYOUTS)
def test_time_of_a_nudge_on_the_bench(layout):
    bench = Bench(verdict_on(vehicle(0, layout))).nudged("track_bar.axle", 10.0)
    print(f"\n{layout}: a nudge on the bench in {1000 * seconds(bench.plan, 20):.1f} ms", end="")


@pytest.mark.parametrize("size", [(80, 24), (120, 40)])
@pytest.mark.parametrize("layout", LAYOUTS)
async def test_time_from_a_key_on_the_bench_to_its_painting(layout, size, tmp_path):
    app = WatchedApp(tmp_path)
    async with app.run_test(size=size) as pilot:
        await app.push_screen(BenchScreen(verdict_on(vehicle(0, layout)), "FG-0", "in"))
        await pilot.pause()
        times = []
        for _ in range(40):
            begun, count = time.perf_counter(), len(app.painted)
            app.post_message(Key("up", None))
            while len(app.painted) == count:
                await pilot.pause(0)
            times.append(app.painted[-1][1] - begun)
        print(
            f"\n{layout}, key on the bench to its painting at {size[0]}x{size[1]}: "
            f"{median_and_best(times)} (bound: {KEY_BOUND} ms)"
        )
