"""Records named on the command line, read and judged; a fault is one line with its file."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from core.documents.entries import EntryError
from core.documents.record import RecordError, read_document
from core.profiles.profile import ProfileError
from core.text.plain_text import plain
from core.verdict.assess import assess
from core.verdict.verdict import Verdict

if TYPE_CHECKING:
    from core.profiles.profile import Profile

LONGEST_PATH = 300


class Unreadable(Exception):
    """A record cannot be read or judged; the message is the line to print."""


def read_and_judge(
    path: str, profile_of: Callable[[str], Profile]
) -> tuple[dict[str, Any], Verdict]:
    """A record and the verdict on it, computed afresh. Raises Unreadable."""
    document = read_record(path)
    try:
        return document, assess(document, profile_of)
    except EntryError as error:
        raise Unreadable(f"{plain(path, LONGEST_PATH)}: {error}") from None
    except ProfileError as error:
        raise Unreadable(f"{plain(path, LONGEST_PATH)}: [session] profile: {error}") from None


def read_record(path: str) -> dict[str, Any]:
    """A record as it was written. Raises Unreadable."""
    try:
        return read_document(path)
    except RecordError as error:
        raise Unreadable(str(error)) from None
