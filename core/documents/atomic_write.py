"""Writing a file so that it is there entirely or not at all, and stays when the power goes.

What is written goes to a temporary file beside its place, is forced to the disk, and only then
takes its name. Everything here raises OSError and leaves nothing half-written behind.
"""

from __future__ import annotations

import errno
import os
import time
from contextlib import suppress
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pathlib import Path

_UNFINISHED = ".part"
_ABANDONED = 600.0  # s; a temporary file older than this belongs to no running program


def make_folder(folder: Path) -> None:
    """The folder with those above it, entered on the disk."""
    if folder.is_dir() or folder == folder.parent:
        return
    make_folder(folder.parent)
    folder.mkdir(exist_ok=True)
    _sync_folder(folder.parent)


def replace_file(path: Path, content: bytes) -> None:
    """Write the file, or put it in the place of the one that is there."""
    temporary = _written_beside(path, content)
    try:
        temporary.replace(path)
    except OSError:
        temporary.unlink(missing_ok=True)
        raise
    _sync_folder(path.parent)


def create_file(path: Path, content: bytes) -> None:
    """Write a new file and read it back.

    Raises
    ------
    FileExistsError
        There is one already; it is left as it was.
    OSError
        It could not be written, or was read back otherwise than written.
    """
    temporary = _written_beside(path, content)
    try:
        os.link(temporary, path)  # unlike a rename, never overwrites
    except FileExistsError:
        raise
    except OSError:  # not every filesystem has hard links
        _write_new(path, content)
    finally:
        temporary.unlink(missing_ok=True)
    try:
        _sync_folder(path.parent)
        if path.read_bytes() != content:
            raise OSError(errno.EIO, "it was read back otherwise than it was written")
    except OSError:
        path.unlink(missing_ok=True)
        raise


def remove_abandoned(folder: Path) -> None:
    """Remove what a program that was killed left half-written in a folder."""
    with suppress(OSError):
        for leftover in folder.glob(f".*{_UNFINISHED}"):
            if time.time() - leftover.stat().st_mtime > _ABANDONED:
                leftover.unlink(missing_ok=True)


def _written_beside(path: Path, content: bytes) -> Path:
    temporary = path.with_name(f".{path.name}.{os.urandom(4).hex()}{_UNFINISHED}")
    _write_new(temporary, content)
    return temporary


def _write_new(path: Path, content: bytes) -> None:
    with path.open("xb") as file:
        try:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        except BaseException:
            path.unlink(missing_ok=True)
            raise


def _sync_folder(folder: Path) -> None:
    if os.name == "nt":  # a folder cannot be opened there, and its entries are journalled
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    except OSError as error:
        if error.errno not in {errno.EINVAL, errno.ENOTSUP}:  # some network folders cannot
            raise
    finally:
        os.close(descriptor)
