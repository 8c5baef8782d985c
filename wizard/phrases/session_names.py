"""Names of a session."""

from datetime import datetime

from core.documents.document import Document, value_at
from core.text.plain_text import plain


def vehicle_tag(document: Document) -> str:
    """Tag of the vehicle."""
    return plain(value_at(document, "vehicle.tag", "a vehicle"))


def opening_time(document: Document) -> str:
    """Time at which the session was opened, "2026-11-25 14:12"."""
    moment = value_at(document, "session.opened")
    return f"{moment:%Y-%m-%d %H:%M}" if isinstance(moment, datetime) else "at no known time"


def session_words(document: Document) -> str:
    """Name of a session with its vehicle: "FG-3, first session, 2026-11-25 14:12"."""
    kind = plain(value_at(document, "session.kind", "first"))
    return f"{vehicle_tag(document)}, {kind} session, {opening_time(document)}"
