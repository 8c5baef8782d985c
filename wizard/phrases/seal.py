"""The seal of a record in words."""

from collections.abc import Iterator

from core.documents.document import Document, value_at
from core.documents.seal import METHOD_VERSION_ENTRY, SealState
from core.documents.signature import filed_state
from core.verdict.method import METHOD_VERSION
from wizard.phrases.fact import LOOK, Fact

CHANGED = "changed since it was filed"
DECISION_CHANGED = "a decision was changed"
NO_SEAL = "no seal"
AFRESH = "The verdict is computed afresh."


def seal_facts(document: Document, which: str = "This") -> Iterator[Fact]:
    """Facts about the seal of a filed record; none while the session is measured.

    Parameters
    ----------
    document : mapping
    which : str
        Word before "record", at the beginning of a sentence.
    """
    seal = filed_state(document).seal
    if seal == SealState.BROKEN:
        yield Fact("changed", f"{which} record was {CHANGED}. {AFRESH}", LOOK)
    elif seal == SealState.NONE:
        if value_at(document, "session.closed") is not None:
            yield Fact(NO_SEAL, f"{which} record was filed before records were sealed. {AFRESH}")
    elif value_at(document, METHOD_VERSION_ENTRY) != METHOD_VERSION:
        yield Fact("afresh", f"{which} record was filed by another version of the method. {AFRESH}")
