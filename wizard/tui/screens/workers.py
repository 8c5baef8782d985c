"""Work in a thread beside a screen, and its reports to that screen."""

import asyncio
from collections.abc import Callable
from contextlib import suppress
from typing import Any, NoReturn

from textual.screen import Screen
from textual.worker import Worker, get_current_worker


class WorkStopped(Exception):
    """The result of the work is no longer wanted."""


class Reporter:
    """Calls functions from a worker thread on the thread of a screen.

    The reporter drops a call without a word once the screen was left, once the program is ending,
    or once other work has taken the place of this work. The check is made on the thread of the
    screen, right before the call: the screen cannot be left between the two.

    Parameters
    ----------
    screen : Screen
    loop : asyncio.AbstractEventLoop
        The event loop of the application.
    worker : Worker
        The worker that reports.
    """

    def __init__(
        self, screen: Screen[Any], loop: asyncio.AbstractEventLoop, worker: Worker[Any]
    ) -> None:
        self.screen, self.loop, self.worker = screen, loop, worker

    def call(self, function: Callable[..., object], *arguments: object) -> None:
        """Queue a call for the screen, and return at once.

        The call goes through the queue of the screen: calls stay in order, and an exception in the
        function is a fault of the screen, not of the worker.
        """
        with suppress(RuntimeError):  # the event loop is closed: the program has ended
            self.loop.call_soon_threadsafe(
                self.screen.call_later, self.call_if_open, function, *arguments
            )

    def call_if_open(self, function: Callable[..., object], *arguments: object) -> None:
        """Call a function on the thread of the screen, unless nobody waits for it."""
        if not self.worker.is_cancelled and is_open(self.screen):
            function(*arguments)

    def stop_if_unwanted(self) -> None:
        """Raise WorkStopped once the worker was cancelled."""
        if self.worker.is_cancelled:
            raise WorkStopped


def run_beside(screen: Screen[Any], work: Callable[[Reporter], None]) -> None:
    """Run work in a thread beside a screen, in the place of earlier work of this screen.

    Parameters
    ----------
    screen : Screen
    work : callable
        Takes the reporter through which it speaks to the screen. An exception is raised again on
        the thread of the screen, unless the screen was left.
    """
    loop = asyncio.get_running_loop()

    def run() -> None:
        reporter = Reporter(screen, loop, get_current_worker())
        try:
            work(reporter)
        except WorkStopped:
            return
        except Exception as fault:
            reporter.call(raise_again, fault)

    screen.run_worker(run, thread=True, exclusive=True)


def is_open(screen: Screen[Any]) -> bool:
    """True while a screen is mounted and on the stack of a program that runs."""
    return screen.is_attached and screen.app.is_running and screen in screen.app.screen_stack


def raise_again(fault: Exception) -> NoReturn:
    """Raise a fault of the work on the thread of the screen."""
    raise fault
