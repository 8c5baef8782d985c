"""The digest of a document: a number that changes with every value in it."""

import json
from hashlib import sha256
from typing import Any

from core.documents.document import Document

NOT_IN_DIGEST = ("seal", "signatures")
"""Keys that are added after the digest was taken."""


def digest(document: Document) -> str:
    """SHA-256 of the document without its seal and its signatures, for any order of the keys."""
    return digest_of({key: value for key, value in document.items() if key not in NOT_IN_DIGEST})


def digest_of(value: Any) -> str:
    """SHA-256 of any value of a document."""
    return sha256(canonical(value)).hexdigest()


def canonical(value: Any) -> bytes:
    """Bytes that are the same for the same values, before writing and after reading."""
    return json.dumps(
        value, sort_keys=True, separators=(",", ":"), default=lambda moment: moment.isoformat()
    ).encode()
