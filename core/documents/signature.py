"""Signatures: decisions of the shop lead, each tied to the text of the record at that moment."""

import json
from collections.abc import Mapping
from datetime import datetime
from hashlib import sha256
from typing import Any, Literal

from core.documents.document import Document, without

Decision = Literal["signed", "returned"]


def sign(
    document: Document, decision: Decision, by: str, at: datetime, note: str = ""
) -> dict[str, Any]:
    """The document with one more signature, over all of it except the signatures."""
    signature = {
        "decision": decision,
        "by": by,
        "at": at,
        "note": note,
        "digest": digest(document),
    }
    return {**document, "signatures": [*signatures_of(document), signature]}


def signature_is_valid(document: Document, signature: Mapping[str, Any]) -> bool:
    """True if the document has not changed since it was signed."""
    return signature.get("digest") == digest(document)


def signatures_of(document: Document) -> list[Mapping[str, Any]]:
    """Signatures, oldest first; a value that is no table is left out."""
    found = document.get("signatures")
    return [item for item in found if isinstance(item, Mapping)] if isinstance(found, list) else []


def digest(document: Document) -> str:
    """SHA-256 of the document without its signatures, for any order of the keys."""
    return sha256(canonical(without(document, "signatures"))).hexdigest()


def canonical(document: Document) -> bytes:
    """Bytes that are the same for the same values, before writing and after reading."""
    return json.dumps(
        document, sort_keys=True, separators=(",", ":"), default=lambda moment: moment.isoformat()
    ).encode()
