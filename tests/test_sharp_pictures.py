"""Photographs in real terminals: sharp where the terminal says that it can, else half-blocks.

The test plays the terminal: it answers what the program asks. The answers are those of the
terminal graphics protocol of kitty, and of a terminal with sixels (DEC STD 070, device attributes).
"""

import re
import signal
import time

import pexpect
import pytest

from core.documents.record import read_document
from core.readings.photograph import CONTACTS, HUBS
from tests.terminal.terminal import PATIENCE, Terminal
from tests.wizard.tui.test_photographs import draft, picture_in
from wizard.phrases.mark_names import POINTS

pytestmark = pytest.mark.skipif(
    not hasattr(signal, "SIGKILL"), reason="this system has no pseudo-terminals"
)

GRAPHICS = re.compile(rb"\x1b_Gi=(\d+)[^\x1b]*a=q[^\x1b]*\x1b\\")
"""Question if the terminal has the graphics protocol."""

PICTURE_SENT = b"f=100"
SIXELS = b"\x1bP"
HALF_BLOCK = "▀".encode()


class PlayedTerminal(Terminal):
    """A terminal that answers what the program asks.

    Parameters
    ----------
    *arguments : str
    attributes : bytes
        Answer on its attributes; 4 among them stands for sixels.
    has_graphics : bool
        True if it has the graphics protocol.
    """

    def __init__(self, *arguments: str, attributes: bytes, has_graphics: bool) -> None:
        super().__init__(*arguments, size=(120, 40))
        self.attributes, self.has_graphics = attributes, has_graphics
        self.output = self.asked = b""

    def read_until(self, is_there) -> None:
        """Read and answer until a look at the output is true."""
        end = time.monotonic() + PATIENCE
        while not is_there(self.output):
            assert time.monotonic() < end, self.output[-2000:]
            try:
                read = self.child.read_nonblocking(1 << 16, timeout=0.05)
            except pexpect.TIMEOUT:
                continue
            self.output += read
            self.asked += read
            self.answer()

    def answer(self) -> None:
        """Answer the questions that were not answered yet."""
        if b"\x1b[c" in self.asked:
            self.child.send(b"\x1b[?" + self.attributes + b"c")
            self.asked = self.asked.replace(b"\x1b[c", b"")
        if question := GRAPHICS.search(self.asked):
            if self.has_graphics:
                self.child.send(b"\x1b_Gi=" + question[1] + b";OK\x1b\\")
            self.asked = self.asked.replace(question[0], b"")
        if b"\x1b[16t" in self.asked:
            self.child.send(b"\x1b[6;20;10t")
            self.asked = self.asked.replace(b"\x1b[16t", b"")


@pytest.mark.parametrize(
    ("attributes", "has_graphics", "shown", "not_shown"),
    [
        (b"62", True, PICTURE_SENT, SIXELS),
        (b"62;4", False, SIXELS, PICTURE_SENT),
        (b"62", False, HALF_BLOCK * 20, PICTURE_SENT),
    ],
    ids=["graphics", "sixels", "half-blocks"],
)
def test_a_photograph_is_as_sharp_as_the_terminal(
    tmp_path, attributes, has_graphics, shown, not_shown
):
    draft(tmp_path, [picture_in(tmp_path)])
    terminal = PlayedTerminal(
        "--files", str(tmp_path), attributes=attributes, has_graphics=has_graphics
    )
    terminal.read_until(lambda output: b"unfinished, go on" in output)
    terminal.press("enter")
    terminal.read_until(lambda output: b"frame end" in output and shown_in(output, shown))
    assert not_shown not in terminal.output
    terminal.press("right", "enter")
    terminal.read_until(lambda output: b"Mark the track bar's axle end" in output)
    terminal.press("F9")
    terminal.read_until(lambda output: b"is kept, unfinished" in output)
    terminal.press("F9")
    assert terminal.ended() == 0


def shown_in(output: bytes, shown: bytes) -> bool:
    """True if a picture was shown; colours between half-blocks do not count."""
    return shown in output or shown in re.sub(rb"\x1b\[[0-9;]*m", b"", output)


def test_a_picture_is_marked_by_keys_alone(tmp_path):
    path = draft(tmp_path, [picture_in(tmp_path)])
    terminal = Terminal("--files", str(tmp_path), size=(80, 24))
    terminal.wait_for("unfinished, go on")
    terminal.press("enter")
    seen = [f"{link}.{end}" for link in ("track_bar", "drag_link") for end in ("frame", "axle")]
    seen += [*HUBS, *CONTACTS]
    for point in seen:
        terminal.wait_for(f"Mark the {POINTS[point]}")
        terminal.press("right", "right", "down", "enter")
    terminal.wait_for("Mark the plumb line's top")
    terminal.press("F4")
    terminal.wait_for("Mark the plumb line's bottom")
    terminal.press("F8")
    terminal.wait_for("Mark the plumb line's top")
    terminal.kill()
    (photograph,) = read_document(path)["photographs"]
    assert list(photograph["marks"]) == seen
    places = list(photograph["marks"].values())
    assert places[0] != places[-1]
    terminal = Terminal("--files", str(tmp_path), size=(80, 24))
    terminal.wait_for("unfinished, go on")
    terminal.press("enter")
    terminal.wait_for("Mark the plumb line's top")
    terminal.press("g")
    terminal.wait_for("Pivots")
    terminal.press("F9")
    terminal.wait_for("is kept, unfinished")
    terminal.press("F9")
    assert terminal.ended() == 0
