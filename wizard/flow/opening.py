"""Sessions opened for measuring: a draft is resumed, or a filed session is measured again."""

from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from core.documents.document import Document, value_at, with_value, without
from core.documents.record import RecordError, tag_fault
from core.documents.record_list import find_record
from core.profiles.profile import ProfileError, load_profile
from core.text.plain_text import plain
from wizard.flow import drafts
from wizard.flow.flow import PLACE, Flow
from wizard.flow.sound_document import read_sound_document


@dataclass(frozen=True)
class OpenedSession:
    """A session that was opened for measuring.

    Attributes
    ----------
    flow : Flow
        The session at its question.
    remark : str
        A line about a difficulty; empty if there was none.
    earlier : mapping or None
        Record of the session that is measured again.
    draft : mapping or None
        The session as its draft on the disk has it.
    """

    flow: Flow
    remark: str = ""
    earlier: Document | None = None
    draft: Document | None = None


def open_draft(path: Path, files: Path, profile_folders: Sequence[Path]) -> OpenedSession:
    """Open an unfinished session at the question it had reached. Raises RecordError."""
    draft = read_sound_document(path)
    if fault := tag_fault(str(value_at(draft, "vehicle.tag", ""))):
        raise RecordError(f"{plain(path, 300)}: [vehicle] tag: {fault}")
    earlier = _earlier_session(files, str(value_at(draft, "session.follows", "")))
    return OpenedSession(*flow_of(draft, profile_folders), earlier=earlier, draft=draft)


def open_re_measure(
    path: Path, profile_folders: Sequence[Path], usual: Mapping[str, Any] | None = None
) -> OpenedSession:
    """Open a new session that measures the vehicle of a filed one again. Raises RecordError.

    With `usual`, the usual answers of the shop, it goes the short way.
    """
    earlier = read_sound_document(path)
    document: Document = drafts.new_re_measure(earlier, drafts.now())
    if usual is not None:
        document = drafts.on_short_way(document, usual)
    return OpenedSession(*flow_of(document, profile_folders), earlier=earlier)


def flow_of(document: Document, profile_folders: Sequence[Path]) -> tuple[Flow, str]:
    """Flow of a document with its profile; a faulty profile is asked for again.

    Returns
    -------
    flow : Flow
    remark : str
        Why the profile is asked for again; empty if it is sound.
    """
    name = value_at(document, "session.profile")
    if name is None:
        return Flow(document), ""
    try:
        return Flow(document, load_profile(str(name), profile_folders)), ""
    except ProfileError as error:
        document = with_value(without(document, "session.profile"), PLACE, "session.profile")
        return Flow(document), f"choose the profile again: {error}"


def _earlier_session(files: Path, session_id: str) -> Document | None:
    """Record of this id; None if it is missing or faulty."""
    with suppress(RecordError):
        if entry := find_record(files, session_id):
            return read_sound_document(entry.path)
    return None
