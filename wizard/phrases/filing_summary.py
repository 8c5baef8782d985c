"""Summary of a session that is about to be filed: the verdict and the plan."""

from core.documents.document import Document
from core.documents.entries import EntryError
from core.fix.plan_record import filed_plan
from core.profiles.profile import Profile
from core.text.quantity import LengthUnit
from core.verdict.assess import assess
from wizard.phrases.filed_plan import planned_words
from wizard.phrases.headline import headline_words


def filing_summary(document: Document, profile: Profile, unit: LengthUnit) -> str:
    """The verdict by linear propagation, and every move that is planned."""
    try:
        headline = headline_words(assess(document, lambda _: profile, draws=0))
        planned = filed_plan(document)
    except EntryError:
        return ""
    return f"{headline}; planned: {planned_words(planned, unit) if planned else 'nothing'}"
