"""Records and drafts on the disk: one session, one TOML file.

A files folder holds one folder a vehicle, TAG/ID.toml; drafts lie in unfinished/ID.toml, and
shop/ belongs to the workshop's own profiles. A filed record is never overwritten; only
signatures are added to it. A draft is the same TOML without its results.
"""

import errno
import hashlib
import json
import os
import re
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from datetime import datetime
from functools import lru_cache
from pathlib import Path
from typing import Any, Literal

from core import durable
from core.document import Document, value_at, without
from core.entries import EntryError, text_at
from core.plain_text import plain
from core.toml_file import LARGEST, TomlFileError, read_toml

FORMAT = "evenarc session"
FORMAT_VERSION = 1
SHOP = "shop"
UNFINISHED = "unfinished"

Decision = Literal["signed", "returned"]

_ORDER = (
    "format format_version program_version session vehicle complaint walk_round stance layout "
    "instruments readings kept limits"
).split()
_LAST = ("results", "plan", "signatures")

_NAME = re.compile(r"\w(?:[\w .-]*\w)?")
_LONGEST_TAG = 32
_LONGEST_ID = 100
# Names that some systems keep for devices, whatever the ending.
_RESERVED = {SHOP, UNFINISHED, "con", "prn", "aux", "nul"} | {
    f"{device}{number}" for device in ("com", "lpt") for number in range(10)
}
_EASY_TO_READ = "23456789abcdefghjkmnpqrstuvwxyz"

_REASONS = {
    errno.ENOSPC: "the disk is full; make room and try again",
    errno.EDQUOT: "the disk is full; make room and try again",
    errno.EACCES: "that is not allowed there; choose another folder with --files",
    errno.EPERM: "that is not allowed there; choose another folder with --files",
    errno.EROFS: "that place is read-only; choose another folder with --files",
    errno.EEXIST: "a file is where a folder should be; choose another folder with --files",
    errno.ENOTDIR: "a file is where a folder should be; choose another folder with --files",
}


class RecordError(ValueError):
    """A record cannot be read or written; the message is one line that says where and why."""


@dataclass(frozen=True)
class Entry:
    """What a list says of one file. One that cannot be read has its reason in `fault`.

    Text is fit to be shown. `overall` is the verdict at the time of filing, `decision` the last
    signature's; both are empty where there is none.
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


def tag_fault(tag: str) -> str:
    """Why a vehicle's tag cannot name its folder, "" when it can."""
    if not _NAME.fullmatch(tag):
        return (
            f"“{plain(tag)}” cannot name a folder: use letters and digits, with space . _ or - "
            "between them, like FG-3"
        )
    if len(tag) > _LONGEST_TAG:
        return f"“{plain(tag, 20)}” is too long: use {_LONGEST_TAG} characters at most, like FG-3"
    if tag.casefold().split(".")[0] in _RESERVED:
        return f"“{plain(tag)}” is kept for other uses: choose another tag, like FG-3"
    return ""


def new_id(tag: str, kind: str, opened: datetime) -> str:
    """A session's id, "FG-3_20261125-141205_first_k3f9". Raises RecordError for a bad tag."""
    if fault := tag_fault(tag):
        raise RecordError(f"[vehicle] tag: {fault}")
    chance = "".join(_EASY_TO_READ[byte % len(_EASY_TO_READ)] for byte in os.urandom(4))
    return f"{tag}_{opened:%Y%m%d-%H%M%S}_{kind}_{chance}"


def read_document(path: Path) -> dict[str, Any]:
    """A record or draft of a format this program knows. Raises RecordError."""
    shown = plain(path, 300)
    try:
        document = read_toml(path)
    except TomlFileError as error:
        raise RecordError(str(error)) from None
    if document.get("format") != FORMAT:
        raise RecordError(f"{shown}: format: is no Evenarc record; it should be “{FORMAT}”")
    version = document.get("format_version")
    if type(version) is not int or version < 1:
        raise RecordError(
            f"{shown}: format_version: {plain(version)} is no version; it should be "
            f"{FORMAT_VERSION}"
        )
    if version > FORMAT_VERSION:
        raise RecordError(
            f"{shown}: format_version: {version} is newer than this program, which knows "
            f"{FORMAT_VERSION}; a newer Evenarc can read it"
        )
    return document


