"""Speed of the screens: python -m pytest tests/bench/test_screen_speed.py -s

Each test prints its times beside their bounds. None asserts a time, because times depend on the
machine and on its load.
"""

import time
from pathlib import Path
from statistics import median

from textual.events import Key

import wizard
from core.documents.document import without
from core.documents.record import read_document
from core.profiles.profile import load_profile
from core.verdict.assess import assess
from tests.wizard.tui.driving import draft_at, type_text
from wizard.commands import application
from wizard.locations import PROFILES
from wizard.tui.app import EvenarcApp
from wizard.tui.screens.travel import TravelScreen
from wizard.tui.screens.verdict import VerdictStep

LARGE, SMALL = (120, 40), (80, 24)

KEY_BOUND = 50
"""Longest time from a key to its painting, ms."""

FRAME_BOUND = 33
"""Longest time of a frame of the travel, ms: thirty frames a second."""


class WatchedApp(EvenarcApp):
    """An application that notes the time of each painting, and renders it as for a terminal."""

    CSS_PATH = Path(wizard.__file__).parent / "tui" / "evenarc.tcss"

    def __init__(self, files):
        super().__init__(application(files, [PROFILES]).surroundings)
        self.painted = []

    def _display(self, screen, renderable):
        if renderable is not None and not self._batch_count:
            if hasattr(renderable, "render_segments"):
                renderable.render_segments(self.console)
            else:
                list(self.console.render(renderable))
            self.painted.append((type(screen), time.perf_counter()))
        super()._display(screen, renderable)


async def from_key_to_verdict(files, size):
    """Time from the key on the last reading to the painted verdict, s."""
    path = draft_at(files, "readings.travel.droop")
    app = WatchedApp(files)
    async with app.run_test(size=size) as pilot:
        app.resume(path)
        await pilot.pause()
        await type_text(pilot, "5")
        await pilot.press("enter")
        await type_text(pilot, "118")
        await pilot.pause()
        begun = time.perf_counter()
        app.post_message(Key("enter", "\r"))
        while not (painted := [when for kind, when in app.painted if kind is VerdictStep]):
            await pilot.pause(0.001)
        await app.workers.wait_for_complete()
        return painted[0] - begun


async def test_time_from_the_last_key_to_the_painted_verdict(tmp_path):
    for size in (SMALL, LARGE):
        times = [await from_key_to_verdict(tmp_path / f"{size}{n}", size) for n in range(5)]
        print(
            f"\nkey to painted verdict at {size[0]}x{size[1]}: {median_and_best(times)} "
            f"(bound: {KEY_BOUND} ms)"
        )


async def test_time_of_a_frame_of_the_travel(tmp_path):
    document = without(read_document(draft_at(tmp_path, "verdict")), "draft")
    verdict = assess(document, lambda name: load_profile(name, [PROFILES]), draws=0)
    app = WatchedApp(tmp_path)
    async with app.run_test(size=LARGE) as pilot:
        screen = TravelScreen(verdict, "in", "FG-3")
        await app.push_screen(screen)
        await pilot.pause()
        state, times = screen.state.playing("heave"), []
        for _ in range(60):
            state = state.after(1 / 30)
            begun, count = time.perf_counter(), len(app.painted)
            screen.show(state)
            while len(app.painted) == count:
                await pilot.pause(0)
            times.append(app.painted[-1][1] - begun)
        print(
            f"\na frame of the travel, computed and painted: {median_and_best(times)} "
            f"(bound: {FRAME_BOUND} ms)"
        )


def median_and_best(times):
    """Median and best of some times (s), as text."""
    return f"{1e3 * median(times):.0f} ms, at best {1e3 * min(times):.0f} ms"
