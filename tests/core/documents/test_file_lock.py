"""Locks of files: one program at a time, and no lock outlives its program."""

import errno
import subprocess
import sys

import pytest

from core.documents import file_lock
from core.documents.file_lock import locked

HOLD = """
import sys
from pathlib import Path
from core.documents.file_lock import locked
with locked(Path(sys.argv[1])):
    print("held", flush=True)
    sys.stdin.read()
"""


@pytest.fixture
def holder(tmp_path):
    """Another program that holds the lock of the file "a"."""
    program = [sys.executable, "-c", HOLD, str(tmp_path / "a")]
    with subprocess.Popen(
        program, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as started:
        assert started.stdout.readline() == "held\n"
        yield started
        started.kill()


def test_a_lock_leaves_no_file_behind(tmp_path):
    with locked(tmp_path / "a"):
        assert [path.name for path in tmp_path.iterdir()] == [".a.lock"]
    assert list(tmp_path.iterdir()) == []


@pytest.mark.usefixtures("holder")
def test_a_lock_that_another_program_holds_too_long_is_said(tmp_path, monkeypatch):
    monkeypatch.setattr(file_lock, "PATIENCE", 0.0)
    with (
        pytest.raises(BlockingIOError, match="another program is writing it"),
        locked(tmp_path / "a"),
    ):
        pass


@pytest.mark.usefixtures("holder")
def test_other_files_are_not_locked(tmp_path, monkeypatch):
    monkeypatch.setattr(file_lock, "PATIENCE", 0.0)
    with locked(tmp_path / "b"):
        pass


def test_a_killed_program_leaves_no_lock(tmp_path, holder):
    holder.kill()
    holder.wait()
    assert (tmp_path / ".a.lock").exists()
    with locked(tmp_path / "a"):
        pass
    assert list(tmp_path.iterdir()) == []


def test_a_folder_without_locks_is_used_without_one(tmp_path, monkeypatch):
    import fcntl

    def has_none(_descriptor, _operation):
        raise OSError(errno.ENOLCK, "No locks available")

    monkeypatch.setattr(fcntl, "flock", has_none)
    with locked(tmp_path / "a"):
        (tmp_path / "a").write_text("written")
    assert [path.name for path in tmp_path.iterdir()] == ["a"]


def test_a_fault_of_the_work_under_the_lock_is_passed_on(tmp_path):
    with pytest.raises(OSError, match="of the work"), locked(tmp_path / "a"):
        raise OSError(errno.ENOLCK, "of the work")
    assert list(tmp_path.iterdir()) == []
