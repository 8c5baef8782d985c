"""Records and drafts on the disk: one session, one TOML file.

The files folder has one folder for each vehicle, TAG/ID.toml. Drafts lie in unfinished/ID.toml.
The folder shop/ belongs to the workshop's own profiles. A filed record is never overwritten; only
signatures are added to it. A draft is the same TOML without results.
"""

import errno
import os
import re
import tomllib
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from datetime import datetime
from enum import StrEnum
from pathlib import Path
from typing import Any

import tomli_w

from core.documents import atomic_write
from core.documents.digest import canonical, digest
from core.documents.document import Document, value_at, without
from core.documents.entries import EntryError, text_at
from core.documents.file_lock import locked
from core.documents.seal import RECORD, sealed, written_links
from core.documents.signature import signatures_of
from core.documents.toml_file import LARGEST, TomlFileError, read_toml
from core.text.plain_text import plain


class SessionKind(StrEnum):
    """Kind of a session, as the record says it."""

    FIRST = "first"
    RE_MEASURE = "re-measure"


FORMAT = "evenarc session"
FORMAT_VERSION = 1
SHOP = "shop"
UNFINISHED = "unfinished"

_FIRST = ("format", "format_version", "program_version", "session", "vehicle", "complaint")
_LAST = ("kept", "limits", "results", "plan", "seal", "signatures")

_NAME = re.compile(r"\w(?:[\w .-]*\w)?")
_LONGEST_TAG = 32
_LONGEST_ID = 100
# Folders of Evenarc, and names that some systems reserve for devices with any ending.
_RESERVED = {SHOP, UNFINISHED, "con", "prn", "aux", "nul"} | {
    f"{device}{number}" for device in ("com", "lpt") for number in "0123456789¹²³"
}
_EASY_TO_READ = "23456789abcdefghjkmnpqrstuvwxyz"

_ELSEWHERE = "choose another folder with --files"
_UNCONFIRMED = "But the disk did not confirm it, so a loss of power may undo it; check the disk"
_REASONS = {
    errno.ENOSPC: "the disk is full; make room and try again",
    errno.EDQUOT: "the disk is full; make room and try again",
    errno.EACCES: f"that is not allowed there; {_ELSEWHERE}",
    errno.EPERM: f"that is not allowed there; {_ELSEWHERE}",
    errno.EROFS: f"that place is read-only; {_ELSEWHERE}",
    errno.EEXIST: f"a file is where a folder should be; {_ELSEWHERE}",
    errno.ENOTDIR: f"a file is where a folder should be; {_ELSEWHERE}",
}


class RecordError(ValueError):
    """A record cannot be read or written; the message is one line that says where and why."""


class DiskError(RecordError):
    """The system refuses to write a file; another folder may help."""


class NotConfirmed(RecordError):
    """A file is written and whole, but the disk did not confirm that it survives a loss of power.

    The message says what was done.
    """


def tag_fault(tag: str) -> str:
    """Reason that a vehicle's tag cannot name its folder; empty when it can."""
    if not _NAME.fullmatch(tag):
        return (
            f"“{plain(tag)}” cannot name a folder: use letters and digits, with space . _ or - "
            "between them, like FG-3"
        )
    if len(tag) > _LONGEST_TAG:
        return f"“{plain(tag, 20)}” is too long: use {_LONGEST_TAG} characters at most, like FG-3"
    if _is_reserved(tag):
        return f"“{plain(tag)}” is kept for other uses: choose another tag, like FG-3"
    return ""


def _is_reserved(name: str) -> bool:
    """True for a folder of Evenarc, or a device of some system, with any ending."""
    return name.casefold().partition(".")[0].strip() in _RESERVED


def new_id(tag: str, kind: str, opened: datetime) -> str:
    """A session's id, "FG-3_20261125-141205_first_k3f9". Raises RecordError for a bad tag."""
    if fault := tag_fault(tag):
        raise RecordError(f"[vehicle] tag: {fault}")
    chance = "".join(_EASY_TO_READ[byte % len(_EASY_TO_READ)] for byte in os.urandom(4))
    return f"{tag}_{opened:%Y%m%d-%H%M%S}_{kind}_{chance}"


