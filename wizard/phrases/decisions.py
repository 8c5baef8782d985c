"""The shop lead's decisions on a record."""

from collections.abc import Iterator

from core.documents.document import Document
from core.documents.signature import FiledDecision, filed_state
from core.text.plain_text import plain, with_full_stop
from wizard.phrases.fact import LOOK, Fact

DECISIONS = {"signed": "signed", "returned": "sent back"}

DECISION_CHANGED = "Its own words, date or name were changed since: it no longer stands."
RECORD_CHANGED = "The record was changed since: it no longer stands."


def decision_facts(document: Document) -> Iterator[Fact]:
    """Every decision, oldest first, and whether it stands; then the number of removed ones."""
    state = filed_state(document)
    for decision in state.decisions:
        signature = decision.signature
        at = signature.get("at")
        when = f", {at:%Y-%m-%d %H:%M}" if hasattr(at, "strftime") else ""
        note = plain(signature.get("note", ""), 500)
        text = f"by {plain(signature.get('by', 'somebody'))}{when}" + (f": {note}" if note else "")
        word = str(signature.get("decision", ""))
        name, fault = DECISIONS.get(word, plain(word)), fault_words(decision)
        if fault:
            yield Fact(name, f"{with_full_stop(text)} {fault}", LOOK)
        else:
            yield Fact(name, text, "✓" if word == "signed" else LOOK)
    if state.removed:
        removed = "A decision was" if state.removed == 1 else f"{state.removed} decisions were"
        yield Fact("removed", f"{removed} removed from this record.", LOOK)


def fault_words(decision: FiledDecision) -> str:
    """Reason why a decision does not stand; empty if it stands."""
    if not decision.is_unchanged:
        return DECISION_CHANGED
    return "" if decision.fits_record else RECORD_CHANGED
