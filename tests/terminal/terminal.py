"""A terminal with the program in it: keys go in, the text of the screen comes out."""

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

Value = TypeVar("Value")

PATIENCE = 60.0
"""Time after which a test that waits in vain fails, s."""

KEYS = {
    "enter": "\r",
    "escape": "\x1b",
    "down": "\x1b[B",
    "up": "\x1b[A",
    "right": "\x1b[C",
    "Ctrl+L": "\x0c",
    "Ctrl+T": "\x14",
    "F2": "\x1bOQ",
    "F4": "\x1bOS",
    "F5": "\x1b[15~",
    "F6": "\x1b[17~",
    "F8": "\x1b[19~",
    "F9": "\x1b[20~",
}
"""Sequences that a terminal sends for keys (control sequences of xterm)."""


def installed(command: str = "evenarc") -> list[str]:
    """Command as installed beside this Python, or from the checkout."""
    script = Path(sysconfig.get_path("scripts")) / command
    return [str(script)] if script.exists() else [sys.executable, "-m", "wizard.commands"]


class Terminal:
    """A pseudo-terminal with the wizard running in it.

    Parameters
    ----------
    *arguments : str
        Arguments of the command.
    size : tuple of int
        Columns and rows.
    """

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
        """Text on the screen."""
        return "\n".join(line.rstrip() for line in self.screen.display)

    def press(self, *keys: str) -> None:
        """Press keys by name, or type text."""
        for key in keys:
            self.child.send(KEYS.get(key, key))

    def until(self, look: Callable[[], Value | None]) -> Value:
        """Read the output of the program until a look at it returns a value; return that."""
        end = time.monotonic() + PATIENCE
        while time.monotonic() < end:
            if value := look():
                return value
            try:
                self.stream.feed(self.child.read_nonblocking(1 << 16, timeout=0.05))
            except pexpect.TIMEOUT:
                continue
            except pexpect.EOF:
                break
        raise AssertionError(f"never came:\n{self.text}")

    def wait_for(self, words: str) -> None:
        """Wait until words are on the screen."""
        self.until(lambda: words in self.text)

    def kill(self) -> None:
        """Kill the program, as an empty battery does."""
        self.child.kill(signal.SIGKILL)
        self.child.close(force=True)

    def ended(self) -> int:
        """Wait for the end of the program, and return its exit code."""
        self.child.expect(pexpect.EOF)
        self.child.close()
        return int(self.child.exitstatus)