def read_document(path: str | Path) -> dict[str, Any]:
    """A record or draft of a format this program knows. Raises RecordError."""
    try:
        document = read_toml(path)
    except TomlFileError as error:
        raise RecordError(str(error)) from None
    _check_format(path, document)
    return document


def record_path(files: Path, document: Document) -> Path:
    """File of a filed session. Raises RecordError when its tag or id cannot be names."""
    tag = _text(document, "vehicle.tag")
    if fault := tag_fault(tag):
        raise RecordError(f"[vehicle] tag: {fault}")
    return files / tag / _file_name(_text(document, "session.id"))


def draft_path(files: Path, document: Document) -> Path:
    """File of a session's draft. Raises RecordError when its id cannot be a name."""
    return files / UNFINISHED / _file_name(_text(document, "session.id"))


def save_draft(files: Path, document: Document) -> Path:
    """Write an unfinished session; it is on the disk on return.

    Raises
    ------
    NotConfirmed
        It is written, but a loss of power may undo that.
    RecordError
        It could not be written; an earlier draft stays.
    """
    path = draft_path(files, document)
    content = _encoded(path, without(without(document, "results"), "session.closed"))
    with as_record_errors(path, "cannot be kept"):
        atomic_write.make_folder(path.parent)
        atomic_write.replace_file(path, content)
    return path


def discard_draft(files: Path, document: Document) -> None:
    """Remove the draft of a session, if it exists. Raises RecordError."""
    path = draft_path(files, document)
    with as_record_errors(path, "cannot be removed"):
        try:
            path.unlink(missing_ok=True)
        except OSError:
            if os.path.lexists(path):
                raise


def file_record(files: Path, document: Document) -> Path:
    """Seal and file a finished session, then remove its draft.

    Returns
    -------
    Path
        The record, which has been read back and compared with `document`.

    Raises
    ------
    NotConfirmed
        The record is filed and was read back, but a loss of power may undo that. The draft stays.
    RecordError
        The session cannot be filed, or a record of its id exists; nothing was changed.
    """
    path = record_path(files, document)
    content = _encoded(path, document, seals=True)
    with as_record_errors(path, "cannot be filed"):
        atomic_write.make_folder(path.parent)
    with as_record_errors(path, "cannot be filed", if_exists="is filed already and stays as it is"):
        atomic_write.create_file(path, content)
    with suppress(OSError):  # the session is filed; the draft is removed later
        draft_path(files, document).unlink(missing_ok=True)
    return path


def replace_signed(path: Path, document: Document) -> None:
    """Replace a record by the same document with further signatures.

    No other program can sign the record between the look at it and its replacement.

    Raises
    ------
    NotConfirmed
        The record is signed, but a loss of power may undo that.
    RecordError
        The record has changed since it was read, more than signatures would change, or the file
        cannot be written. The record stays as it was.
    """
    path = path.resolve()
    with as_record_errors(path, "cannot be signed"), locked(path):
        if not _only_signs(read_document(path), document):
            raise RecordError(
                f"{plain(path, 300)}: has changed since it was opened; open it again and sign that"
            )
        atomic_write.replace_file(path, _encoded(path, document))


@contextmanager
def as_record_errors(path: Path, failure: str, if_exists: str = "") -> Iterator[None]:
    """Turn an OSError about a path into a RecordError of one line.

    Parameters
    ----------
    path : Path
    failure : str
        Beginning of the message, "cannot be filed"; the system's reason follows it. If the file is
        written and only not confirmed, the message begins with "is filed" instead.
    if_exists : str
        The whole message where a file of this name exists; where empty, `failure` is used.
    """
    name = plain(path, 300)
    try:
        yield
    except atomic_write.UnconfirmedError:
        done = failure.replace("cannot be", "is", 1)
        raise NotConfirmed(f"{name}: {done} and can be read back. {_UNCONFIRMED}") from None
    except BlockingIOError as error:
        raise RecordError(f"{name}: {failure}: {error.strerror}") from None
    except OSError as error:
        if if_exists and isinstance(error, FileExistsError):
            raise RecordError(f"{name}: {if_exists}") from None
        reason = _REASONS.get(error.errno or 0) or error.strerror or str(error)
        raise DiskError(f"{name}: {failure}: {plain(reason, 200)}") from None


