"""The seal of a record: what it said when it was filed, and which decisions were made on it.

    [seal]
    record = "…"        # digest of the record without seal and signatures
    decisions = ["…"]   # a link for each decision, made of the decision and the link before it

The seal shows accident and carelessness. It does not show intent: who changes a record can write
a new seal as well.
"""

from collections.abc import Mapping, Sequence
from enum import StrEnum
from typing import Any

from core.documents.digest import digest, digest_of
from core.documents.document import Document, value_at, with_value

SEAL = "seal"
RECORD, DECISIONS = "seal.record", "seal.decisions"
METHOD_VERSION_ENTRY = "results.method_version"
"""Entry that every record has which was sealed when it was filed."""


class SealState(StrEnum):
    """State of the seal of a record."""

    HOLDS = "holds"
    BROKEN = "broken"
    """The record was changed since it was filed, or its seal was removed."""
    NONE = "none"
    """The record was filed before records were sealed."""


def sealed(document: Document) -> dict[str, Any]:
    """The document with a new seal, before any decision was made on it."""
    return {**document, SEAL: {"record": digest(document), "decisions": []}}


def seal_state(document: Document, present_digest: str) -> SealState:
    """State of the seal of a record whose digest is known; decisions have states of their own."""
    filed_digest = value_at(document, RECORD)
    if filed_digest == present_digest:
        return SealState.HOLDS
    was_sealed = (
        filed_digest is not None
        or value_at(document, METHOD_VERSION_ENTRY) is not None
        or not isinstance(document.get(SEAL, {}), Mapping)
    )
    return SealState.BROKEN if was_sealed else SealState.NONE


def links_of(document: Document, state: SealState) -> list[str] | None:
    """Links of the decisions in the seal; None if the record has never had links.

    A record whose links were removed has an empty list: none of its decisions can be confirmed.
    """
    if isinstance(value_at(document, DECISIONS), list):
        return written_links(document)
    return None if state == SealState.NONE else []


def written_links(document: Document) -> list[str]:
    """Links in the seal, as they are written; empty if there are none."""
    links = value_at(document, DECISIONS)
    return [str(item) for item in links] if isinstance(links, list) else []


def with_links(document: Document, links: Sequence[str]) -> dict[str, Any]:
    """The document with other links in its seal."""
    table = document.get(SEAL)
    if not isinstance(table, Mapping):
        return {**document, SEAL: {"decisions": list(links)}}
    return with_value(document, DECISIONS, list(links))


def link(before: str, decision: Mapping[str, Any]) -> str:
    """Link of a decision: digest of the decision and of the link before it."""
    return digest_of([before, decision])
