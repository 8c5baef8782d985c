"""Work beside a screen: a report that comes after the screen was left is dropped in silence.

Nothing here depends on time. A test holds the work back until the screen was left, or it holds the
queue of the screen back until the report lies in it.
"""

import asyncio
import threading
from contextlib import asynccontextmanager
from types import SimpleNamespace

import pytest
from textual.screen import Screen

from core.verdict.assess import assess
from tests.wizard.tui.fixing import flow_at_fix
from tests.wizard.tui.looking import PATIENCE, SMALL, path_of, settle, workshop_app
from wizard.tui.screens import compare, plans, verdict, workers
from wizard.tui.screens.compare import CompareScreen
from wizard.tui.screens.filed_plans import FiledPlansScreen
from wizard.tui.screens.home import HomeScreen
from wizard.tui.screens.plans import PlansScreen
from wizard.tui.screens.plans_state import Searching
from wizard.tui.screens.verdict import VerdictScreen, VerdictStep
from wizard.tui.screens.workers import Reporter, WorkStopped
from wizard.views.two_sessions import two_sessions

pytestmark = pytest.mark.work_is_held

NAME = "re-mounted"


class HeldWork:
    """A slow function that waits until the test releases it.

    Parameters
    ----------
    result : callable
        Takes the arguments of the slow function, and returns its result or raises.
    """

    def __init__(self, result):
        self.result = result
        self.started = threading.Event()
        self.released = threading.Event()

    def __call__(self, *arguments, **options):
        self.started.set()
        assert self.released.wait(PATIENCE)
        return self.result(*arguments, **options)


async def wait_for(wait):
    """Wait for a worker thread: for an event, or for one more report."""
    assert await asyncio.to_thread(wait, timeout=PATIENCE)


def open_plans(app):
    """Open the plans of a draft."""
    app.push_screen(PlansScreen(flow_at_fix(app, NAME)))


def open_filed_plans(app):
    """Open the plans of a record."""
    flow = flow_at_fix(app, NAME)
    app.push_screen(FiledPlansScreen(path_of(app, NAME), flow.document, flow.profile))


def open_step(app):
    """Open the verdict of a draft."""
    app.push_screen(VerdictStep(flow_at_fix(app, NAME), None))


def open_record(app):
    """Open a record."""
    app.open_record(path_of(app, NAME))


def open_comparison(app):
    """Open the comparison of two records."""
    app.compare_both(path_of(app, "lifted"), path_of(app, "fixed"))


OPENERS = {
    "plans": open_plans,
    "filed plans": open_filed_plans,
    "verdict": open_step,
    "record": open_record,
    "comparison": open_comparison,
}
"""Every screen with a worker, and a function that opens it."""

REPORTS = (
    (PlansScreen, "show_progress"),
    (PlansScreen, "show_fault"),
    (PlansScreen, "show_result"),
    (VerdictScreen, "show_drawn"),
    (CompareScreen, "show_drawn"),
)
"""Functions that the workers call on their screens."""


@pytest.fixture
def work(monkeypatch):
    """The slow functions of every screen, held back; quick calls are made at once."""
    held = HeldWork(lambda *_, **__: None)

    def held_assess(document, profile_of, draws=None):
        if draws is None:
            held()
        return assess(document, profile_of, draws=0)

    def held_comparison(earlier, later, profile_of, draws=None):
        if draws is None:
            held()
        return two_sessions(earlier, later, profile_of, draws=0)

    monkeypatch.setattr(plans, "search", held)
    monkeypatch.setattr(verdict, "assess", held_assess)
    monkeypatch.setattr(compare, "two_sessions", held_comparison)
    yield held
    held.released.set()


@pytest.fixture
def reported(monkeypatch):
    """A count of the reports that lie in the queue of a screen; those to home do not count."""
    count, call = threading.Semaphore(0), Reporter.call

    def watched(reporter, function, *arguments):
        call(reporter, function, *arguments)
        if not isinstance(reporter.screen, HomeScreen):
            reporter.loop.call_soon_threadsafe(count.release)

    monkeypatch.setattr(Reporter, "call", watched)
    return count


@pytest.fixture
def written(monkeypatch):
    """Names of the functions that were called on the screens, which do nothing else here."""
    names = []
    for screen, name in REPORTS:

        def note(_screen, *_, name=name):
            names.append(name)

        monkeypatch.setattr(screen, name, note)
    return names


