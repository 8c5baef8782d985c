"""A session of a list as plain values, for `evenarc list --json`."""

from typing import Any

from core.documents.listed_session import ListedSession
from core.text.plain_text import plain


def listed_as_json(entry: ListedSession) -> dict[str, Any]:
    """A session of a list; a decision that does not stand is None.

    A file that cannot be read, or whose verdict cannot be computed, has its path and the reason.
    """
    record = str(entry.path)
    if fault := fault_of(entry):
        return {"record": record, "error": fault}
    return {
        "record": record,
        "id": entry.id,
        "tag": entry.tag,
        "kind": entry.kind,
        "opened": entry.opened.isoformat() if entry.opened else None,
        "overall": entry.overall,
        "changed": entry.is_changed,
        "decision": entry.decision or None,
    }


def fault_of(entry: ListedSession) -> str:
    """Reason why a file has no verdict, with the name of the file; empty if it has one."""
    if entry.fault or not entry.reason:
        return entry.fault
    return f"{plain(entry.path, 300)}: {entry.reason}"
