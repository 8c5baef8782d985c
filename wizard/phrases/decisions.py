"""The shop lead's decisions on a record."""

from collections.abc import Iterator

from core.documents.document import Document
from core.documents.signature import signature_is_valid, signatures_of
from core.text.plain_text import plain, with_full_stop
from wizard.phrases.fact import LOOK, Fact

DECISIONS = {"signed": "signed", "returned": "sent back"}

NO_LONGER = "The record was changed since: it no longer stands."


def decision_facts(document: Document) -> Iterator[Fact]:
    """Every decision, oldest first, and whether it is still about what the record says."""
    for signature in signatures_of(document):
        decision = str(signature.get("decision", ""))
        at = signature.get("at")
        when = f", {at:%Y-%m-%d %H:%M}" if hasattr(at, "strftime") else ""
        note = plain(signature.get("note", ""), 500)
        text = f"by {plain(signature.get('by', 'somebody'))}{when}" + (f": {note}" if note else "")
        name = DECISIONS.get(decision, plain(decision))
        if signature_is_valid(document, signature):
            yield Fact(name, text, "✓" if decision == "signed" else LOOK)
        else:
            yield Fact(name, f"{with_full_stop(text)} {NO_LONGER}", LOOK)
