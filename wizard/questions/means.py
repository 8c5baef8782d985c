"""The means of a session, which decides how some questions are asked: tape or photographs."""

from core.documents.document import Document, value_at
from core.readings.photograph import Means


def is_photographed(document: Document, _profile: object = None) -> bool:
    """True if the session is taken from photographs."""
    return bool(value_at(document, "session.means") == Means.PHOTOGRAPHS)


def is_taped(document: Document, _profile: object = None) -> bool:
    """True if the session is taken with the tape: heights and offsets are then needed."""
    return not is_photographed(document)
