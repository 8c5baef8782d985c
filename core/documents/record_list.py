"""Lists of a files folder: the filed sessions of every vehicle, and the drafts."""

import os
import re
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from core.documents import atomic_write
from core.documents.document import without
from core.documents.listed_session import ListedSession, listed, newest_first
from core.documents.record import SHOP, UNFINISHED, RecordError, as_record_errors, read_document

NOT_ANSWERS = ("draft", "plan", "program_version")
"""Keys of a draft that are no answers; the plan is computed afresh when it is filed."""

_RECORD_NAME = re.compile(r"[^.].*\.toml")
_DATE_IN_NAME = re.compile(r"_(\d{8}-\d{6})_")


@dataclass(frozen=True)
class FileState:
    """A file of a record and its state on the disk.

    Attributes
    ----------
    path : Path
    state : str
        Times, size and number of the file: a changed file has another state. Empty if unknown.
    fault : str
        Why the folder `path` cannot be read; empty for a file.
    """

    path: Path
    state: str = ""
    fault: str = ""


def record_files(files: Path) -> list[FileState]:
    """Files of all filed sessions, newest first by the dates in their names.

    Raises RecordError when the folder cannot be read.
    """
    states = [state for folder in vehicle_folders(files) for state in _states_in(folder)]
    return sorted(states, key=lambda state: _date_in(state.path.name), reverse=True)


def vehicle_folders(files: Path) -> list[Path]:
    """Folders of the vehicles. Raises RecordError when the files folder cannot be read."""
    return [folder for folder in _folders_in(files) if folder.name not in {SHOP, UNFINISHED}]


def list_records(files: Path) -> list[ListedSession]:
    """Read every filed session, newest first; see `core.shop.index` for many.

    Raises RecordError when the folder cannot be read.
    """
    return newest_first(entry for folder in vehicle_folders(files) for entry in _listed_in(folder))


def list_vehicle(files: Path, tag: str) -> list[ListedSession]:
    """Read the filed sessions of a vehicle from its folder, newest first.

    Large and small letters of the tag count as the same. Raises RecordError when the files folder
    cannot be read.
    """
    folders = [
        folder for folder in vehicle_folders(files) if folder.name.casefold() == tag.casefold()
    ]
    return newest_first(entry for folder in folders for entry in _listed_in(folder))


def find_record(files: Path, session_id: str) -> ListedSession | None:
    """The filed session of an id, which its file has as a name; None if there is none.

    Raises RecordError when the files folder cannot be read.
    """
    name = f"{session_id}.toml"
    if not session_id or name != Path(name).name:  # an id out of a file can be any text
        return None
    paths = (folder / name for folder in vehicle_folders(files))
    return next((listed(path) for path in paths if path.is_file()), None)


def list_drafts(files: Path) -> list[ListedSession]:
    """Unfinished sessions, newest first, without those that were filed meanwhile."""
    return newest_first(
        entry for entry in _listed_in(files / UNFINISHED) if not _is_filed(files, entry)
    )


def listed_file(file: FileState) -> ListedSession:
    """Read a file for a list; a folder that cannot be read is listed with its fault."""
    return ListedSession(file.path, fault=file.fault) if file.fault else listed(file.path)


def remove_leftovers(files: Path) -> None:
    """Remove half-written files and drafts of filed sessions that a killed program left."""
    with suppress(OSError, RecordError):
        for folder in _folders_in(files):
            atomic_write.remove_abandoned(folder)
        for entry in _listed_in(files / UNFINISHED):
            if _is_filed(files, entry):
                entry.path.unlink(missing_ok=True)


def _folders_in(files: Path) -> list[Path]:
    with as_record_errors(files, "cannot be read"):
        return [path for path in files.iterdir() if path.is_dir()] if files.exists() else []


def _listed_in(folder: Path) -> list[ListedSession]:
    return [listed_file(state) for state in _states_in(folder)]


def _states_in(folder: Path) -> list[FileState]:
    """Files of sessions in a folder; the folder with its fault where it cannot be read."""
    try:
        with as_record_errors(folder, "cannot be read"):
            if not folder.exists():
                return []
            with os.scandir(folder) as items:
                return [_state_of(item) for item in items if _RECORD_NAME.fullmatch(item.name)]
    except RecordError as error:
        return [FileState(folder, fault=str(error))]


def _state_of(item: os.DirEntry[str]) -> FileState:
    try:
        stat = item.stat()
    except OSError:  # who reads the file learns why
        return FileState(Path(item.path))
    # The time of the last change shows an edit even where the time of the content was set back.
    numbers = (stat.st_mtime_ns, stat.st_ctime_ns, stat.st_size, stat.st_ino)
    return FileState(Path(item.path), ":".join(map(str, numbers)))


def _date_in(name: str) -> str:
    """Date and time in the name of a file, "20261125-141205"; empty if there is none."""
    match = _DATE_IN_NAME.search(name)
    return match[1] if match else ""


def _is_filed(files: Path, entry: ListedSession) -> bool:
    """True if the record of the same name holds all answers of a draft."""
    if entry.fault:
        return False
    with suppress(OSError, RecordError):
        record = files / entry.tag / entry.path.name
        if record.is_file():
            draft = read_document(entry.path)
            for key in NOT_ANSWERS:
                draft = without(draft, key)
            return _is_part(draft, read_document(record))
    return False


def _is_part(value: Any, whole: Any) -> bool:
    """True if every value of a table is in another table as well."""
    if isinstance(value, Mapping) and isinstance(whole, Mapping):
        return all(key in whole and _is_part(item, whole[key]) for key, item in value.items())
    return bool(value == whole)
