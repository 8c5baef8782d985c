"""Atomic writes: a file is written whole or not at all, and survives a loss of power.

The content goes to a temporary file in the same folder and is forced to the disk. Only then does
the file take its name. A system can report an error after it has done its work. So after an error
the file is looked at, and the function says what is true. Every function raises OSError.
"""

import errno
import os
import time
from contextlib import suppress
from pathlib import Path

_UNFINISHED = ".part"
_ABANDONED = 600.0  # s; an older temporary file belongs to no running program


class UnconfirmedError(OSError):
    """The file is in its place and whole, but the system did not confirm that it will stay."""


def make_folder(folder: Path) -> None:
    """Make a folder and those above it, and force their entries to the disk."""
    if folder.is_dir() or folder == folder.parent:
        return
    make_folder(folder.parent)
    folder.mkdir(exist_ok=True)
    _sync_folder(folder.parent)


def replace_file(path: Path, content: bytes) -> None:
    """Write a file, in the place of an earlier one of this name.

    Raises
    ------
    UnconfirmedError
        The file is written, but a loss of power may undo that.
    OSError
        The file could not be written; an earlier one of this name stays.
    """
    temporary = _written_beside(path, content)
    try:
        temporary.replace(path)
    except OSError:
        _remove(temporary)
        if not _holds(path, content):
            raise
    _confirm(path, content)


def create_file(path: Path, content: bytes) -> None:
    """Write a new file and read it back.

    Raises
    ------
    FileExistsError
        A file of this name exists; it is left as it was.
    UnconfirmedError
        The file is written and was read back, but a loss of power may undo that.
    OSError
        The file could not be written, or was read back differently.
    """
    temporary = _written_beside(path, content)
    try:
        os.link(temporary, path)  # unlike a rename, never overwrites
    except OSError as error:
        if not _are_same(temporary, path):
            if isinstance(error, FileExistsError):
                raise
            _write_new(path, content)  # not every filesystem has hard links
    finally:
        _remove(temporary)
    try:
        if path.read_bytes() != content:
            raise OSError(errno.EIO, "it was read back differently from what was written")
    except OSError:
        _remove(path)
        raise
    _confirm(path, content)


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
    file = path.open("xb")
    is_forced = False
    try:
        with file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
            is_forced = True
    except OSError:
        if is_forced and _holds(path, content):  # the close failed, and the file is whole
            return
        _remove(path)
        raise
    except BaseException:
        _remove(path)
        raise


def _confirm(path: Path, content: bytes) -> None:
    """Force the name of a written file to the disk. After an error try again, then look at it."""
    for is_last in (False, False, True):
        try:
            _sync_folder(path.parent)
        except OSError:
            if is_last and not _holds(path, content):
                raise
        else:
            return
    raise UnconfirmedError(errno.EIO, "the disk did not confirm it")


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


def _remove(path: Path) -> None:
    """Remove a file if the system allows it."""
    with suppress(OSError):
        path.unlink(missing_ok=True)


def _holds(path: Path, content: bytes) -> bool:
    """True if a file can be read and has this content."""
    with suppress(OSError):
        return path.read_bytes() == content
    return False


def _are_same(first: Path, second: Path) -> bool:
    """True if two names belong to one file."""
    with suppress(OSError):
        return first.samefile(second)
    return False
