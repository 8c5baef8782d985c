"""Home: the unfinished sessions, the filed sessions, and a new one to begin."""

from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import replace
from functools import partial
from pathlib import Path

from textual import on
from textual.app import ComposeResult
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

from core.documents.listed_session import ListedSession
from core.documents.record import RecordError, discard_draft, read_document
from core.documents.record_list import list_drafts, remove_leftovers
from core.profiles.profile import ProfileError
from core.shop.index import Look, RecordIndex
from core.text.plain_text import plain
from wizard.flow.flow import step_reached
from wizard.flow.profile_choices import profile_choices
from wizard.phrases.help import help_at_home
from wizard.phrases.list_state import list_state_words
from wizard.questions.question import Choice
from wizard.tui.host import Host
from wizard.tui.screens.help import HelpScreen
from wizard.tui.screens.lift import LIKE, TYPICAL, LiftScreen, vehicles_question
from wizard.tui.screens.pick import PickScreen
from wizard.tui.screens.workers import Reporter, run_beside
from wizard.tui.widgets.field import Field
from wizard.tui.widgets.heading import Heading
from wizard.tui.widgets.keys import Key, Keys
from wizard.tui.widgets.sessions import NEW, Sessions

MOST_TAGS = 12
"""Most vehicles that a lift offers; typed letters choose which."""

FIRST_STEPS = (
    "Nothing is filed here yet. The first step: stand the vehicle on level ground, on its wheels. "
    "Have a tape, a plumb line and an angle finder at hand, and press Enter. Evenarc asks one "
    "thing at a time and keeps every answer."
)
"""Text over an empty files folder."""


