"""Pairs of sessions of one vehicle that are compared: before and after."""

from collections.abc import Callable, Sequence
from datetime import datetime
from pathlib import Path

from core.documents.document import Document, value_at
from core.documents.listed_session import ListedSession
from core.documents.record_list import find_record, list_vehicle
from core.profiles.profile import Profile
from core.shop.settled import settled
from wizard.phrases.verdict_words import mark_and_word
from wizard.questions.question import Choice


def followed_session(files: Path, document: Document) -> ListedSession | None:
    """Session that a re-measure follows; None if the files have none. Raises RecordError."""
    return find_record(files, str(value_at(document, "session.follows", "")))


def other_sessions(
    files: Path, document: Document, profile_of: Callable[[str], Profile]
) -> list[ListedSession]:
    """Other sound sessions of the same vehicle with their verdicts, newest first.

    Raises RecordError.
    """
    own_id, tag = value_at(document, "session.id"), str(value_at(document, "vehicle.tag"))
    return [
        settled(entry, profile_of)
        for entry in list_vehicle(files, tag)
        if entry.tag == tag and entry.id != own_id and not entry.fault
    ]


def oldest_first(first: Document, second: Document) -> tuple[Document, Document]:
    """Two sessions in the order in which they were opened."""
    if _opening_moment(first) <= _opening_moment(second):
        return first, second
    return second, first


def _opening_moment(document: Document) -> float:
    """Time at which a session was opened, s since the epoch; 0 if unknown."""
    opened = value_at(document, "session.opened")
    return opened.timestamp() if isinstance(opened, datetime) else 0.0


def session_choices(entries: Sequence[ListedSession]) -> list[Choice]:
    """Choices for a list of sessions; the value of each is the path of its file."""
    return [
        Choice(
            str(entry.path),
            f"{entry.opened:%Y-%m-%d %H:%M}  {entry.kind}" if entry.opened else entry.kind,
            mark_and_word(entry.overall) if entry.overall else "",
        )
        for entry in entries
    ]
