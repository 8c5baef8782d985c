"""The Textual application: it opens the screens."""

import asyncio
import signal
from collections.abc import Sequence
from contextlib import suppress
from functools import partial
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
from wizard.flow.photographs import new_photograph_session
from wizard.flow.usual_answers import usual_answers
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
        True to begin a new session at once.
    notice : str
        A line to show at home.
    photographs : sequence of str or None
        Pictures of a new session from photographs that begins at once; it can have none yet.
    """

    CSS_PATH = "evenarc.tcss"
    TITLE = "Evenarc"
    ENABLE_COMMAND_PALETTE = False
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (100, "-wide")]
    VERTICAL_BREAKPOINTS = [(0, "-low"), (32, "-high")]
    BINDINGS = [("ctrl+q", "quit", "quit"), ("f4", "photographs", "from photographs")]

    def __init__(
        self,
        surroundings: Surroundings,
        measures_at_once: bool = False,
        notice: str = "",
        photographs: Sequence[str] | None = None,
    ) -> None:
        super().__init__()
        self.surroundings = surroundings
        self.draft_store = DraftStore(surroundings.files)
        self.measures_at_once = measures_at_once
        self.first_notice = notice
        self.first_photographs = photographs

    def on_mount(self) -> None:
        """Show home, and over it a new session if one was asked for."""
        self.register_theme(EVENARC)
        self.theme = EVENARC.name
        self.exit_on_signals()
        self.push_screen(HomeScreen(self.first_notice))
        if self.first_photographs is not None:
            self.measure_photographs(self.first_photographs)
        elif self.measures_at_once:
            self.measure()

    def _handle_exception(self, error: Exception) -> None:
        """Exit with one line instead of a traceback; a test sees the exception itself."""
        if self.is_headless:
            super()._handle_exception(error)
            return
        self.exit(return_code=1, message=Text(self.surroundings.log_fault(error)))

    def panic(self, *renderables: RenderableType) -> None:
        """Exit with one line on a fault outside the screens, such as a key that is no UTF-8."""
        if self.is_headless:
            super().panic(*renderables)
            return
        tracebacks = [part for part in renderables if isinstance(part, Traceback)]
        stacks = [stack for traceback in tracebacks for stack in traceback.trace.stacks]
        words = "; ".join(f"{stack.exc_type}: {stack.exc_value}" for stack in stacks)
        error = RuntimeError(words or "unknown")
        self.exit(return_code=1, message=Text(self.surroundings.log_fault(error)))

    def exit_on_signals(self) -> None:
        """Quit on a signal to end, so that the terminal is restored."""
        loop = asyncio.get_running_loop()
        with suppress(NotImplementedError, RuntimeError, ValueError):  # not on every system
            for name in ("SIGTERM", "SIGHUP"):
                loop.add_signal_handler(getattr(signal, name), self.exit)

    def action_help_quit(self) -> None:
        """Say which key leaves: Ctrl+C does not."""
        self.notify("F9 leaves; every answer is kept", markup=False)

    def measure(self) -> None:
        """Measure a vehicle for the first time."""
        document = drafts.new_session(drafts.now())
        usual = usual_answers(self.files)
        self.open_session(OpenedSession(Flow(drafts.on_short_way(document, usual))))

    def measure_photographs(self, pictures: Sequence[str] = ()) -> None:
        """Judge a vehicle from photographs."""
        document = new_photograph_session([str(Path(name).resolve()) for name in pictures])
        self.open_session(OpenedSession(Flow(document)))

    def action_photographs(self) -> None:
        """Begin a session from photographs at home."""
        if isinstance(self.screen, HomeScreen):
            self.measure_photographs()

    def measure_again(self, path: Path) -> None:
        """Measure the vehicle of a filed session again."""
        try:
            usual = usual_answers(self.files)
            self.open_session(opening.open_re_measure(path, self.profile_folders, usual))
        except RecordError as error:
            self.show_at_home(str(error))

    def resume(self, path: Path) -> None:
        """Resume an unfinished session at the question it had reached."""
        try:
            opened = opening.open_draft(path, self.files, self.profile_folders)
            if opened.draft is not None:
                self.draft_store.remember(opened.draft)
        except RecordError as error:
            self.show_at_home(str(error))
        else:
            self.open_session(opened)

    def open_record(self, path: Path) -> None:
        """Open a filed session."""
        try:
            document = read_document(path)
        except RecordError as error:
            self.show_at_home(str(error))
        else:
            self.push_screen(RecordScreen(path, document, self.profile_of))

    def compare(self, path: Path) -> None:
        """Compare a filed session with the session it follows, or with one that is chosen."""
        try:
            followed = pairing.followed_session(self.files, read_document(path))
        except RecordError as error:
            self.warn(str(error))
        else:
            if followed and not followed.fault:
                self.compare_both(path, followed.path)
            else:
                self.compare_with_another(path)

    def compare_with_another(self, path: Path) -> None:
        """Ask which session a filed session is compared with."""
        try:
            document = read_document(path)
            entries = pairing.other_sessions(self.files, document, self.profile_of)
        except RecordError as error:
            self.warn(str(error))
            return
        if not entries:
            self.warn("no other session of this vehicle is filed")
            return

        def compare_chosen(other: str | None) -> None:
            if other is not None:
                self.compare_both(path, Path(other))

        ask = "Which session is it compared with?"
        do = "The earlier session is before, the later one is after."
        self.push_screen(
            PickScreen(ask, do, pairing.session_choices(entries), None), compare_chosen
        )

    def compare_both(self, path: Path, other: Path) -> None:
        """Compare two filed sessions, the earlier one as before."""

        try:
            pair = pairing.oldest_first(read_document(path), read_document(other))
            screen = CompareScreen(
                *pair,
                self.profile_of,
                choose_other=partial(self.compare_with_another, path),
            )
        except (RecordError, EntryError, ProfileError) as error:
            self.warn(str(error))
        else:
            self.push_screen(screen)

    def warn(self, text: str) -> None:
        """Say on any screen why an action was not done."""
        self.notify(text, severity="warning", markup=False)

    def profile_of(self, name: str) -> Profile:
        """Load the profile of a name. Raises ProfileError."""
        return load_profile(name, self.profile_folders)

    def open_session(self, opened: OpenedSession) -> None:
        """Take a session through its steps."""
        screen = MeasureScreen(opened)

        def show_left(line: str | None) -> None:
            self.show_at_home(line, str(value_at(screen.flow.document, "session.id", "")))

        self.push_screen(screen, show_left)

    def show_at_home(self, line: str | None, session: str = "") -> None:
        """Show a line at home, and mark the session of an id."""
        for screen in self.screen_stack:
            if isinstance(screen, HomeScreen):
                screen.notice(line or "")
                if session:
                    screen.mark(session)
