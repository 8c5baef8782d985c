"""Which two sessions of a vehicle are laid beside each other."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from pathlib import Path

from core.documents.document import Document, value_at
from core.documents.record_list import ListedSession, list_records
from wizard.phrases.verdict_words import mark_and_word
from wizard.questions.question import Choice


def followed_session(files: Path, document: Document) -> ListedSession | None:
    """The session that a document says it measures again, if it is there. Raises RecordError."""
    follows = value_at(document, "session.follows", "")
    if not follows:
        return None
    return next((entry for entry in list_records(files) if entry.id == follows), None)


def other_sessions(files: Path, document: Document) -> list[ListedSession]:
    """Every other session of the same vehicle, newest first. Raises RecordError."""
    own, tag = value_at(document, "session.id"), value_at(document, "vehicle.tag")
    return [
        entry
        for entry in list_records(files)
        if entry.tag == tag and entry.id != own and not entry.fault
    ]


def oldest_first(one: Document, other: Document) -> tuple[Document, Document]:
    """The earlier one first."""
    return (one, other) if _moment(one) <= _moment(other) else (other, one)


def _moment(document: Document) -> float:
    opened = value_at(document, "session.opened")
    return opened.timestamp() if isinstance(opened, datetime) else 0.0


def as_choices(entries: Sequence[ListedSession]) -> list[Choice]:
    """Sessions to choose from; the value is the file."""
    return [
        Choice(
            str(entry.path),
            f"{entry.opened:%Y-%m-%d %H:%M}  {entry.kind}" if entry.opened else entry.kind,
            mark_and_word(entry.overall) if entry.overall else "",
        )
        for entry in entries
    ]
