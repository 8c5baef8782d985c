"""Drafts in a files folder: every answer is kept, and no other program's answers are lost."""

from contextlib import suppress
from pathlib import Path

from core.documents.document import Document, value_at
from core.documents.record import RecordError, discard_draft, draft_path, record_path, save_draft
from core.text.plain_text import plain

CHANGED_ELSEWHERE = (
    "was changed in another window. Nothing is overwritten. "
    "Leave with F9, and open the session again from home"
)
FILED_ELSEWHERE = (
    "was filed from another window. Leave with F9, and open the filed session from home"
)


class DraftStore:
    """Drafts in a files folder, each with its content when this program last saw it.

    Parameters
    ----------
    files : Path
        The folder of records and drafts.
    """

    def __init__(self, files: Path) -> None:
        self.files = files
        self._last_seen: dict[Path, bytes] = {}

    def remember(self, path: Path) -> None:
        """Remember the content of a draft, so that a later change by another program is noticed."""
        with suppress(OSError):
            self._last_seen[path] = path.read_bytes()

    def keep(self, document: Document, before: Document | None = None) -> None:
        """Keep the answers of a session on the disk. Without a tag nothing is kept.

        Parameters
        ----------
        document : mapping
            The session.
        before : mapping, optional
            The session before its last answer. If its id was another one, its draft is removed.

        Raises
        ------
        RecordError
            The draft cannot be written, or another program has changed it. The file stays as it
            was.
        """
        session_id = value_at(document, "session.id")
        earlier_id = value_at(before or {}, "session.id")
        if session_id is not None:
            self.check_unchanged(document)
            self.remember(save_draft(self.files, document))
        if before is not None and earlier_id is not None and earlier_id != session_id:
            discard_draft(self.files, before)

    def has_draft(self, document: Document) -> bool:
        """True if the session is on the disk as a draft."""
        try:
            return draft_path(self.files, document).exists()
        except RecordError:  # it has no id yet
            return False

    def check_unchanged(self, document: Document) -> None:
        """Raise RecordError if another program has changed or filed the session."""
        path = draft_path(self.files, document)
        if path not in self._last_seen:
            return
        try:
            content = path.read_bytes()
        except OSError:
            if record_path(self.files, document).exists():
                raise RecordError(f"{plain(path, 300)}: {FILED_ELSEWHERE}") from None
            return
        if content != self._last_seen[path]:
            raise RecordError(f"{plain(path, 300)}: {CHANGED_ELSEWHERE}")