def record_path(files: Path, document: Document) -> Path:
    """Where a session is filed. Raises RecordError when its tag or id cannot be names."""
    tag = _text(document, "vehicle.tag")
    if fault := tag_fault(tag):
        raise RecordError(f"[vehicle] tag: {fault}")
    return files / tag / f"{_id(document)}.toml"


def draft_path(files: Path, document: Document) -> Path:
    """Where a session's draft is kept. Raises RecordError when its id cannot be a name."""
    return files / UNFINISHED / f"{_id(document)}.toml"


def save_draft(files: Path, document: Document) -> Path:
    """Keep a session that is not finished; it is on the disk on return. Raises RecordError."""
    path = draft_path(files, document)
    draft = without(without(document, "results"), "session.closed")
    content = _encoded(path, draft)
    with _said_clearly(path, "cannot be kept"):
        durable.make_folder(path.parent)
        durable.replace(path, content)
    return path


def discard_draft(files: Path, document: Document) -> None:
    """Remove a session's draft, if there is one. Raises RecordError."""
    path = draft_path(files, document)
    with _said_clearly(path, "cannot be removed"):
        path.unlink(missing_ok=True)


def file_record(files: Path, document: Document) -> Path:
    """File a finished session for good, then remove its draft.

    Returns
    -------
    Path
        The record, which has been read back and compared with `document`.

    Raises
    ------
    RecordError
        It cannot be filed, or a record of that id is there already; nothing was changed.
    """
    path = record_path(files, document)
    content = _encoded(path, document)
    with _said_clearly(path, "cannot be filed"):
        durable.make_folder(path.parent)
    with _said_clearly(path, "cannot be filed", exists="is filed already and stays as it is"):
        durable.create(path, content)
    if _everything(read_document(path)) != _everything(document):
        path.unlink()
        raise RecordError(f"{plain(path, 300)}: cannot be filed: it reads back differently")
    with suppress(OSError):  # filed all the same; `tidy` removes the draft the next time
        draft_path(files, document).unlink(missing_ok=True)
    return path


def sign(
    document: Document, decision: Decision, by: str, at: datetime, note: str = ""
) -> dict[str, Any]:
    """The document with one more signature over everything in it but the signatures."""
    signature = {"decision": decision, "by": by, "at": at, "note": note}
    signature["digest"] = digest(document)
    return {**document, "signatures": [*_signatures(document), signature]}


def signature_stands(document: Document, signature: Mapping[str, Any]) -> bool:
    """Whether the document is still what was signed."""
    return signature.get("digest") == digest(document)


def digest(document: Document) -> str:
    """SHA-256 of everything but the signatures, whatever the order of the keys."""
    return hashlib.sha256(_everything(without(document, "signatures"))).hexdigest()


def rewrite(path: Path, document: Document) -> None:
    """Put a document with further signatures in the place of the record it was read from.

    Raises
    ------
    RecordError
        The record has changed since, more than signatures would be changed, or it cannot be
        written; the record stays as it was.
    """
    there = read_document(path)
    signed, signatures = _signatures(there), _signatures(document)
    if digest(there) != digest(document) or signatures[: len(signed)] != signed:
        raise RecordError(
            f"{plain(path, 300)}: has changed since it was opened; open it again and sign that"
        )
    content = _encoded(path, document)
    with _said_clearly(path, "cannot be signed"):
        durable.replace(path.resolve(), content)


def list_records(files: Path) -> list[Entry]:
    """Every filed session, newest first. Raises RecordError when `files` cannot be read."""
    folders = [
        folder
        for folder in _inside(files)
        if folder.is_dir() and folder.name not in {SHOP, UNFINISHED}
    ]
    return _newest_first(_entry(path) for folder in folders for path in _records_in(folder))


def drafts(files: Path) -> list[Entry]:
    """Every session that was not finished, newest first; those filed meanwhile are left out."""
    entries = _newest_first(map(_entry, _records_in(files / UNFINISHED)))
    return [entry for entry in entries if not _is_filed(files, entry)]


def tidy(files: Path) -> None:
    """Clear away what a killed program left: half-written files, drafts of filed sessions."""
    with suppress(OSError, RecordError):
        for folder in _inside(files):
            durable.tidy(folder)
        for entry in map(_entry, _records_in(files / UNFINISHED)):
            if _is_filed(files, entry):
                entry.path.unlink(missing_ok=True)


def _text(document: Document, path: str) -> str:
    try:
        return text_at(document, path)
    except EntryError as error:
        raise RecordError(str(error)) from None


