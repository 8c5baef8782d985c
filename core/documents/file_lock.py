"""Locks of files: while one program changes a file, the others wait.

The lock of a file lies beside it, as `.NAME.lock`. The system holds the lock for the running
program, so a killed program leaves no lock behind, only an empty file that the next one takes over.
"""

import errno
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

PATIENCE = 3.0
"""Longest time to wait for another program, s. A change takes some milliseconds."""

_POLL_INTERVAL = 0.01  # s
_HAS_NO_LOCKS = {errno.ENOSYS, errno.ENOLCK, errno.ENOTSUP, errno.EOPNOTSUPP}


@contextmanager
def locked(path: Path) -> Iterator[None]:
    """Hold the lock of a file, which need not exist; its folder has to.

    Some network folders have no locks. There the file is changed without one.

    Raises
    ------
    BlockingIOError
        Another program has held the lock for longer than `PATIENCE`.
    OSError
        The lock cannot be made in this folder.
    """
    from filelock import FileLock, Timeout  # only a writing program needs it

    lock_file = path.with_name(f".{path.name}.lock")
    lock = FileLock(lock_file, PATIENCE, poll_interval=_POLL_INTERVAL, fallback_to_soft=False)
    try:
        lock.acquire()
    except Timeout:
        held = "another program is writing it and does not end; close that one, or try again"
        raise BlockingIOError(errno.EAGAIN, held) from None
    except OSError as error:
        if error.errno not in _HAS_NO_LOCKS:
            raise
    try:
        yield
    finally:
        with suppress(OSError):  # Windows removes no open file
            lock_file.unlink()  # whoever waits for it notices, and makes another one
        lock.release()
