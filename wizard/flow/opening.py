"""What lies on the disk, opened to be worked on: a draft to go on with, a record to begin from."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from core.documents.document import Document, value_at, with_value, without
from core.documents.record import RecordError, read_document, tag_fault
from core.documents.record_list import list_records
from core.profiles.profile import ProfileError, load_profile
from core.text.plain_text import plain
from wizard.flow import drafts
from wizard.flow.flow import PASSED, PLACE, Flow
from wizard.questions.steps import STEPS


@dataclass(frozen=True)
class OpenedSession:
    """A session to be measured: where it is, what it follows, and what had to be said about it."""

    flow: Flow
    earlier: Document | None = None
    remark: str = ""


def open_draft(path: Path, files: Path, profile_folders: Sequence[Path]) -> OpenedSession:
    """An unfinished session at the question it had reached. Raises RecordError."""
    document = _sound(path)
    if fault := tag_fault(str(value_at(document, "vehicle.tag", ""))):
        raise RecordError(f"{plain(path, 300)}: [vehicle] tag: {fault}")
    follows = value_at(document, "session.follows", "")
    return _opened(document, _earlier(files, str(follows)), profile_folders)


def open_re_measure(path: Path, profile_folders: Sequence[Path]) -> OpenedSession:
    """A new session that measures again the vehicle of a filed one. Raises RecordError."""
    earlier = _sound(path)
    return _opened(drafts.new_re_measure(earlier, drafts.now()), earlier, profile_folders)


def _opened(
    document: Document, earlier: Document | None, profile_folders: Sequence[Path]
) -> OpenedSession:
    name = value_at(document, "session.profile")
    if name is None:
        return OpenedSession(Flow(document), earlier)
    try:
        return OpenedSession(Flow(document, load_profile(str(name), profile_folders)), earlier)
    except ProfileError as error:
        document = with_value(without(document, "session.profile"), PLACE, "session.profile")
        return OpenedSession(Flow(document), earlier, f"choose the profile again: {error}")


def _earlier(files: Path, follows: str) -> Document | None:
    """The session of this id, if it can be found and read; it is only looked at."""
    with suppress(RecordError):
        for entry in list_records(files):
            if follows and entry.id == follows:
                return _sound(entry.path)
    return None


def _sound(path: Path) -> Document:
    """A document whose tables are tables, so that its questions can be asked."""
    document = read_document(path)
    paths = [question.path for step in STEPS for question in step.questions]
    for table in {table for question in paths for table in _tables_above(question)} | {"draft"}:
        if not isinstance(value_at(document, table, {}), Mapping):
            raise RecordError(f"{plain(path, 300)}: {table}: is a value; it should be a table")
    if not _is_list_of(value_at(document, PASSED, []), str):
        raise RecordError(f"{plain(path, 300)}: {PASSED}: should be a list of texts")
    if not _is_list_of(document.get("kept", []), Mapping):
        raise RecordError(f"{plain(path, 300)}: [[kept]]: should be a list of tables")
    return document


def _tables_above(path: str) -> list[str]:
    keys = path.split(".")
    return [".".join(keys[:end]) for end in range(1, len(keys))]


def _is_list_of(value: object, kind: type) -> bool:
    return isinstance(value, list) and all(isinstance(one, kind) for one in value)
