"""Looking at screens: the invented workshop's sessions opened, and what stands on the page."""

from pathlib import Path
from shutil import copytree, ignore_patterns

from textual.pilot import Pilot

from tests.demo import fg_1, fg_2, fg_3, fg_4, fg_5, fg_6
from tests.wizard.tui.driving import app_in
from wizard.locations import DEMO_SESSIONS
from wizard.tui.app import EvenarcApp

SMALL, LARGE = (80, 24), (120, 40)
TALL = (80, 200)
"""Room for a whole page."""

DEMO = {
    "as built": fg_1.AS_BUILT,
    "lifted": fg_1.LIFTED,
    "fixed": fg_1.FIXED,
    "re-mounted": fg_2.RE_MOUNTED,
    "not closing": fg_3.NOT_CLOSING,
    "close": fg_4.CLOSE,
    "toe": fg_5.TOE,
    "worn joint": fg_6.WORN_JOINT,
}


def workshop(folder: Path) -> Path:
    """A files folder with the invented workshop's sessions."""
    files = folder / "files"
    copytree(DEMO_SESSIONS, files, ignore=ignore_patterns("*.py", "__pycache__"))
    return files


def workshop_app(folder: Path) -> EvenarcApp:
    """The wizard over a copy of the invented workshop's sessions."""
    return app_in(workshop(folder))


def path_of(app: EvenarcApp, name: str) -> Path:
    """Where a demo session lies in the app's files."""
    return DEMO[name].path_in(app.files)


async def settle(pilot: Pilot[None]) -> None:
    """Until everything is shown and the doubt has been drawn."""
    await pilot.pause()
    await pilot.app.workers.wait_for_complete()
    await pilot.pause()


async def open_session(pilot: Pilot[None], name: str) -> None:
    """Open a demo session."""
    assert isinstance(pilot.app, EvenarcApp)
    pilot.app.open_record(path_of(pilot.app, name))
    await settle(pilot)


def shown(pilot: Pilot[None]) -> str:
    """What stands on the screen, row by row."""
    rows = pilot.app.screen._compositor.render_strips()
    return "\n".join("".join(segment.text for segment in row).rstrip() for row in rows)


def flowing(text: str) -> str:
    """A text without its line breaks."""
    return " ".join(text.split())
