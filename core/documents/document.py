"""A record or draft while it is worked on: a nested dict of plain TOML values.

Places in it are dotted paths, "readings.track_bar.frame.height". Nothing here changes a
document: a changed one is returned, and shares with the first what did not change.
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
    """The document with the value at a path; missing tables on the way are made.

    Raises
    ------
    ValueError
        Something on the way is a value, not a table.
    """
    key, _, rest = path.partition(".")
    if not rest:
        return {**document, key: value}
    table = document.get(key, {})
    if not isinstance(table, Mapping):
        raise ValueError(f"{key} is a value, not a table, so it cannot hold {rest}")
    return {**document, key: with_value(table, rest, value)}


def without(document: Document, path: str) -> dict[str, Any]:
    """The document without the value at a path; a table left empty by that goes too."""
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