def _id(document: Document) -> str:
    name = _text(document, "session.id")
    if len(name) > _LONGEST_ID or not _NAME.fullmatch(name):
        raise RecordError(
            f"[session] id: “{plain(name)}” cannot name a file; it should be like "
            "FG-3_20261125-141205_first_k3f9"
        )
    return name


def _encoded(path: Path, document: Document) -> bytes:
    import tomli_w

    between = [key for key in document if key not in {*_ORDER, *_LAST}]
    ordered = {key: document[key] for key in (*_ORDER, *between, *_LAST) if key in document}
    try:
        content = tomli_w.dumps(ordered).encode()
    except UnicodeEncodeError:
        raise RecordError(f"{plain(path, 300)}: holds characters that are no text") from None
    if len(content) > LARGEST:
        raise RecordError(
            f"{plain(path, 300)}: would be larger than {LARGEST // 1_000_000} MB; shorten the notes"
        )
    return content


def _everything(document: Document) -> bytes:
    """The same bytes for the same values, before writing and after reading."""
    return json.dumps(
        document, sort_keys=True, separators=(",", ":"), default=lambda time: time.isoformat()
    ).encode()


def _signatures(document: Document) -> Sequence[Mapping[str, Any]]:
    found = document.get("signatures", [])
    if isinstance(found, list) and all(isinstance(item, Mapping) for item in found):
        return found
    raise RecordError("[[signatures]]: should be a list of tables")


@contextmanager
def _said_clearly(path: Path, what: str, exists: str = "") -> Iterator[None]:
    """Turns what the system says into one line."""
    shown = plain(path, 300)
    try:
        yield
    except OSError as error:
        if exists and isinstance(error, FileExistsError):
            raise RecordError(f"{shown}: {exists}") from None
        reason = _REASONS.get(error.errno or 0) or error.strerror or str(error)
        raise RecordError(f"{shown}: {what}: {plain(reason, 200)}") from None


def _inside(files: Path) -> list[Path]:
    with _said_clearly(files, "cannot be read"):
        return sorted(files.iterdir()) if files.exists() else []


def _records_in(folder: Path) -> list[Path]:
    """TOML files of a folder; the folder itself where it cannot be looked into."""
    try:
        return [path for path in folder.iterdir() if re.fullmatch(r"[^.].*\.toml", path.name)]
    except FileNotFoundError:
        return []
    except OSError:
        return [folder]


def _entry(path: Path) -> Entry:
    try:
        status = path.stat()
    except OSError as error:
        return Entry(path, fault=f"{plain(path, 300)}: cannot be opened: {error.strerror}")
    return _entry_as_of(path, status.st_mtime_ns, status.st_size, status.st_ino)


@lru_cache(maxsize=4096)
def _entry_as_of(path: Path, *_state: int) -> Entry:
    """An entry is read once for each state of its file, so that listing again costs nothing."""
    try:
        document = read_document(path)
        opened = value_at(document, "session.opened")
        if not isinstance(opened, datetime):
            raise EntryError("session.opened", "should be a date and time with its offset")
        signatures = _signatures(document)
        return Entry(
            path,
            id=_shown(document, "session.id"),
            tag=_shown(document, "vehicle.tag"),
            description=_shown(document, "vehicle.description", ""),
            kind=_shown(document, "session.kind", ""),
            follows=_shown(document, "session.follows", ""),
            technician=_shown(document, "session.technician", ""),
            profile=_shown(document, "session.profile", ""),
            opened=opened.astimezone() if opened.tzinfo is None else opened,
            overall=_shown(document, "results.overall", ""),
            decision=plain(signatures[-1].get("decision", "")) if signatures else "",
        )
    except RecordError as error:
        return Entry(path, fault=str(error))
    except (EntryError, OverflowError, ValueError) as error:
        return Entry(path, fault=f"{plain(path, 300)}: {error}")


def _shown(document: Document, path: str, default: str | None = None) -> str:
    return plain(text_at(document, path, default), 200)


def _newest_first(entries: Iterator[Entry]) -> list[Entry]:
    """An entry without its own time is placed by that of its file."""

    def moment(entry: Entry) -> float:
        if entry.opened:
            return entry.opened.timestamp()
        with suppress(OSError):
            return entry.path.stat().st_mtime
        return 0.0

    return sorted(entries, key=lambda entry: (moment(entry), entry.path.name), reverse=True)


def _is_filed(files: Path, entry: Entry) -> bool:
    return not entry.fault and (files / entry.tag / entry.path.name).is_file()
