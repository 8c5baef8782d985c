"""Errors that the system reports after it has done its work."""

import errno
import os
import stat


def refuse_to_force_folders(monkeypatch, count=1_000):
    """Let the first calls of fsync on a folder fail. Returns the list of these folders' numbers."""
    force, refused = os.fsync, []

    def failing(descriptor):
        state = os.fstat(descriptor)
        if stat.S_ISDIR(state.st_mode):
            refused.append(state.st_ino)
            if len(refused) <= count:
                raise OSError(errno.EIO, "Input/output error")
        force(descriptor)

    monkeypatch.setattr(os, "fsync", failing)
    return refused
