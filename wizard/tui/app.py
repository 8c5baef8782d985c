"""The Textual application: which screen follows which."""

from __future__ import annotations

import asyncio
import signal
from contextlib import suppress
from pathlib import Path

from rich.console import RenderableType
from rich.text import Text
from rich.traceback import Traceback

from core.documents.document import value_at
from core.documents.entries import EntryError
from core.documents.record import RecordError, read_document
from core.profiles.profile import Profile, ProfileError, load_profile
from wizard.flow import drafts, opening, pairing
from wizard.flow.draft_store import DraftStore
from wizard.flow.flow import Flow
from wizard.flow.opening import OpenedSession
from wizard.tui.host import Host, Surroundings
from wizard.tui.screens.compare import CompareScreen
from wizard.tui.screens.home import HomeScreen
from wizard.tui.screens.measure import MeasureScreen
from wizard.tui.screens.pick import PickScreen
from wizard.tui.screens.record import RecordScreen
from wizard.tui.theme import EVENARC


class EvenarcApp(Host):
    """The wizard.

    Parameters
    ----------
    surroundings : Surroundings
    measures_at_once : bool
        Begin a new session instead of showing home.
    notice : str
        A line for home.
    """

    CSS_PATH = "evenarc.tcss"
    TITLE = "Evenarc"
    ENABLE_COMMAND_PALETTE = False
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (100, "-wide")]
    VERTICAL_BREAKPOINTS = [(0, "-low"), (32, "-high")]
    BINDINGS = [("ctrl+q", "quit", "quit")]

    def __init__(
        self, surroundings: Surroundings, measures_at_once: bool = False, notice: str = ""
    ) -> None:
        super().__init__()
        self.surroundings = surroundings
        self.draft_store = DraftStore(surroundings.files)
        self.measures_at_once = measures_at_once
        self.first_notice = notice

    def on_mount(self) -> None:
        """The first page, and on it what was asked for."""
        self.register_theme(EVENARC)
        self.theme = EVENARC.name
        self.leave_when_told()
        self.push_screen(HomeScreen(self.first_notice))
        if self.measures_at_once:
            self.measure()

    def _handle_exception(self, error: Exception) -> None:
        """Leave with one line instead of a traceback; tests see the exception itself."""
        if self.is_headless:
            super()._handle_exception(error)
            return
        self.exit(return_code=1, message=Text(self.surroundings.log_fault(error)))

    def panic(self, *renderables: RenderableType) -> None:
        """A fault outside the screens, such as a key that is no UTF-8 text: one line as well."""
        if self.is_headless:
            super().panic(*renderables)
            return
        stacks = [one.trace.stacks for one in renderables if isinstance(one, Traceback)]
        what = "; ".join(f"{one.exc_type}: {one.exc_value}" for found in stacks for one in found)
        error = RuntimeError(what or "unknown")
        self.exit(return_code=1, message=Text(self.surroundings.log_fault(error)))

    def leave_when_told(self) -> None:
        """Being told to end is to quit: the terminal is left as it was found."""
        loop = asyncio.get_running_loop()
        with suppress(NotImplementedError, RuntimeError, ValueError):  # not every system can
            for name in ("SIGTERM", "SIGHUP"):
                loop.add_signal_handler(getattr(signal, name), self.exit)

    def action_help_quit(self) -> None:
        """Ctrl+C does nothing by itself; say what does."""
        self.notify("F9 leaves; every answer is kept", markup=False)

    def measure(self) -> None:
        """Measure a vehicle for the first time."""
        self.take(OpenedSession(Flow(drafts.new_session(drafts.now()))))

    def measure_again(self, path: Path) -> None:
        """Measure again the vehicle of a filed session."""
        try:
            self.take(opening.open_re_measure(path, self.profile_folders))
        except RecordError as error:
            self.at_home(str(error))

    def resume(self, path: Path) -> None:
        """Go on with an unfinished session at the question it had reached."""
        try:
            self.draft_store.remember(path)
            self.take(opening.open_draft(path, self.files, self.profile_folders))
        except RecordError as error:
            self.at_home(str(error))

    def open_record(self, path: Path) -> None:
        """Look at a filed session."""
        try:
            document = read_document(path)
        except RecordError as error:
            self.at_home(str(error))
        else:
            self.push_screen(RecordScreen(path, document, self.profile_of))

    def compare(self, path: Path) -> None:
        """Lay a filed session beside the one it follows, or beside one that is chosen."""
        try:
            found = pairing.followed_session(self.files, read_document(path))
        except RecordError as error:
            self.warn(str(error))
        else:
            if found and not found.fault:
                self.lay_beside(path, found.path)
            else:
                self.compare_with_another(path)

    def compare_with_another(self, path: Path) -> None:
        """Choose the session that a filed one is laid beside."""
        try:
            entries = pairing.other_sessions(self.files, read_document(path))
        except RecordError as error:
            self.warn(str(error))
            return
        if not entries:
            self.warn("no other session of this vehicle is filed")
            return

        def chosen(other: str | None) -> None:
            if other is not None:
                self.lay_beside(path, Path(other))

        ask, do = "Beside which session?", "The earlier one counts as before, the later as after."
        self.push_screen(PickScreen(ask, do, pairing.session_choices(entries), None), chosen)

    def lay_beside(self, path: Path, other: Path) -> None:
        """Show a filed session beside another one, the earlier as before."""

        def choose() -> None:
            self.compare_with_another(path)

        try:
            pair = pairing.oldest_first(read_document(path), read_document(other))
            screen = CompareScreen(*pair, self.profile_of, choose=choose)
        except (RecordError, EntryError, ProfileError) as error:
            self.warn(str(error))
        else:
            self.push_screen(screen)

    def warn(self, text: str) -> None:
        """Say on any screen why something was not done."""
        self.notify(text, severity="warning", markup=False)

    def profile_of(self, name: str) -> Profile:
        """The profile of this name. Raises ProfileError."""
        return load_profile(name, self.profile_folders)

    def take(self, opened: OpenedSession) -> None:
        """Take a session through its steps."""
        screen = MeasureScreen(opened)

        def left(line: str | None) -> None:
            self.at_home(line, str(value_at(screen.flow.document, "session.id", "")))

        self.push_screen(screen, left)

    def at_home(self, line: str | None, session: str = "") -> None:
        """Say something on the first page, and mark the session it is about, by its id."""
        for screen in self.screen_stack:
            if isinstance(screen, HomeScreen):
                screen.notice(line or "")
                if session:
                    screen.mark(session)
