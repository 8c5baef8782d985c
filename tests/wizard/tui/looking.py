"""Helpers that open the sessions of the invented workshop, and read the screen."""

import asyncio
from collections.abc import Callable
from pathlib import Path
from shutil import copytree, ignore_patterns
from time import monotonic

from textual.pilot import Pilot

from tests.demo import fg_1, fg_2, fg_3, fg_4, fg_5, fg_6, fg_7
from tests.wizard.tui.driving import app_in, settle
from wizard.locations import DEMO_SESSIONS
from wizard.tui.app import EvenarcApp

PATIENCE = 60.0
"""Time after which a test that waits in vain fails, s."""

SMALL, LARGE = (80, 24), (120, 40)
TALL = (80, 200)
"""Size of a terminal with room for a whole view."""

DEMO = {
    "as built": fg_1.AS_BUILT,
    "lifted": fg_1.LIFTED,
    "fixed": fg_1.FIXED,
    "measured": fg_1.MEASURED,
    "re-mounted": fg_2.RE_MOUNTED,
    "not closing": fg_3.NOT_CLOSING,
    "close": fg_4.CLOSE,
    "toe": fg_5.TOE,
    "worn joint": fg_6.WORN_JOINT,
    "leaf springs": fg_7.FORE_AFT,
}


def workshop(folder: Path) -> Path:
    """Files folder with a copy of the sessions of the invented workshop."""
    files = folder / "files"
    copytree(DEMO_SESSIONS, files, ignore=ignore_patterns("*.py", "__pycache__"))
    return files


def workshop_app(folder: Path) -> EvenarcApp:
    """The wizard over a copy of the sessions of the invented workshop."""
    return app_in(workshop(folder))


def path_of(app: EvenarcApp, name: str) -> Path:
    """File of a demo session in the files folder of the application."""
    return DEMO[name].path_in(app.files)


async def open_session(pilot: Pilot[None], name: str) -> None:
    """Open a demo session."""
    assert isinstance(pilot.app, EvenarcApp)
    pilot.app.open_record(path_of(pilot.app, name))
    await settle(pilot)


async def until(condition: Callable[[], bool]) -> None:
    """Wait until a condition holds; fail after a long time."""
    end = monotonic() + PATIENCE
    while not condition():
        assert monotonic() < end, "the condition never held"
        await asyncio.sleep(0.001)


def screen_text(pilot: Pilot[None]) -> str:
    """Text on the screen, row by row."""
    rows = pilot.app.screen._compositor.render_strips()
    return "\n".join("".join(segment.text for segment in row).rstrip() for row in rows)


def flowing(text: str) -> str:
    """Text without its line breaks."""
    return " ".join(text.split())
