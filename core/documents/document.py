"""A document: the nested dict of plain TOML values of a record or draft.

Dotted paths such as "readings.track_bar.frame.height" name the places in it. No function here
changes a document; each returns a changed copy that shares the unchanged tables.
"""

from collections.abc import Mapping
from typing import Any

Document = Mapping[str, Any]


def value_at(document: Document, path: str, default: Any = None) -> Any:
    """The value at a path, or `default` when there is none."""
    found: Any = document
    for key in path.split("."):
        if not isinstance(found, Mapping) or key not in found:
            return default
        found = found[key]
    return found


def with_value(document: Document, path: str, value: Any) -> dict[str, Any]:
    """The document with a value at a path; missing tables on the way are added.

    Raises
    ------
    ValueError
        A value, not a table, lies on the way.
    """
    key, _, rest = path.partition(".")
    if not rest:
        return {**document, key: value}
    table = document.get(key, {})
    if not isinstance(table, Mapping):
        raise ValueError(f"{key} is a value, not a table, so it cannot hold {rest}")
    return {**document, key: with_value(table, rest, value)}


def without(document: Document, path: str) -> dict[str, Any]:
    """The document without the value at a path, and without the tables this leaves empty."""
    key, _, rest = path.partition(".")
    left = {name: value for name, value in document.items() if name != key}
    table = document.get(key)
    if not rest or key not in document:
        return left
    if not isinstance(table, Mapping):
        return dict(document)
    smaller = without(table, rest)
    if not smaller and table:
        return left
    return {**document, key: smaller}
