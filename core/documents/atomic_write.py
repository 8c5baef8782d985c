"""Atomic writes: a file is written whole or not at all, and survives a loss of power.

The content goes to a temporary file in the same folder and is forced to the disk. Only then does
the file take its name. Every function raises OSError and leaves no half-written file behind.
"""

import errno
import os
import time
from contextlib import suppress
from pathlib import Path

_UNFINISHED = ".part"
_ABANDONED = 600.0  # s; an older temporary file belongs to no running program


def make_folder(folder: Path) -> None:
    """Make a folder and those above it, and force their entries to the disk."""
    if folder.is_dir() or folder == folder.parent:
        return
    make_folder(folder.parent)
    folder.mkdir(exist_ok=True)
    _sync_folder(folder.parent)


def replace_file(path: Path, content: bytes) -> None:
    """Write a file, in the place of an earlier one of this name."""
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
        A file of this name exists; it is left as it was.
    OSError
        The file could not be written, or was read back differently.
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
            raise OSError(errno.EIO, "it was read back differently from what was written")
    except OSError:
        path.unlink(missing_ok=True)
        raise


def remove_abandoned(folder: Path) -> None:
    """Remove the temporary files that a killed program left in a folder."""
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
    if os.name == "nt":  # Windows cannot open a folder, and journals its entries
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    except OSError as error:
        if error.errno not in {errno.EINVAL, errno.ENOTSUP}:  # some network folders cannot
            raise
    finally:
        os.close(descriptor)
