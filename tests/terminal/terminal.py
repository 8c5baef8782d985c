"""A terminal with a program in it: keys go in, what stands on the screen comes out."""

import os
import signal
import sys
import sysconfig
import time
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

import pexpect
import pyte

Seen = TypeVar("Seen")

PATIENCE = 30.0
"""Seconds after which what was waited for will not come any more."""

KEYS = {
    "enter": "\r",
    "escape": "\x1b",
    "down": "\x1b[B",
    "up": "\x1b[A",
    "F2": "\x1bOQ",
    "F4": "\x1bOS",
    "F5": "\x1b[15~",
    "F6": "\x1b[17~",
    "F9": "\x1b[20~",
}
"""What a terminal sends for a key (xterm's control sequences)."""


def installed(command: str = "evenarc") -> list[str]:
    """The command as it was installed beside this Python, or out of the checkout."""
    script = Path(sysconfig.get_path("scripts")) / command
    return [str(script)] if script.exists() else [sys.executable, "-m", "wizard.commands"]


class Terminal:
    """A pseudo-terminal of some columns and rows with the wizard running in it."""

    def __init__(self, *arguments: str, size: tuple[int, int]) -> None:
        columns, rows = size
        self.screen = pyte.Screen(columns, rows)
        self.stream = pyte.ByteStream(self.screen)
        program, *before = installed()
        self.child = pexpect.spawn(
            program,
            [*before, *arguments],
            dimensions=(rows, columns),
            env={**os.environ, "TERM": "xterm-256color"},
            timeout=PATIENCE,
        )
        self.child.delaybeforesend = None

    @property
    def text(self) -> str:
        """Everything on the screen."""
        return "\n".join(line.rstrip() for line in self.screen.display)

    def press(self, *keys: str) -> None:
        """Press keys by name, or type text."""
        for key in keys:
            self.child.send(KEYS.get(key, key))

    def until(self, sees: Callable[[], Seen | None]) -> Seen:
        """Read what the program draws until something is seen there, and give that."""
        end = time.monotonic() + PATIENCE
        while time.monotonic() < end:
            if seen := sees():
                return seen
            try:
                self.stream.feed(self.child.read_nonblocking(1 << 16, timeout=0.05))
            except pexpect.TIMEOUT:
                continue
            except pexpect.EOF:
                break
        raise AssertionError(f"never came:\n{self.text}")

    def wait_for(self, words: str) -> None:
        """Wait until some words stand on the screen."""
        self.until(lambda: words in self.text)

    def kill(self) -> None:
        """As a battery that gives out."""
        self.child.kill(signal.SIGKILL)
        self.child.close(force=True)

    def ended(self) -> int:
        """Wait for the end of the program; its exit code."""
        self.child.expect(pexpect.EOF)
        self.child.close()
        return int(self.child.exitstatus)
