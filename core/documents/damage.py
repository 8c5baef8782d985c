"""Damage in the tables of a document, told from entries that another program has added.

A damaged table must not count as one that was left out. So a known table that is no table is
refused, and so is a name that is almost that of a known entry. Any other unknown entry is kept.
"""

from collections.abc import Collection, Iterator, Mapping
from typing import Any

from core.documents.entries import EntryError
from core.text.plain_text import plain

CLOSE = 2
"""Letters in which a damaged name differs from the name it had."""

ROWS = "[]"
"""End of the name of a list of tables, in the path of a known entry: "kept[].reading"."""

ANYTHING = "*"
"""Stands for every entry of a table, in the path of a known entry: "results.*"."""

Known = dict[str, "Known"]
"""The known entries of a table, each with those of its own table; a value has none."""


def tree_of(paths: Collection[str]) -> Known:
    """Known entries as a tree, from their dotted paths: "layout.arm", "kept[].reason"."""
    tree: Known = {}
    for path in paths:
        table = tree
        for key in path.split("."):
            table = table.setdefault(key, {})
    return tree


def refuse_damaged(document: Mapping[str, Any], known: Known) -> None:
    """Raise EntryError for the first entry that looks like a known entry after some damage."""
    for _ in unknown_entries(document, known):
        pass


def unknown_entries(document: Mapping[str, Any], known: Known, above: str = "") -> Iterator[str]:
    """Paths of the entries that are not known and not damaged.

    Parameters
    ----------
    document : mapping
    known : tree
        As `tree_of` gives it.
    above : str
        Path of the table with its last dot, for messages.

    Raises
    ------
    EntryError
        A known table is no table, a known value is a table, or a name is almost that of a known
        entry.
    """
    if ANYTHING in known:
        return
    for key, value in document.items():
        path = above + (f'"{key}"' if "." in key else key)
        if f"{key}{ROWS}" in known:
            for number, row in enumerate(_rows(path, value), 1):
                yield from unknown_entries(row, known[f"{key}{ROWS}"], f"{path} {number}.")
        elif key not in known:
            if names := sorted(name.removesuffix(ROWS) for name in known if is_close(key, name)):
                raise EntryError(
                    plain(path, 200),
                    f"is not known, and is probably damaged: it should be {' or '.join(names)}",
                )
            yield path
        elif not known[key]:
            if isinstance(value, Mapping):
                raise EntryError(path, "is a table; it should be a value")
        elif isinstance(value, Mapping):
            yield from unknown_entries(value, known[key], f"{path}.")
        else:
            raise EntryError(path, f"is a value; it should be a table, under [{path}]")


def _rows(path: str, value: Any) -> list[Mapping[str, Any]]:
    if not isinstance(value, list) or not all(isinstance(row, Mapping) for row in value):
        raise EntryError(path, f"should be tables of their own, each under [[{path}]]")
    return value


def is_close(key: str, name: str) -> bool:
    """True if few edits turn a key into a known name, and leave a letter of it.

    The edits are those of Levenshtein: a letter is added, left out or replaced. A capital letter
    is another letter.
    """
    name = name.removesuffix(ROWS)
    if abs(len(key) - len(name)) > CLOSE:
        return False
    above = list(range(len(name) + 1))
    for row, letter in enumerate(key, 1):
        current = [row]
        for column, other in enumerate(name, 1):
            replaced = above[column - 1] + (letter != other)
            current.append(min(replaced, above[column] + 1, current[-1] + 1))
        above = current
    return above[-1] <= min(CLOSE, len(name) - 1)