def _check_format(path: str | Path, document: Document) -> None:
    name = plain(path, 300)
    if document.get("format") != FORMAT:
        raise RecordError(f"{name}: format: is no Evenarc record; it should be “{FORMAT}”")
    version = document.get("format_version")
    if type(version) is not int or version < 1:
        raise RecordError(
            f"{name}: format_version: {plain(version)} is no version; it should be {FORMAT_VERSION}"
        )
    if version > FORMAT_VERSION:
        raise RecordError(
            f"{name}: format_version: {version} is newer than this program, which knows "
            f"{FORMAT_VERSION}; a newer Evenarc can read it"
        )


def _text(document: Document, path: str) -> str:
    try:
        return text_at(document, path)
    except EntryError as error:
        raise RecordError(str(error)) from None


def _file_name(session_id: str) -> str:
    if len(session_id) > _LONGEST_ID or not _NAME.fullmatch(session_id) or _is_reserved(session_id):
        raise RecordError(
            f"[session] id: “{plain(session_id)}” cannot name a file; it should be like "
            "FG-3_20261125-141205_first_k3f9"
        )
    return f"{session_id}.toml"


def _only_signs(before: Document, after: Document) -> bool:
    """True if a document differs by further signatures at its end, and by their links."""
    signatures, links = signatures_of(before), written_links(before)
    return (
        digest(before) == digest(after)
        and value_at(before, RECORD) == value_at(after, RECORD)
        and signatures_of(after)[: len(signatures)] == signatures
        and written_links(after)[: len(links)] == links
    )


def _encoded(path: Path, document: Document, seals: bool = False) -> bytes:
    """The document as bytes for the disk, which read back as the same values."""
    _check_format(path, document)
    try:
        document = sealed(document) if seals else document
        content = _as_toml(document).encode()
        kept = canonical(tomllib.loads(content.decode())) == canonical(document)
    except (
        TypeError,
        ValueError,
        AttributeError,
    ):  # a value that is not TOML's, or half a character
        kept = False
    if not kept:
        raise RecordError(f"{plain(path, 300)}: holds a value that TOML cannot keep")
    if len(content) > LARGEST:
        raise RecordError(
            f"{plain(path, 300)}: would be larger than {LARGEST // 1_000_000} MB; shorten the notes"
        )
    return content


def _as_toml(document: Document) -> str:
    """The document with its tables in the order of the format, every table under a header.

    Each table is written by itself, or tomli_w would move short tables of a list to the top.
    """
    between = [key for key in document if key not in {*_FIRST, *_LAST}]
    ordered = {key: document[key] for key in (*_FIRST, *between, *_LAST) if key in document}
    plainly = {key: value for key, value in ordered.items() if not _is_table(value)}
    chunks = [tomli_w.dumps(plainly)]
    for key, value in ordered.items():
        if isinstance(value, Mapping):
            chunks.append(tomli_w.dumps({key: value}))
        elif _is_table(value):
            header = tomli_w.dumps({key: {}}).strip()
            chunks += [
                f"[{header}]\n{tomli_w.dumps({key: item}).removeprefix(header).lstrip()}"
                for item in value
            ]
    return "\n".join(chunks)


def _is_table(value: Any) -> bool:
    """True if a value is a table or a list of tables."""
    if isinstance(value, list):
        return bool(value) and all(isinstance(item, Mapping) for item in value)
    return isinstance(value, Mapping)
