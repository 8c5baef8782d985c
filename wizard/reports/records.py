"""Records named on the command line, read and judged; a fault is one line with its file."""

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

from core.assess import assess
from core.entries import EntryError
from core.plain_text import plain
from core.profile import Profile, ProfileError, load_profile
from core.record import RecordError, read_document
from core.verdict import Verdict

LONGEST_PATH = 300


class Unreadable(Exception):
    """A record cannot be read or judged; the message is the line to print."""


def profiles_in(folders: Sequence[Path]) -> Callable[[str], Profile]:
    """Finds a profile by its name in some folders."""
    return lambda name: load_profile(name, folders)


def judged(path: str, folders: Sequence[Path]) -> tuple[dict[str, Any], Verdict]:
    """A record and the verdict on it, computed afresh. Raises Unreadable."""
    document = read(path)
    try:
        return document, assess(document, profiles_in(folders))
    except EntryError as error:
        raise Unreadable(f"{plain(path, LONGEST_PATH)}: {error}") from None
    except ProfileError as error:
        raise Unreadable(f"{plain(path, LONGEST_PATH)}: [session] profile: {error}") from None


def read(path: str) -> dict[str, Any]:
    """A record as it was written. Raises Unreadable."""
    try:
        return read_document(Path(path))
    except RecordError as error:
        raise Unreadable(str(error)) from None
