"""Tests that drive the application by its keys wait for its event loop, not for time.

A pilot of Textual waits until the process uses little processor time, and for a second at most. On
a busy machine that is too early, on a quiet one it is too long. Here it waits until the event loop
has nothing left to run and the screen has nothing left to paint.
"""

import asyncio
from time import monotonic

import pytest
from textual import app, pilot
from textual._context import active_app

PATIENCE = 60.0
"""Time after which an application that never comes to rest fails its test, s."""


@pytest.fixture(autouse=True)
def waiting_for_the_event_loop(monkeypatch):
    """Let every pilot wait for the event loop."""
    monkeypatch.setattr(app, "wait_for_idle", wait_for_rest)
    monkeypatch.setattr(pilot, "wait_for_idle", wait_for_rest)


async def wait_for_rest(*_):
    """Wait until no task of the event loop can run and no screen is about to paint."""
    loop, end = asyncio.get_running_loop(), monotonic() + PATIENCE
    while monotonic() < end:
        await asyncio.sleep(0)
        if loop._ready:
            continue
        application = active_app.get()
        if not (is_about_to_paint(application) or is_at_work(application)):
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
