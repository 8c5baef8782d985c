"""Drafts in a files folder: every answer is kept, and no other window's answers are lost."""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from core.documents.atomic_write import make_folder
from core.documents.document import Document, value_at, without
from core.documents.file_lock import locked
from core.documents.merge import merged
from core.documents.record import (
    DiskError,
    NotConfirmed,
    RecordError,
    as_record_errors,
    discard_draft,
    draft_path,
    file_record,
    record_path,
    save_draft,
)
from core.text.plain_text import plain
from wizard.flow.answers import PASSED
from wizard.flow.flow import PLACE
from wizard.flow.planning import SWITCHED_OFF
from wizard.flow.short_way import REFINES, TAKEN, WAY
from wizard.flow.sound_document import read_sound_document
from wizard.phrases.other_window import (
    FILED_ELSEWHERE,
    NOT_FILED_YET,
    NOT_TAKEN_BACK,
    THROWN_AWAY,
    answered_words,
)

MERGED_LISTS = ("kept", PASSED, TAKEN)
"""Lists to which two windows can add."""

OF_THE_WINDOW = (PLACE, SWITCHED_OFF, WAY, REFINES)
"""Values that belong to a window; the last window that writes a draft has its own there."""


class AnsweredElsewhere(RecordError):
    """Another window has answered questions that this window does not know or answers too.

    Attributes
    ----------
    document : mapping
        The session as the other window has kept it.
    """

    def __init__(self, message: str, document: Document) -> None:
        super().__init__(message)
        self.document = document


@dataclass(frozen=True, eq=False)
class Kept:
    """A session that is on the disk.

    Attributes
    ----------
    document : mapping
        The session with the answers of every window.
    remark : str
        A line about a difficulty; empty if there was none.
    """

    document: Document
    remark: str = ""


class DraftStore:
    """Drafts in a files folder, each with its content when this window last saw it.

    Parameters
    ----------
    files : Path
        The folder of records and drafts.
    """

    def __init__(self, files: Path) -> None:
        self.files = files
        self._was_there = files.is_dir()
        self._last_seen: dict[Path, Document] = {}

    def remember(self, document: Document) -> None:
        """Remember a draft as it was read, so that the changes of this window can be told."""
        self._last_seen[draft_path(self.files, document)] = document

    def keep(self, document: Document, before: Document | None = None) -> Kept:
        """Keep the answers of a session on the disk. Without a tag nothing is kept.

        The draft is read and replaced under a lock. Only the values that this window has changed
        are put into it, so the answers of another window stay.

        Parameters
        ----------
        document : mapping
            The session.
        before : mapping, optional
            The session before its last answer. If its id was another one, its draft is removed.

        Raises
        ------
        AnsweredElsewhere
            Another window has answered the same question. The draft stays as it was.
        RecordError
            The draft cannot be written, or the session was filed. The draft stays as it was.
        """
        earlier = before if value_at(before or {}, "session.id") is not None else None
        if value_at(document, "session.id") is None:
            if earlier is not None:
                self._take_back(earlier)
            return Kept(document)
        path = draft_path(self.files, document)
        source = draft_path(self.files, earlier or document)
        with self._held(source, "cannot be kept"):
            self._check_not_filed(earlier or document)
            remarks = self._thrown_away(source)
            remarks += self._write(self._with_other_answers(source, document, earlier or {}))
            if source != path and earlier is not None:
                remarks += self._discard(source, earlier)
            return Kept(self._last_seen[path], "; ".join(remarks))

    def file(self, document: Document, record: Document) -> Path:
        """File the record of a session, and return its path.

        Raises
        ------
        AnsweredElsewhere
            Another window has answered a question since this window last saw the draft.
        NotConfirmed
            The record is filed, but a loss of power may undo that.
        RecordError
            The session cannot be filed, or was filed from another window.
        """
        path = draft_path(self.files, document)
        with self._held(path, "cannot be filed"):
            self._check_not_filed(document)
            draft = self._read(path)
            seen = self._last_seen.get(path)
            if draft and seen and without(draft, "draft") != without(seen, "draft"):
                self._last_seen[path] = draft
                raise AnsweredElsewhere(f"{plain(path, 300)}: {NOT_FILED_YET}", draft)
            return file_record(self.files, record)

    def has_draft(self, document: Document) -> bool:
        """True if the session is on the disk as a draft."""
        try:
            return draft_path(self.files, document).exists()
        except (RecordError, OSError):  # it has no id yet, or its folder is closed
            return False

    @contextmanager
    def _held(self, path: Path, failure: str) -> Iterator[None]:
        """Hold the lock of a draft. A folder that has disappeared is not made again."""
        is_gone = self._was_there and not self.files.is_dir()
        if is_gone or (path in self._last_seen and not path.parent.is_dir()):
            gone = plain(self.files if is_gone else path.parent, 300)
            raise DiskError(
                f"{gone}: {failure}: the folder is gone. Was a disk unplugged? Bring the folder "
                "back, then press Enter again"
            )
        with as_record_errors(path, failure):
            make_folder(path.parent)
            self._was_there = True
            with locked(path):
                yield

    def _check_not_filed(self, document: Document) -> None:
        if record_path(self.files, document).exists():
            raise RecordError(f"{plain(draft_path(self.files, document), 300)}: {FILED_ELSEWHERE}")

    def _read(self, path: Path) -> Document | None:
        """The draft on the disk; None if there is none."""
        if not os.path.lexists(path):
            return None
        try:
            return read_sound_document(path)
        except RecordError as error:
            raise DiskError(str(error)) from None

    def _thrown_away(self, path: Path) -> tuple[str, ...]:
        """A line if the draft was there before and is not now; () else."""
        is_gone = path in self._last_seen and not os.path.lexists(path)
        return (f"{plain(path, 300)}: {THROWN_AWAY}",) if is_gone else ()

    def _with_other_answers(self, path: Path, document: Document, before: Document) -> Document:
        """The session with the answers that other windows have put into its draft."""
        draft = self._read(path)
        if draft is None:
            return document
        seen = self._last_seen.get(path, before)
        both = merged(seen, document, draft, MERGED_LISTS)
        answered = [name for name in both.conflicts if name not in OF_THE_WINDOW]
        if answered:
            self._last_seen[path] = draft
            raise AnsweredElsewhere(answered_words(answered, draft), draft)
        return both.document

    def _write(self, document: Document) -> tuple[str, ...]:
        """Write a draft and read it back; the result has a line if the disk did not confirm it."""
        remarks: tuple[str, ...] = ()
        try:
            save_draft(self.files, document)
        except NotConfirmed as error:
            remarks = (str(error),)
        self.remember(read_sound_document(draft_path(self.files, document)))
        return remarks

    def _discard(self, path: Path, document: Document) -> tuple[str, ...]:
        """Remove the draft under an earlier tag; the result has a line if it stays."""
        try:
            discard_draft(self.files, document)
        except RecordError as error:
            return (f"{error}; it stays as an unfinished session",)
        self._last_seen.pop(path, None)
        return ()

    def _take_back(self, document: Document) -> None:
        """Remove the draft of a session whose tag was undone, if no other window has changed it."""
        path = draft_path(self.files, document)
        if not os.path.lexists(path):
            return
        with self._held(path, "cannot be removed"):
            draft = self._read(path)
            if draft is not None and draft != self._last_seen.get(path):
                self._last_seen[path] = draft
                raise AnsweredElsewhere(f"{plain(path, 300)}: {NOT_TAKEN_BACK}", draft)
            discard_draft(self.files, document)
            self._last_seen.pop(path, None)
