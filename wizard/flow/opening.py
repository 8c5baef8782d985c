"""Sessions opened for measuring: a draft is resumed, or a filed session is measured again."""

from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from core.documents.document import Document, value_at, with_value, without
from core.documents.record import RecordError, read_document, tag_fault
from core.documents.record_list import find_record
from core.profiles.profile import ProfileError, load_profile
from core.text.plain_text import plain
from wizard.flow import drafts
from wizard.flow.flow import PASSED, PLACE, Flow
from wizard.questions.steps import QUESTIONS


@dataclass(frozen=True)
class OpenedSession:
    """A session that was opened for measuring.

    Attributes
    ----------
    flow : Flow
        The session at its question.
    earlier : mapping or None
        Record of the session that is measured again.
    remark : str
        A line about a difficulty; empty if there was none.
    """

    flow: Flow
    earlier: Document | None = None
    remark: str = ""


def open_draft(path: Path, files: Path, profile_folders: Sequence[Path]) -> OpenedSession:
    """Open an unfinished session at the question it had reached. Raises RecordError."""
    document = _read_with_sound_tables(path)
    if fault := tag_fault(str(value_at(document, "vehicle.tag", ""))):
        raise RecordError(f"{plain(path, 300)}: [vehicle] tag: {fault}")
    follows = str(value_at(document, "session.follows", ""))
    return _opened(document, _earlier_session(files, follows), profile_folders)


def open_re_measure(path: Path, profile_folders: Sequence[Path]) -> OpenedSession:
    """Open a new session that measures the vehicle of a filed one again. Raises RecordError."""
    earlier = _read_with_sound_tables(path)
    return _opened(drafts.new_re_measure(earlier, drafts.now()), earlier, profile_folders)


def _opened(
    document: Document, earlier: Document | None, profile_folders: Sequence[Path]
) -> OpenedSession:
    """Load the profile of a session; a session whose profile is faulty asks for it again."""
    name = value_at(document, "session.profile")
    if name is None:
        return OpenedSession(Flow(document), earlier)
    try:
        return OpenedSession(Flow(document, load_profile(str(name), profile_folders)), earlier)
    except ProfileError as error:
        document = with_value(without(document, "session.profile"), PLACE, "session.profile")
        return OpenedSession(Flow(document), earlier, f"choose the profile again: {error}")


def _earlier_session(files: Path, session_id: str) -> Document | None:
    """Record of this id; None if it is missing or faulty."""
    with suppress(RecordError):
        if entry := find_record(files, session_id):
            return _read_with_sound_tables(entry.path)
    return None


def _read_with_sound_tables(path: Path) -> Document:
    """Read a document and check the type of every table that the questions use."""
    document = read_document(path)
    tables = {table for question_path in QUESTIONS for table in _tables_above(question_path)}
    for table in tables | {"draft"}:
        if not isinstance(value_at(document, table, {}), Mapping):
            raise RecordError(f"{plain(path, 300)}: {table}: is a value; it should be a table")
    if not _is_list_of(value_at(document, PASSED, []), str):
        raise RecordError(f"{plain(path, 300)}: {PASSED}: should be a list of texts")
    if not _is_list_of(document.get("kept", []), Mapping):
        raise RecordError(f"{plain(path, 300)}: [[kept]]: should be a list of tables")
    return document


def _tables_above(path: str) -> list[str]:
    """Paths of the tables that a dotted path passes through."""
    keys = path.split(".")
    return [".".join(keys[:end]) for end in range(1, len(keys))]


def _is_list_of(value: object, kind: type) -> bool:
    return isinstance(value, list) and all(isinstance(item, kind) for item in value)