@asynccontextmanager
async def working(tmp_path, work, opener):
    """A screen whose work has begun and is held back."""
    app = workshop_app(tmp_path)
    async with app.run_test(size=SMALL) as pilot:
        opener(app)
        await wait_for(work.started.wait)
        yield pilot, app.screen


async def deliver_after_leaving(pilot, screen, work, reported):
    """Let the work report, leave the screen, and only then let the screen read the report."""
    gate = asyncio.Event()
    screen.call_later(gate.wait)
    work.released.set()
    await wait_for(reported.acquire)
    leaving = pilot.app.pop_screen()
    gate.set()
    await leaving
    await pilot.pause()


@pytest.mark.parametrize("opener", OPENERS.values(), ids=OPENERS)
class TestAScreenThatWasLeft:
    async def test_is_not_written_to_by_work_that_ends_later(
        self, tmp_path, work, reported, written, opener
    ):
        async with working(tmp_path, work, opener) as (pilot, screen):
            await pilot.press("escape")
            assert screen not in pilot.app.screen_stack
            work.released.set()
            await wait_for(reported.acquire)
            await pilot.pause()
        assert written == []

    async def test_is_not_written_to_by_a_report_that_waited_in_its_queue(
        self, tmp_path, work, reported, written, opener
    ):
        async with working(tmp_path, work, opener) as (pilot, screen):
            await deliver_after_leaving(pilot, screen, work, reported)
        assert written == []

    async def test_would_be_written_to_without_the_check(
        self, tmp_path, work, reported, written, opener, monkeypatch
    ):
        monkeypatch.setattr(workers, "is_open", lambda _screen: True)
        async with working(tmp_path, work, opener) as (pilot, screen):
            await deliver_after_leaving(pilot, screen, work, reported)
        assert written

    async def test_raises_nothing_when_the_program_ends_first(
        self, tmp_path, work, reported, written, opener
    ):
        async with working(tmp_path, work, opener) as (pilot, _):
            pilot.app.exit()
            work.released.set()
            await wait_for(reported.acquire)
        assert written == []

    async def test_is_written_to_while_it_is_open(self, tmp_path, work, reported, written, opener):
        async with working(tmp_path, work, opener) as (pilot, _):
            work.released.set()
            await settle(pilot)
            assert len(written) == 1


async def test_a_report_under_another_screen_is_shown(tmp_path, work, written):
    async with working(tmp_path, work, open_plans) as (pilot, screen):
        await pilot.press("f1")
        assert pilot.app.screen is not screen
        work.released.set()
        await settle(pilot)
        assert written == ["show_result"]


async def test_a_search_that_was_replaced_reports_nothing(tmp_path, work, reported, written):
    async with working(tmp_path, work, open_plans) as (pilot, screen):
        work.started.clear()
        screen.start_search(Searching())
        await wait_for(work.started.wait)
        work.released.set()
        await wait_for(reported.acquire)
        await wait_for(reported.acquire)
        await settle(pilot)
        assert written == ["show_result"]  # of the second search


@pytest.mark.parametrize("is_left", [True, False])
async def test_a_fault_in_the_work_is_raised_on_an_open_screen_alone(
    tmp_path, work, reported, is_left
):
    def fail(*_):
        raise ZeroDivisionError

    async def run():
        async with working(tmp_path, work, open_plans) as (pilot, _):
            if is_left:
                await pilot.press("escape")
            work.released.set()
            await wait_for(reported.acquire)
            await pilot.pause()

    work.result = fail
    if is_left:
        await run()
    else:
        with pytest.raises(ZeroDivisionError):
            await run()


async def test_work_that_is_not_wanted_any_more_stops(tmp_path, work):
    stopped = threading.Event()

    def ask_until_stopped(_verdict, _corrections, report_progress, _by):
        try:
            while True:
                report_progress(0.5)
        except WorkStopped:
            stopped.set()
            raise

    work.result = ask_until_stopped
    async with working(tmp_path, work, open_plans) as (pilot, _):
        await pilot.press("escape")
        work.released.set()
        await wait_for(stopped.wait)


def test_a_report_to_a_closed_event_loop_is_dropped():
    loop = asyncio.new_event_loop()
    loop.close()
    reporter = Reporter(Screen(), loop, SimpleNamespace(is_cancelled=False))
    reporter.call(pytest.fail)
