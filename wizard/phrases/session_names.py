"""How a session is called."""

from datetime import datetime

from core.documents.document import Document, value_at
from core.text.plain_text import plain


def vehicle_tag(document: Document) -> str:
    """What the vehicle is called."""
    return plain(value_at(document, "vehicle.tag", "a vehicle"))


def opening_time(document: Document) -> str:
    """When it was begun, "2026-11-25 14:12"."""
    moment = value_at(document, "session.opened")
    return f"{moment:%Y-%m-%d %H:%M}" if isinstance(moment, datetime) else "at no known time"


def session_words(document: Document) -> str:
    """Which session of which vehicle: "FG-3, first session, 2026-11-25 14:12"."""
    kind = plain(value_at(document, "session.kind", "first"))
    return f"{vehicle_tag(document)}, {kind} session, {opening_time(document)}"
