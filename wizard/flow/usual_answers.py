"""Answers that a shop usually gives: who measures, in which unit, and with which instruments.

They are kept in a file of the shop, from the last session that was filed. They are offered again,
and a person takes them with Enter.
"""

from contextlib import suppress
from pathlib import Path
from typing import Any

import tomli_w

from core.documents.atomic_write import make_folder, replace_file
from core.documents.document import Document, value_at, with_value
from core.documents.record import SHOP
from core.documents.toml_file import TomlFileError, read_toml
from wizard.questions.short_way import INSTRUMENTS

KEPT = ("session.technician", "session.units", *INSTRUMENTS)
"""Paths of the answers that are kept."""


def usual_answers_file(files: Path) -> Path:
    """File of the shop's usual answers, which need not exist."""
    return files / SHOP / "usual_answers.toml"


def usual_answers(files: Path) -> dict[str, Any]:
    """Usual answers of a shop; {} where none are kept or the file is faulty."""
    with suppress(TomlFileError):
        return _texts(read_toml(usual_answers_file(files)))
    return {}


def keep_usual_answers(files: Path, record: Document) -> None:
    """Keep the usual answers of a filed session. Where that fails, they are asked again."""
    path = usual_answers_file(files)
    with suppress(OSError):
        make_folder(path.parent)
        replace_file(path, tomli_w.dumps(_texts(record)).encode())


def _texts(document: Document) -> dict[str, Any]:
    """The answers that are kept, as far as they are texts."""
    kept: dict[str, Any] = {}
    for path in KEPT:
        value = value_at(document, path)
        if isinstance(value, str):
            kept = with_value(kept, path, value)
    return kept
