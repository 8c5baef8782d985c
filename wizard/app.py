"""The Textual application: which screen follows which."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from rich.text import Text
from textual.app import App

from core.document import Document, value_at
from core.entries import ProfileError
from core.plain_text import plain
from core.profile import Profile, load_profile
from core.record import RecordError, read_document
from core.record_list import list_records
from wizard import drafts
from wizard.flow import Flow
from wizard.screens.home import HomeScreen
from wizard.screens.measure import MeasureScreen
from wizard.theme import EVENARC
from wizard.trouble import write_down


class EvenarcApp(App[None]):
    """The wizard.

    Parameters
    ----------
    files : Path
        The folder of records and drafts.
    profile_folders : sequence of Path
        Where profiles are looked for, a shop's own first.
    measures_at_once : bool
        Begin a new session instead of showing the first page.
    notice : str
        A line for the first page.
    """

    CSS_PATH = "evenarc.tcss"
    TITLE = "Evenarc"
    ENABLE_COMMAND_PALETTE = False
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (100, "-wide")]
    VERTICAL_BREAKPOINTS = [(0, "-low"), (32, "-high")]
    BINDINGS = [("ctrl+q", "quit", "quit")]

    def __init__(
        self,
        files: Path,
        profile_folders: Sequence[Path],
        measures_at_once: bool = False,
        notice: str = "",
    ) -> None:
        super().__init__()
        self.files = files
        self.profile_folders = tuple(profile_folders)
        self.measures_at_once = measures_at_once
        self.first_notice = notice

    def on_mount(self) -> None:
        """The first page, and on it what was asked for."""
        self.register_theme(EVENARC)
        self.theme = EVENARC.name
        self.push_screen(HomeScreen(self.first_notice))
        if self.measures_at_once:
            self.measure()

    def _handle_exception(self, error: Exception) -> None:
        """Leave with one line instead of a traceback; tests see the exception itself."""
        if self.is_headless:
            super()._handle_exception(error)
            return
        self.exit(return_code=1, message=Text(write_down(error, self.files)))

    def action_help_quit(self) -> None:
        """Ctrl+C does nothing by itself; say what does."""
        self.notify("F9 leaves; every answer is kept", markup=False)

    def measure(self) -> None:
        """Measure a vehicle for the first time."""
        self.take(Flow(drafts.begin(drafts.now())))

    def measure_again(self, path: Path) -> None:
        """Measure again the vehicle of a filed session."""
        try:
            earlier = read_document(path)
            document = drafts.begin_again(earlier, drafts.now())
            self.take(Flow(document, self.profile_of(document)), earlier)
        except (RecordError, ProfileError) as error:
            self.at_home(str(error))

    def go_on(self, path: Path) -> None:
        """Go on with an unfinished session at the question it had reached."""
        try:
            document = read_document(path)
            self.take(Flow(document, self.profile_of(document)), self.earlier_of(document))
        except (RecordError, ProfileError) as error:
            self.at_home(str(error))

    def open_record(self, path: Path) -> None:
        """Look at a filed session."""
        self.at_home(f"{plain(path)} cannot be shown yet")

    def take(self, flow: Flow, earlier: Document | None = None) -> None:
        """Take a session through its steps."""
        self.push_screen(MeasureScreen(flow, earlier), self.at_home)

    def at_home(self, line: str | None) -> None:
        """Say something on the first page."""
        for screen in self.screen_stack:
            if isinstance(screen, HomeScreen):
                screen.notice(line or "")

    def profile_of(self, document: Document) -> Profile | None:
        """The profile a session was begun with; None before one was chosen. Raises ProfileError."""
        name = value_at(document, "session.profile")
        return None if name is None else load_profile(str(name), self.profile_folders)

    def earlier_of(self, document: Document) -> Document | None:
        """The session that this one measures again, if it can be found."""
        follows = value_at(document, "session.follows")
        found = [entry for entry in list_records(self.files) if entry.id and entry.id == follows]
        return read_document(found[0].path) if found else None
