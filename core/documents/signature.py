"""Signatures: decisions of the shop lead, each tied to the text of the record at that moment."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any, Literal

from core.documents.digest import digest
from core.documents.document import Document
from core.documents.seal import SealState, link, links_of, seal_state, with_links

Decision = Literal["signed", "returned"]


@dataclass(frozen=True)
class FiledDecision:
    """A decision in a record.

    Attributes
    ----------
    signature : mapping
        The decision as the record has it.
    is_unchanged : bool
        True if decision, name, date and note are those that were signed.
    fits_record : bool
        True if the record has not changed since it was signed.
    """

    signature: Mapping[str, Any]
    is_unchanged: bool
    fits_record: bool

    @property
    def stands(self) -> bool:
        """True if neither the decision nor the record was changed."""
        return self.is_unchanged and self.fits_record


@dataclass(frozen=True)
class FiledState:
    """A record compared with its seal.

    Attributes
    ----------
    seal : SealState
    decisions : tuple of FiledDecision
        Oldest first.
    removed : int
        Number of decisions that were made and are no longer in the record.
    """

    seal: SealState
    decisions: tuple[FiledDecision, ...]
    removed: int

    @property
    def is_record_changed(self) -> bool:
        """True if the record was changed since it was filed, whatever its decisions."""
        return self.seal == SealState.BROKEN

    @property
    def is_decision_changed(self) -> bool:
        """True if a decision was changed, added by hand, or removed."""
        return self.removed > 0 or not all(item.is_unchanged for item in self.decisions)

    @property
    def is_changed(self) -> bool:
        """True if the record or one of its decisions was changed."""
        return self.is_record_changed or self.is_decision_changed

    @property
    def last_decision(self) -> str:
        """The last decision, as the record has it; empty if there is none that stands."""
        if self.removed or not self.decisions or not self.decisions[-1].stands:
            return ""
        return str(self.decisions[-1].signature.get("decision", ""))


def filed_state(document: Document) -> FiledState:
    """Compare a record with its seal."""
    present_digest = digest(document)
    seal = seal_state(document, present_digest)
    links, signatures = links_of(document, seal), signatures_of(document)
    decisions, begin = [], 0
    for signature in signatures:
        place = begin if links is None else _place(signature, links, begin)
        fits = signature.get("digest") == present_digest
        decisions.append(FiledDecision(signature, place is not None, fits))
        begin = begin if place is None else place + 1
    return FiledState(seal, tuple(decisions), max(len(links or ()) - len(signatures), 0))


def sign(
    document: Document, decision: Decision, by: str, at: datetime, note: str = ""
) -> dict[str, Any]:
    """The document with one more signature, and with its link in the seal.

    The links that the seal has stay as they are, so that no earlier change is covered up.
    """
    present_digest = digest(document)
    signature = {"decision": decision, "by": by, "at": at, "note": note, "digest": present_digest}
    links = links_of(document, seal_state(document, present_digest))
    if links is None:  # the decisions so far are older than the seal
        links = []
        for earlier in signatures_of(document):
            links.append(link(links[-1] if links else "", earlier))
    links.append(link(links[-1] if links else "", signature))
    signed = with_links(document, links)
    return {**signed, "signatures": [*signatures_of(document), signature]}


def signatures_of(document: Document) -> list[Mapping[str, Any]]:
    """Signatures, oldest first; a value that is no table is left out."""
    signatures = document.get("signatures")
    if not isinstance(signatures, list):
        return []
    return [item for item in signatures if isinstance(item, Mapping)]


def _place(signature: Mapping[str, Any], links: list[str], begin: int) -> int | None:
    """Place of a decision among the links, from `begin` on; None if it has no link."""
    for place in range(begin, len(links)):
        if link(links[place - 1] if place else "", signature) == links[place]:
            return place
    return None
