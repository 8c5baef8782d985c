"""Documents of sessions whose tables are whole, as the questions need them."""

from pathlib import Path
from typing import Any

from core.documents.document import value_at
from core.documents.entries import EntryError
from core.documents.record import RecordError, read_document
from core.sessions.known_entries import refuse_damaged
from core.text.plain_text import plain
from wizard.flow.answers import PASSED
from wizard.flow.carrying import CARRIED
from wizard.flow.short_way import TAKEN

LISTS_OF_TEXTS = (PASSED, TAKEN, CARRIED)
"""Paths of the lists that the order of the questions rests on."""


def read_sound_document(path: Path) -> dict[str, Any]:
    """Read a document and refuse one whose tables are damaged.

    Raises RecordError.
    """
    document = read_document(path)
    try:
        refuse_damaged(document)
    except EntryError as error:
        raise RecordError(f"{plain(path, 300)}: {error}") from None
    for entry in LISTS_OF_TEXTS:
        texts = value_at(document, entry, [])
        if not isinstance(texts, list) or not all(isinstance(text, str) for text in texts):
            raise RecordError(f"{plain(path, 300)}: {entry}: should be a list of texts")
    return document
