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


def wrong_order_words(before: Document, after: Document) -> str:
    """Warning about a session "before" that was opened after the other one; else empty."""
    opened = [value_at(document, "session.opened") for document in (before, after)]
    moments = [moment for moment in opened if isinstance(moment, datetime)]
    if len(moments) < 2 or moments[0].timestamp() <= moments[1].timestamp():
        return ""
    return (
        f"The session before is the later one ({opening_time(before)}); the one after is of "
        f"{opening_time(after)}. Name the earlier record first."
    )
