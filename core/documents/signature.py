"""The shop lead's decision on a record, tied to what the record said at that moment."""

import json
from collections.abc import Mapping
from datetime import datetime
from typing import Any, Literal

from core.documents.document import Document, without

Decision = Literal["signed", "returned"]


def sign(
    document: Document, decision: Decision, by: str, at: datetime, note: str = ""
) -> dict[str, Any]:
    """The document with one more signature over everything in it but the signatures."""
    signature = {
        "decision": decision,
        "by": by,
        "at": at,
        "note": note,
        "digest": digest(document),
    }
    return {**document, "signatures": [*signatures_of(document), signature]}


def signature_is_valid(document: Document, signature: Mapping[str, Any]) -> bool:
    """Whether the document is still what was signed."""
    return signature.get("digest") == digest(document)


def signatures_of(document: Document) -> list[Mapping[str, Any]]:
    """The signatures, oldest first; what is no table is none."""
    found = document.get("signatures")
    return [item for item in found if isinstance(item, Mapping)] if isinstance(found, list) else []


def digest(document: Document) -> str:
    """SHA-256 of everything but the signatures, whatever the order of the keys."""
    from hashlib import sha256  # only a signature needs it, and it takes its time to load

    return sha256(canonical(without(document, "signatures"))).hexdigest()


def canonical(document: Document) -> bytes:
    """The same bytes for the same values, before writing and after reading."""
    return json.dumps(
        document, sort_keys=True, separators=(",", ":"), default=lambda moment: moment.isoformat()
    ).encode()
