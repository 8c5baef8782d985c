"""`evenarc list`: every filed session, as home lists them."""

import json
import sys
from collections.abc import Callable, Sequence
from pathlib import Path

from core.as_json.listed import fault_of, listed_as_json
from core.documents.listed_session import ListedSession
from core.documents.record import RecordError
from core.profiles.profile import Profile
from core.shop.index import Look, RecordIndex
from core.text.plain_text import plain
from wizard.phrases.list_state import list_state_words
from wizard.reports.ending import Ending


def list_sessions(files: Path, profile_of: Callable[[str], Profile], as_json: bool) -> Ending:
    """Print every filed session, newest first; files that cannot be read come last.

    Parameters
    ----------
    files : Path
    profile_of : callable
        Loads a profile by its name.
    as_json : bool
        Print JSON, one object a line.
    """
    try:
        look = last_look(RecordIndex(files, profile_of))
    except RecordError as error:
        print(f"evenarc: {error}", file=sys.stderr)
        return Ending.UNREADABLE
    sound = [entry for entry in look.entries if not fault_of(entry)]
    faulty = [entry for entry in look.entries if fault_of(entry)]
    if as_json:
        for entry in (*sound, *faulty):
            print(json.dumps(listed_as_json(entry)))
    else:
        print_table(sound, remark(look, files))
        for entry in faulty:
            print(f"evenarc: {fault_of(entry)}", file=sys.stderr)
    return Ending.UNREADABLE if faulty else Ending.GOOD


def last_look(index: RecordIndex) -> Look:
    """The sessions with all verdicts; a terminal shows how far the reading is."""
    look = Look((), 0, 0)
    for look in index.looks():
        if sys.stderr.isatty():
            words = "" if look.is_last else list_state_words(look)
            print(f"\r\x1b[K{words}", end="", file=sys.stderr, flush=True)
    return look


def remark(look: Look, files: Path) -> str:
    """A line below the table: what is not read or computed, or that nothing is filed."""
    return list_state_words(look) if look.entries else f"Nothing is filed in {plain(files, 300)}."


def print_table(entries: Sequence[ListedSession], last_line: str) -> None:
    """Print one line for each session, in the columns of home, then a last line."""
    from rich.text import Text  # a program that reads JSON does without Rich

    from wizard.reports.console import report_console, style_of
    from wizard.views.session_line import filed_parts, widths_of

    console, widths = report_console(), widths_of(entries)
    for entry in entries:
        parts = [(text, style_of(name)) for text, name in filed_parts(entry, widths)]
        line = Text.assemble(*parts)
        if console.is_terminal:
            line.truncate(console.width, overflow="ellipsis")
        console.print(line, no_wrap=True, overflow="ignore", crop=False)
    if last_line:
        console.print(last_line)
