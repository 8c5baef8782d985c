"""Changes of two programs to the same document, put together."""

from collections.abc import Collection
from dataclasses import dataclass
from typing import Any, Final

from core.documents.document import Document

_ABSENT: Final = object()
"""Stands for a value that a document does not have."""


@dataclass(frozen=True)
class Merged:
    """A document with the changes of two programs.

    Attributes
    ----------
    document : dict
    conflicts : tuple of str
        Paths of the values that both programs changed, each to another value. There the document
        has the value of the other program.
    """

    document: dict[str, Any]
    conflicts: tuple[str, ...]


def merged(
    before: Document, mine: Document, theirs: Document, lists: Collection[str] = ()
) -> Merged:
    """Put the changes of two programs together.

    Parameters
    ----------
    before : mapping
        The document that both programs had.
    mine, theirs : mapping
        The document as this program and as the other program changed it.
    lists : collection of str
        Paths of lists that are merged item by item; any other list is one value.
    """
    conflicts: list[str] = []

    def merged_value(path: str, before: Any, mine: Any, theirs: Any) -> Any:
        if mine in (before, theirs):
            return theirs
        if theirs == before:
            return mine
        if _are_all(dict, mine, theirs):
            tables = (_of_kind(dict, value) for value in (before, mine, theirs))
            return merged_table(path, *tables) or _ABSENT
        if path in lists and _are_all(list, mine, theirs):
            items = (_of_kind(list, value) for value in (before, mine, theirs))
            return _merged_items(*items) or _ABSENT
        conflicts.append(path)
        return theirs

    def merged_table(path: str, before: Document, mine: Document, theirs: Document) -> Document:
        values = {
            key: merged_value(
                f"{path}.{key}" if path else key,
                *(table.get(key, _ABSENT) for table in (before, mine, theirs)),
            )
            for key in {**theirs, **mine}
        }
        return {key: value for key, value in values.items() if value is not _ABSENT}

    document = dict(merged_table("", before, mine, theirs))
    return Merged(document, tuple(conflicts))


def _are_all(kind: type, *values: Any) -> bool:
    """True if all values are of a kind; a value that was removed can be of any kind."""
    return all(value is _ABSENT or isinstance(value, kind) for value in values)


def _of_kind(kind: type, value: Any) -> Any:
    """The value if it is of a kind, else an empty one."""
    return value if isinstance(value, kind) else kind()


def _merged_items(before: list[Any], mine: list[Any], theirs: list[Any]) -> list[Any]:
    """Items of the other list, without those removed here and with those added here."""
    left = [item for item in theirs if item in mine or item not in before]
    return left + [item for item in mine if item not in before and item not in left]
