"""Tests that drive the application by its keys wait for its event loop, not for time.

A pilot of Textual waits until the process uses little processor time, and for a second at most. On
a busy machine that is too early, on a quiet one it is too long. Here it waits until the event loop
has nothing left to run, no worker is at work and the screen has nothing left to paint. A test that
holds work back on purpose is marked `work_is_held`; its pilot does not wait for workers.

Many tests need the plans for the same few vehicles, so each of these searches is made once.
"""

import asyncio
import pickle
from functools import partial
from time import monotonic

import pytest
from textual import app, pilot
from textual._context import active_app

from core.fix.search import search
from wizard.reports import fix, order
from wizard.tui.screens import plans

PATIENCE = 60.0
"""Time after which an application that never comes to rest fails its test, s."""


@pytest.fixture(autouse=True)
def waiting_for_the_event_loop(request, monkeypatch):
    """Let every pilot wait for the event loop."""
    is_held = request.node.get_closest_marker("work_is_held") is not None
    wait = partial(wait_for_rest, for_work=not is_held)
    monkeypatch.setattr(app, "wait_for_idle", wait)
    monkeypatch.setattr(pilot, "wait_for_idle", wait)


@pytest.fixture(autouse=True)
def searching_once(monkeypatch):
    """Search once for the plans for a vehicle."""
    for module in (plans, fix, order):
        monkeypatch.setattr(module, "search", searched_once)


SEARCHED = {}
"""Result of every search so far, by what it was for."""


def searched_once(verdict, corrections, progress=None, by="parts"):
    """The result of the search of `core.fix.search`, from memory where it was made before."""
    key = pickle.dumps((verdict.session, verdict.measured, tuple(corrections), by))
    if key not in SEARCHED:
        SEARCHED[key] = search(verdict, corrections, progress, by)
    elif progress is not None:
        progress(1.0)
    return SEARCHED[key]


async def wait_for_rest(*_, for_work):
    """Wait until no task of the event loop can run and no screen is about to paint."""
    loop, end = asyncio.get_running_loop(), monotonic() + PATIENCE
    while monotonic() < end:
        await asyncio.sleep(0)
        if loop._ready:
            continue
        application = active_app.get()
        if not is_about_to_paint(application) and not (for_work and is_at_work(application)):
            return
        await asyncio.sleep(0.001)  # the timer of the screen paints, or a worker ends
    raise AssertionError("the application never comes to rest")


def is_about_to_paint(application):
    """True if the timer of a screen runs, which paints what has changed."""
    screens = application.screen_stack if application.is_running else []
    return any(screen._update_timer._active.is_set() for screen in screens)


def is_at_work(application):
    """True if a worker runs, whose report changes the screen."""
    return not all(worker.is_finished for worker in application.workers)
