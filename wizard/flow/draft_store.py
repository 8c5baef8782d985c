"""The drafts this program works on: kept after every answer, and never over another program's."""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path

from core.documents.document import Document, value_at
from core.documents.record import RecordError, discard_draft, draft_path, record_path, save_draft
from core.text.plain_text import plain

ELSEWHERE = (
    "was gone on with in another window; nothing is overwritten: leave with F9, and open it again "
    "from the first page"
)
FILED = "was filed from another window meanwhile; leave with F9, and open it from the first page"


class DraftStore:
    """Drafts in a files folder, and how this program last saw each of them on the disk.

    Parameters
    ----------
    files : Path
    """

    def __init__(self, files: Path) -> None:
        self.files = files
        self.seen: dict[Path, bytes] = {}

    def lay_out(self, path: Path) -> None:
        """Remember how a draft is as it is opened."""
        with suppress(OSError):
            self.seen[path] = path.read_bytes()

    def keep(self, document: Document, before: Document | None = None) -> None:
        """Put a draft on the disk; one under an earlier id goes. Without a tag nothing is kept.

        Raises
        ------
        RecordError
            It cannot be written, or another program has gone on with it; what was there stays.
        """
        name, earlier = value_at(document, "session.id"), value_at(before or {}, "session.id")
        if name is not None:
            self.check(document)
            self.lay_out(save_draft(self.files, document))
        if before is not None and earlier is not None and earlier != name:
            discard_draft(self.files, before)

    def holds(self, document: Document) -> bool:
        """Whether a session is on the disk as a draft."""
        try:
            return draft_path(self.files, document).exists()
        except RecordError:  # it has no id yet
            return False

    def check(self, document: Document) -> None:
        """Raises RecordError where another program has gone on with a session, or filed it."""
        path = draft_path(self.files, document)
        if path not in self.seen:
            return
        try:
            there = path.read_bytes()
        except OSError:
            if record_path(self.files, document).exists():
                raise RecordError(f"{plain(path, 300)}: {FILED}") from None
            return
        if there != self.seen[path]:
            raise RecordError(f"{plain(path, 300)}: {ELSEWHERE}")