class HomeScreen(Screen[None]):
    """Lists the sessions, newest first; typing keeps the sessions that match."""

    app: Host

    BINDINGS = [
        ("escape", "clear", "all"),
        ("f1", "help", "help"),
        ("f2", "lift", "lift"),
        ("f3", "sheet", "sheet"),
        ("f5", "new", "new"),
        ("f6", "again", "again"),
        ("f7", "compare", "compare"),
        ("f8", "discard", "throw away"),
        ("f9", "quit", "quit"),
        ("up", "list('cursor_up')", "up"),
        ("down", "list('cursor_down')", "down"),
        ("pageup", "list('page_up')", "page up"),
        ("pagedown", "list('page_down')", "page down"),
    ]

    def __init__(self, notice: str = "") -> None:
        super().__init__()
        self.first_notice = notice
        self.index: RecordIndex | None = None

    def compose(self) -> ComposeResult:
        """Yield the field to type into, the list, the keys."""
        yield Heading()
        yield Static(id="notice")
        yield Field(id="filter")
        yield Static(id="first")
        yield Sessions()
        yield Static(id="state")
        yield Keys()

    def on_mount(self) -> None:
        """Focus the field: typing filters at once."""
        field = self.query_one(Field)
        field.placeholder = "type to find a vehicle"
        field.focus()
        self.show_keys()
        self.notice(self.first_notice)

    @on(Sessions.Marked)
    def show_keys(self) -> None:
        """Show the keys that do something with the marked line."""
        entry, is_unfinished = self.query_one(Sessions).at_hand or (NEW, False)
        filed = self.query_one(Sessions).filed_at_hand
        again = (Key("F6", "measure again", "again"), Key("F7", "compare", "compare"))
        self.query_one(Keys).keys = (
            Key("Enter", "go on with it" if is_unfinished else "open", "open"),
            Key("F2", "lift", "lift"),
            Key("F3", "sheet", "sheet"),
            Key("F4", "photographs", "app.photographs"),
            Key("F5", "new vehicle", "new"),
            *(again if filed else ()),
            *([Key("F8", "throw away", "discard")] if is_unfinished and not entry.fault else []),
            Key("F1", "help", "help"),
            Key("F9", "quit", "quit"),
        )

    def on_screen_resume(self) -> None:
        """List the files again: a session may have been filed meanwhile."""
        self.list_sessions()

    def list_sessions(self) -> None:
        """Read the files folder beside the screen, and list its sessions as they are read."""
        files = self.app.files
        self.query_one(Heading).right = str(files)
        removes = self.index is None
        if self.index is None or self.index.files != files:
            self.index = RecordIndex(files, self.app.profile_of)
            self.show_unfinished(files)
        run_beside(self, partial(self.read_sessions, self.index, removes))

    def show_unfinished(self, files: Path) -> None:
        """List the few unfinished sessions at once, so that the first key finds a marked line."""
        with suppress(RecordError):  # the worker meets the same error, and says it
            unfinished = list_drafts(files)
            self.show_look(unfinished, reached_steps(unfinished), Look((), 0, 0), "")

    def read_sessions(self, index: RecordIndex, removes: bool, reporter: Reporter) -> None:
        """Read the sessions in the thread of the worker, then remove what is left over."""
        try:
            unfinished = list_drafts(index.files)
            reached = reached_steps(unfinished)
            for look in index.looks():
                reporter.stop_if_unwanted()
                reporter.call(self.show_look, unfinished, reached, look)
        except RecordError as error:
            reporter.call(self.notice, str(error))
            reporter.call(self.show_look, [], {}, Look((), 0, 0), "")
        if removes:
            remove_leftovers(index.files)

    def show_look(
        self,
        unfinished: Sequence[ListedSession],
        reached: Mapping[Path, str],
        look: Look,
        if_empty: str = FIRST_STEPS,
    ) -> None:
        """List the sessions as far as they are known."""
        sessions = self.query_one(Sessions)
        sessions.show(unfinished, look.entries, reached)
        if sessions.sought:
            self.say_matches()
        is_empty = not (unfinished or look.entries or look.unread)
        self.show_text("#first", if_empty if is_empty else "")
        self.show_text("#state", list_state_words(look))

    def show_text(self, place: str, text: str) -> None:
        """Show a text in its place, which is not displayed without one."""
        static = self.query_one(place, Static)
        static.update(Content(text))
        static.display = bool(text)

    def mark(self, session: str) -> None:
        """Mark a session by its id, once it is in the list."""
        self.query_one(Sessions).to_mark = session
        self.list_sessions()

    def notice(self, text: str) -> None:
        """Show a line above the list."""
        self.query_one("#notice", Static).update(Content(text))

    @on(Field.Changed)
    def filter(self, event: Field.Changed) -> None:
        """List the sessions that match the typed words."""
        self.query_one(Sessions).find(event.value)
        self.say_matches()

    def say_matches(self) -> None:
        """Say that no session matches the typed words, if that is so."""
        sessions = self.query_one(Sessions)
        matches = sessions.lines or not sessions.sought.strip()
        self.notice(
            "" if matches else f"no session holds “{plain(sessions.sought)}”; Esc shows all"
        )

    @on(Field.Submitted)
    def action_open(self) -> None:
        """Open the marked line."""
        self.query_one(Sessions).action_select()

    @on(Sessions.Opened)
    def open(self, event: Sessions.Opened) -> None:
        """Begin a session, resume a session, or open a record."""
        if event.entry is NEW:
            self.action_new()
        elif event.entry.fault:
            self.notice(event.entry.fault)
        elif event.is_unfinished:
            self.app.resume(event.entry.path)
        else:
            self.app.open_record(event.entry.path)

    def action_list(self, action: str) -> None:
        """Run an action of the list; the field keeps the focus."""
        getattr(self.query_one(Sessions), f"action_{action}")()

    def action_clear(self) -> None:
        """Clear the field: all sessions are listed."""
        self.query_one(Field).value = ""

    def action_new(self) -> None:
        """Measure a vehicle for the first time."""
        self.app.measure()

    def action_again(self) -> None:
        """Measure the vehicle of the marked session again."""
        entry = self.query_one(Sessions).filed_at_hand
        if entry is None:
            self.notice("F6 measures a vehicle again: choose one of its filed sessions first")
        else:
            self.app.measure_again(entry.path)

    def action_compare(self) -> None:
        """Compare the marked session with another one."""
        entry = self.query_one(Sessions).filed_at_hand
        if entry is None:
            self.notice("F7 lays two sessions side by side: choose one that is filed first")
        else:
            self.app.compare(entry.path)

    def action_discard(self) -> None:
        """Ask if an unfinished session is to be thrown away."""
        entry, is_unfinished = self.query_one(Sessions).at_hand or (NEW, False)
        if not is_unfinished or entry.fault:
            self.notice("F8 throws an unfinished session away: choose one first")
            return

        def discard_if_confirmed(is_confirmed: bool | None) -> None:
            if is_confirmed:
                self.discard(entry)

        do = "Its answers are gone then; what is filed of the vehicle stays."
        choices = (Choice(False, "keep it"), Choice(True, "throw it away"))
        ask = f"Throw this unfinished session of {entry.tag} away?"
        self.app.push_screen(PickScreen(ask, do, choices, False), discard_if_confirmed)

    def discard(self, entry: ListedSession) -> None:
        """Throw an unfinished session away."""
        try:
            discard_draft(self.app.files, read_document(entry.path))
        except RecordError as error:
            self.notice(str(error))
        else:
            self.notice(f"thrown away: the unfinished session of {entry.tag}")
            self.list_sessions()

    def action_sheet(self) -> None:
        """Ask for a kind of axle, and write a sheet to print for it."""
        choices = profile_choices(self.app.surroundings.profile_folders)
        do = "The sheet shows where the tape goes, and has a blank for each reading."
        if not choices:
            self.notice("there is no profile to make a sheet for")
            return
        ask = "Which kind of axle and steering is the sheet for?"
        self.app.push_screen(PickScreen(ask, do, choices, choices[0].value), self.write_sheet)

    def write_sheet(self, profile: str | None) -> None:
        """Write the sheet of a profile, unless none was chosen."""
        if profile is None:
            return
        try:
            path = self.app.surroundings.write_sheet(profile)
        except (ProfileError, RecordError) as error:
            self.notice(str(error))
        else:
            self.notice(f"the sheet is made: {plain(path, 300)}; open it in a browser and print it")

    def action_lift(self) -> None:
        """Ask for vehicles, and plan a lift on them."""
        choices = self.lift_choices()
        if not choices:
            self.notice("there is no profile and no filed session to plan a lift on")
            return
        chosen = [str(choices[0].value)]

        def plan_lift(chosen: list[str] | None) -> None:
            if chosen:
                self.app.push_screen(LiftScreen(choices, chosen))

        self.app.push_screen(vehicles_question(choices, chosen), plan_lift)

    def lift_choices(self) -> tuple[Choice, ...]:
        """Vehicles that a lift can be planned on: listed ones, the marked one first; profiles."""
        tags = self.query_one(Sessions).filed_tags[:MOST_TAGS]
        filed = (Choice(f"{LIKE}{tag}", f"like {plain(tag)}", "as it was measured") for tag in tags)
        typical = (
            replace(choice, value=f"{TYPICAL}{choice.value}", note="typical")
            for choice in profile_choices(self.app.surroundings.profile_folders)
        )
        return (*filed, *typical)

    def action_help(self) -> None:
        """Show help on home."""
        self.app.push_screen(HelpScreen(help_at_home()))

    def action_quit(self) -> None:
        """End the program; every answer is on the disk."""
        self.app.exit()


def reached_steps(unfinished: Sequence[ListedSession]) -> dict[Path, str]:
    """Names of the steps that unfinished sessions have reached, by their files."""
    return {entry.path: reached_step(entry) for entry in unfinished}


def reached_step(entry: ListedSession) -> str:
    """Name of the step that an unfinished session has reached; empty if the draft does not say."""
    with suppress(RecordError):
        return "" if entry.fault else step_reached(read_document(entry.path))
    return ""
