"""A session as a list shows it: read from its file, with the state of its seal."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from core.documents.document import Document, value_at
from core.documents.entries import EntryError, text_at
from core.documents.record import RecordError, read_document
from core.documents.seal import METHOD_VERSION_ENTRY, SealState
from core.documents.signature import filed_state
from core.text.plain_text import plain


@dataclass(frozen=True)
class ListedSession:
    """One session in a list; `fault` has the reason where its file cannot be read.

    Attributes
    ----------
    path : Path
    fault, id, tag, description, kind, follows, technician, profile : str
        Safe to display.
    opened : datetime or None
        With its offset.
    overall : str
        The verdict that was filed. Empty if there is none, or if the seal of the record does not
        hold.
    method_version : int
        Version of the method that computed `overall`; 0 if unknown.
    decision : str
        The last decision, if it stands.
    seal : SealState
    is_decision_changed : bool
        True if a decision was changed, added by hand, or removed.
    reason : str
        Why the verdict cannot be computed afresh; empty if it can, or if nobody has tried.
    is_afresh : bool
        True if `overall` was computed afresh, and is not the verdict that was filed.
    """

    path: Path
    fault: str = ""
    id: str = ""
    tag: str = ""
    description: str = ""
    kind: str = ""
    follows: str = ""
    technician: str = ""
    profile: str = ""
    opened: datetime | None = None
    overall: str = ""
    method_version: int = 0
    decision: str = ""
    seal: SealState = SealState.NONE
    is_decision_changed: bool = False
    reason: str = ""
    is_afresh: bool = False

    @property
    def is_changed(self) -> bool:
        """True if the record or one of its decisions was changed since it was written."""
        return self.seal == SealState.BROKEN or self.is_decision_changed


def listed(path: Path) -> ListedSession:
    """Read a session for a list; a file that cannot be read is listed with its fault."""
    try:
        return _listed_document(path, read_document(path))
    except RecordError as error:
        return ListedSession(path, fault=str(error))
    except (EntryError, OverflowError, ValueError) as error:
        return ListedSession(path, fault=f"{plain(path, 300)}: {error}")


def newest_first(entries: Iterable[ListedSession]) -> list[ListedSession]:
    """Sessions by the time at which they were opened; files that cannot be read come last."""
    return sorted(entries, key=_age)


def _listed_document(path: Path, document: Document) -> ListedSession:
    opened = value_at(document, "session.opened")
    if not isinstance(opened, datetime):
        raise EntryError("session.opened", "should be a date and time with its offset")
    state = filed_state(document)
    holds = state.seal == SealState.HOLDS
    method_version = value_at(document, METHOD_VERSION_ENTRY)
    return ListedSession(
        path,
        id=_plain_text(document, "session.id"),
        tag=_plain_text(document, "vehicle.tag"),
        description=_plain_text(document, "vehicle.description", ""),
        kind=_plain_text(document, "session.kind", ""),
        follows=_plain_text(document, "session.follows", ""),
        technician=_plain_text(document, "session.technician", ""),
        profile=_plain_text(document, "session.profile", ""),
        opened=opened if opened.tzinfo else opened.astimezone(),
        overall=_plain_text(document, "results.overall", "") if holds else "",
        method_version=method_version if holds and isinstance(method_version, int) else 0,
        decision=plain(state.last_decision),
        seal=state.seal,
        is_decision_changed=state.is_decision_changed,
    )


def _plain_text(document: Document, path: str, default: str | None = None) -> str:
    return plain(text_at(document, path, default), 200)


def _age(entry: ListedSession) -> tuple[bool, float, str]:
    """Key that puts the newest session first, and a faulty file last."""
    moment = 0.0 if entry.opened is None else entry.opened.timestamp()
    return (bool(entry.fault), -moment, entry.path.name)
