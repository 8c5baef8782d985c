"""Speed of home with 10,000 records: python -m pytest tests/bench/test_home_speed.py -s

The test prints its times beside their bounds. It asserts no time, because times depend on the
machine and on its load.
"""

import asyncio
import time

from textual.events import Key

from core.profiles.profile import load_profile
from core.shop.index import RecordIndex
from tests.many_records import make_records
from tests.wizard.tui.driving import app_in
from wizard.locations import PROFILES
from wizard.tui.widgets.sessions import Sessions

RECORDS = 10_000

TYPED = "MR-77 true"


def index_of(files):
    return RecordIndex(files, lambda name: load_profile(name, [PROFILES]))


def listing_times(files):
    """Times of the first look and of the last look of a new index, s."""
    begun = time.perf_counter()
    times = [time.perf_counter() - begun for _ in index_of(files).looks()]
    return times[0], times[-1]


async def longest_stall(files):
    """Longest time for which home answers nothing while it lists the sessions, s."""
    app, longest = app_in(files), 0.0
    async with app.run_test(size=(80, 24)) as pilot:
        while app.workers:
            begun = time.perf_counter()
            await asyncio.sleep(0.01)
            longest = max(longest, time.perf_counter() - begun - 0.01)
        await pilot.pause()
    return longest


async def filter_times(files):
    """Time from each typed key to the filtered list, s."""
    app, times = app_in(files), []
    async with app.run_test(size=(80, 24)) as pilot:
        await app.workers.wait_for_complete()
        await pilot.pause()
        for number, key in enumerate(TYPED, start=1):
            begun = time.perf_counter()
            app.post_message(Key("space" if key == " " else key, key))
            while app.screen.query_one(Sessions).sought != TYPED[:number]:
                await asyncio.sleep(0)
            times.append(time.perf_counter() - begun)
    return times


async def test_times_of_home_with_many_records(tmp_path):
    make_records(tmp_path, RECORDS)
    first, whole = listing_times(tmp_path)
    assert len(index_of(tmp_path).entries()) == RECORDS
    _, warm = listing_times(tmp_path)
    times = await filter_times(tmp_path)
    (tmp_path / ".evenarc-index.sqlite3").unlink()
    stall = await longest_stall(tmp_path)
    print(
        f"\n{RECORDS:,} records: first look {first:.2f} s (bound: 1 s), "
        f"all without an index {whole:.1f} s (bound: 25 s), with it {warm:.2f} s (bound: 0.5 s), "
        f"longest stall {1000 * stall:.0f} ms, "
        f"a key in the filter at most {1000 * max(times):.0f} ms (bound: 50 ms)"
    )
