"""Words about a whole list of sessions."""

from collections.abc import Sequence

from core.documents.listed_session import ListedSession
from core.documents.seal import SealState
from core.shop.index import Look


def list_state_words(look: Look) -> str:
    """Numbers of sessions not read, not computed, not readable, and computed afresh."""
    sentences = []
    if look.unread:
        total = len(look.entries) + look.unread
        sentences.append(f"Reading: {len(look.entries):,} of {total:,} sessions.")
    elif look.uncomputed:
        sentences.append(f"Verdicts still to be computed afresh: {look.uncomputed:,}.")
    if faults := sum(bool(entry.fault) for entry in look.entries):
        sentences.append(f"Files that cannot be read, at the end of the list: {faults:,}.")
    if look.is_last and (older := older_verdicts(look.entries)):
        sentences.append(f"Computed afresh, as another method filed them: {older:,}.")
    return " ".join(sentences)


def older_verdicts(entries: Sequence[ListedSession]) -> int:
    """Number of unchanged records whose verdict another version of the method has filed."""
    return sum(entry.is_afresh and entry.seal == SealState.HOLDS for entry in entries)
