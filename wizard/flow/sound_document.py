"""Documents of sessions whose tables have the types that the questions use."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from core.documents.document import value_at
from core.documents.record import RecordError, read_document
from core.text.plain_text import plain
from wizard.flow.flow import PASSED
from wizard.questions.steps import QUESTIONS


def read_sound_document(path: Path) -> dict[str, Any]:
    """Read a document and check the type of every table that the questions use.

    Raises RecordError.
    """
    document = read_document(path)
    tables = {table for question_path in QUESTIONS for table in _tables_above(question_path)}
    for table in tables | {"draft"}:
        if not isinstance(value_at(document, table, {}), Mapping):
            raise RecordError(f"{plain(path, 300)}: {table}: is a value; it should be a table")
    if not _is_list_of(value_at(document, PASSED, []), str):
        raise RecordError(f"{plain(path, 300)}: {PASSED}: should be a list of texts")
    if not _is_list_of(document.get("kept", []), Mapping):
        raise RecordError(f"{plain(path, 300)}: [[kept]]: should be a list of tables")
    return document


def _tables_above(path: str) -> list[str]:
    """Paths of the tables that a dotted path passes through."""
    keys = path.split(".")
    return [".".join(keys[:end]) for end in range(1, len(keys))]


def _is_list_of(value: object, kind: type) -> bool:
    return isinstance(value, list) and all(isinstance(item, kind) for item in value)
