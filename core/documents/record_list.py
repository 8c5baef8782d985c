"""Lists of a files folder: the filed sessions of every vehicle, and the drafts."""

import re
from collections.abc import Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from functools import lru_cache
from pathlib import Path
from typing import Any

from core.documents import atomic_write
from core.documents.document import Document, value_at, without
from core.documents.entries import EntryError, text_at
from core.documents.record import SHOP, UNFINISHED, RecordError, as_record_errors, read_document
from core.documents.signature import signatures_of
from core.text.plain_text import plain

NOT_ANSWERS = ("draft", "plan", "program_version")
"""Keys of a draft that are no answers; the plan is computed afresh when it is filed."""


@dataclass(frozen=True)
class ListedSession:
    """One session in a list; `fault` has the reason where its file cannot be read.

    Texts are safe to display. `overall` is the verdict at the time of filing, `decision` that of
    the last signature; both are empty where there is none.
    """

    path: Path
    fault: str = ""
    id: str = ""
    tag: str = ""
    description: str = ""
    kind: str = ""
    follows: str = ""
    technician: str = ""
    profile: str = ""
    opened: datetime | None = None
    overall: str = ""
    decision: str = ""


def list_records(files: Path) -> list[ListedSession]:
    """Filed sessions, newest first. Raises RecordError when the folder cannot be read."""
    folders = [folder for folder in _folders_in(files) if folder.name not in {SHOP, UNFINISHED}]
    return _newest_first(entry for folder in folders for entry in _entries_in(folder))


def list_drafts(files: Path) -> list[ListedSession]:
    """Unfinished sessions, newest first, without those that were filed meanwhile."""
    return _newest_first(
        entry for entry in _entries_in(files / UNFINISHED) if not _is_filed(files, entry)
    )


def remove_leftovers(files: Path) -> None:
    """Remove half-written files and drafts of filed sessions that a killed program left."""
    with suppress(OSError, RecordError):
        for folder in _folders_in(files):
            atomic_write.remove_abandoned(folder)
        for entry in _entries_in(files / UNFINISHED):
            if _is_filed(files, entry):
                entry.path.unlink(missing_ok=True)


def _folders_in(files: Path) -> list[Path]:
    with as_record_errors(files, "cannot be read"):
        return [path for path in files.iterdir() if path.is_dir()] if files.exists() else []


def _entries_in(folder: Path) -> list[ListedSession]:
    """Sessions of a folder; the folder with its fault where it cannot be read."""
    try:
        with as_record_errors(folder, "cannot be read"):
            paths = list(folder.iterdir()) if folder.exists() else []
    except RecordError as error:
        return [ListedSession(folder, fault=str(error))]
    return [_entry(path) for path in paths if re.fullmatch(r"[^.].*\.toml", path.name)]


def _entry(path: Path) -> ListedSession:
    try:
        with as_record_errors(path, "cannot be opened"):
            state = path.stat()
    except RecordError as error:
        return ListedSession(path, fault=str(error))
    return _entry_as_of(path, state.st_mtime_ns, state.st_size, state.st_ino)


@lru_cache(maxsize=4096)
def _entry_as_of(path: Path, *_state: int) -> ListedSession:
    """A session as listed; each state of its file is read only once."""
    try:
        return _entry_of(path, read_document(path))
    except RecordError as error:
        return ListedSession(path, fault=str(error))
    except (EntryError, OverflowError, ValueError) as error:
        return ListedSession(path, fault=f"{plain(path, 300)}: {error}")


def _entry_of(path: Path, document: Document) -> ListedSession:
    opened = value_at(document, "session.opened")
    if not isinstance(opened, datetime):
        raise EntryError("session.opened", "should be a date and time with its offset")
    signatures = signatures_of(document)
    return ListedSession(
        path,
        id=_plain_text(document, "session.id"),
        tag=_plain_text(document, "vehicle.tag"),
        description=_plain_text(document, "vehicle.description", ""),
        kind=_plain_text(document, "session.kind", ""),
        follows=_plain_text(document, "session.follows", ""),
        technician=_plain_text(document, "session.technician", ""),
        profile=_plain_text(document, "session.profile", ""),
        opened=opened if opened.tzinfo else opened.astimezone(),
        overall=_plain_text(document, "results.overall", ""),
        decision=plain(signatures[-1].get("decision", "")) if signatures else "",
    )


def _plain_text(document: Document, path: str, default: str | None = None) -> str:
    return plain(text_at(document, path, default), 200)


def _newest_first(entries: Iterable[ListedSession]) -> list[ListedSession]:
    return sorted(entries, key=lambda entry: (_moment(entry), entry.path.name), reverse=True)


def _moment(entry: ListedSession) -> float:
    """Time at which a session was opened, s; the time of its file where it cannot be read."""
    if entry.opened:
        return entry.opened.timestamp()
    with suppress(OSError):
        return entry.path.stat().st_mtime
    return 0.0


def _is_filed(files: Path, entry: ListedSession) -> bool:
    """True if the record of the same name holds all answers of a draft."""
    if entry.fault:
        return False
    with suppress(OSError, RecordError):
        record = files / entry.tag / entry.path.name
        if record.is_file():
            draft = read_document(entry.path)
            for key in NOT_ANSWERS:
                draft = without(draft, key)
            return _is_part(draft, read_document(record))
    return False


def _is_part(value: Any, whole: Any) -> bool:
    """True if every value of a table is in another table as well."""
    if isinstance(value, Mapping) and isinstance(whole, Mapping):
        return all(key in whole and _is_part(one, whole[key]) for key, one in value.items())
    return bool(value == whole)
