"""What is about to be filed, in a line: the verdict and the plan."""

from core.assess import assess
from core.document import Document
from core.entries import EntryError
from core.plan import planned_in
from core.profile import Profile
from core.quantity import LengthUnit
from wizard.saying.planned import planned_words
from wizard.words import mark_and_word


def filed_words(document: Document, profile: Profile, unit: LengthUnit) -> str:
    """The verdict by linear propagation, and every move that is planned."""
    try:
        overall = mark_and_word(assess(document, lambda _: profile, draws=0).overall)
        planned = planned_in(document)
    except EntryError:
        return ""
    return f"{overall}; planned: {planned_words(planned, unit) if planned else 'nothing'}"
