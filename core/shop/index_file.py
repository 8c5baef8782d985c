"""The index beside the records: what a list shows of each file, kept in one SQLite file.

The index only saves time. Each row has the state of its file and a checksum, so a row that fits
neither is not used. An index that is missing, damaged or of another version is made again from the
records. Where it cannot be written, lists work without it.
"""

import json
import os
import sqlite3
from collections.abc import Iterable, Mapping
from contextlib import closing, suppress
from dataclasses import dataclass, fields
from datetime import datetime
from pathlib import Path
from typing import Any
from zlib import crc32

from core.documents.listed_session import ListedSession
from core.documents.seal import SealState

NAME = ".evenarc-index.sqlite3"

PATIENCE = 1.0
"""Longest time to wait for another program that writes the index, s."""

_FIELDS = [field.name for field in fields(ListedSession) if field.name != "path"]
_FORMAT = 1  # raised when the fields of a row get another meaning
_VERSION = crc32(f"{_FORMAT} {_FIELDS}".encode()) >> 1  # as SQLite keeps it: 31 bits


@dataclass(frozen=True)
class Row:
    """Content of a list about a file, and the state of the file at that time."""

    state: str
    entry: ListedSession


def read_index(files: Path) -> dict[Path, Row]:
    """Rows of the index by their files; empty if there is no index that can be read."""
    if not (files / NAME).is_file():
        return {}
    try:
        with closing(_connected(files)) as database:
            if _version_of(database) != _VERSION:
                return {}
            written = database.execute("SELECT name, state, entry, checksum FROM records")
            rows = [_row(files, *values) for values in written]
    except (sqlite3.Error, OSError):
        return {}
    return {row.entry.path: row for row in rows if row}


def write_index(files: Path, rows: Iterable[Row], gone: Iterable[Path] = ()) -> None:
    """Write rows into the index, and remove the rows of files that are gone.

    An index that is damaged or of another version is replaced. Files with a fault get no row.
    """
    written = [_values(files, row) for row in rows if not row.entry.fault]
    removed = [(_name(files, path),) for path in gone]
    if not (written or removed) or not files.is_dir():
        return
    try:
        _write(files, written, removed)
    except sqlite3.OperationalError:  # read-only, full, or in use by another program
        return
    except sqlite3.DatabaseError:  # damaged
        with suppress(sqlite3.Error, OSError):
            (files / NAME).unlink()
            _write(files, written, removed)


def _write(files: Path, written: list[Any], removed: list[Any]) -> None:
    with closing(_connected(files)) as database, database:
        if _version_of(database) != _VERSION:
            database.execute("DROP TABLE IF EXISTS records")
            database.execute(
                "CREATE TABLE records"
                " (name BLOB PRIMARY KEY, state TEXT, entry TEXT, checksum INTEGER)"
            )
            database.execute(f"PRAGMA user_version = {_VERSION}")
        database.executemany("INSERT OR REPLACE INTO records VALUES (?, ?, ?, ?)", written)
        database.executemany("DELETE FROM records WHERE name = ?", removed)


def _connected(files: Path) -> sqlite3.Connection:
    return sqlite3.connect(files / NAME, timeout=PATIENCE)


def _version_of(database: sqlite3.Connection) -> int:
    return int(database.execute("PRAGMA user_version").fetchone()[0])


def _values(files: Path, row: Row) -> tuple[bytes, str, str, int]:
    """A row as SQLite keeps it; the name of a file can be any bytes."""
    name = _name(files, row.entry.path)
    values = [getattr(row.entry, field) for field in _FIELDS]
    text = json.dumps(values, default=datetime.isoformat)
    return name, row.state, text, _checksum(name, row.state, text)


def _row(files: Path, name: Any, state: Any, text: Any, checksum: Any) -> Row | None:
    """A row out of SQLite; None if it is damaged."""
    try:
        if checksum != _checksum(name, state, text):
            return None
        values: Mapping[str, Any] = dict(zip(_FIELDS, json.loads(text), strict=True))
        moment, seal = datetime.fromisoformat(values["opened"]), SealState(values["seal"])
        entry = ListedSession(
            files / os.fsdecode(name), **{**values, "opened": moment, "seal": seal}
        )
    except (TypeError, ValueError, AttributeError):
        return None
    return Row(state, entry)


def _name(files: Path, path: Path) -> bytes:
    return os.fsencode(path.relative_to(files))


def _checksum(name: bytes, state: str, text: str) -> int:
    return crc32(b"\0".join((name, state.encode(), text.encode())))
