"""Atomic writes: a file is whole or absent, and an existing file is never overwritten."""

import errno
import io
import os
from pathlib import Path

import pytest

from core.documents import atomic_write
from tests.core.documents.late_errors import refuse_to_force_folders


def names_in(folder):
    """Names of the files in a folder."""
    return sorted(path.name for path in folder.iterdir())


def test_a_file_is_replaced_whole(tmp_path):
    file = tmp_path / "a"
    atomic_write.replace_file(file, b"first")
    atomic_write.replace_file(file, b"second")
    assert file.read_bytes() == b"second"
    assert names_in(tmp_path) == ["a"]


def test_an_existing_file_is_never_overwritten(tmp_path):
    file = tmp_path / "a"
    atomic_write.create_file(file, b"first")
    with pytest.raises(FileExistsError):
        atomic_write.create_file(file, b"second")
    assert file.read_bytes() == b"first"
    assert names_in(tmp_path) == ["a"]


def test_a_write_that_fails_leaves_the_earlier_file_alone(tmp_path, monkeypatch):
    file = tmp_path / "a"
    atomic_write.replace_file(file, b"first")

    def full(_handle):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="No space"):
        atomic_write.replace_file(file, b"second")
    assert file.read_bytes() == b"first"
    assert names_in(tmp_path) == ["a"]


def test_a_filesystem_without_hard_links_still_creates_a_file(tmp_path, monkeypatch):
    def no_links(_source, _target):
        raise OSError(95, "Operation not supported")

    monkeypatch.setattr(os, "link", no_links)
    atomic_write.create_file(tmp_path / "a", b"first")
    assert (tmp_path / "a").read_bytes() == b"first"
    with pytest.raises(FileExistsError):
        atomic_write.create_file(tmp_path / "a", b"second")


def test_only_abandoned_temporary_files_are_removed(tmp_path):
    old, young = tmp_path / ".a.0000.part", tmp_path / ".b.0000.part"
    for path in (old, young, tmp_path / "a"):
        path.write_bytes(b"")
    os.utime(old, (0, 0))
    atomic_write.remove_abandoned(tmp_path)
    assert names_in(tmp_path) == [".b.0000.part", "a"]


def test_folders_are_made_with_those_above_them(tmp_path):
    atomic_write.make_folder(tmp_path / "x" / "y")
    assert (tmp_path / "x" / "y").is_dir()
    atomic_write.make_folder(tmp_path / "x" / "y")


def report_late_error(monkeypatch, owner, name):
    """Let a function of the system report an error after it has done its work."""
    real = getattr(owner, name)

    def failing(*arguments):
        real(*arguments)
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr(owner, name, failing)


WRITERS = pytest.mark.parametrize("write", [atomic_write.replace_file, atomic_write.create_file])


@WRITERS
def test_a_folder_that_is_forced_to_the_disk_late_is_tried_again(tmp_path, monkeypatch, write):
    tried = refuse_to_force_folders(monkeypatch, count=2)
    write(tmp_path / "a", b"content")
    assert len(tried) == 3
    assert (tmp_path / "a").read_bytes() == b"content"


@WRITERS
def test_a_written_file_that_the_disk_does_not_confirm_is_not_called_unwritten(
    tmp_path, monkeypatch, write
):
    refuse_to_force_folders(monkeypatch)
    with pytest.raises(atomic_write.UnconfirmedError):
        write(tmp_path / "a", b"content")
    assert (tmp_path / "a").read_bytes() == b"content"
    assert names_in(tmp_path) == ["a"]


def test_a_rename_that_reports_an_error_after_its_work_has_worked(tmp_path, monkeypatch):
    report_late_error(monkeypatch, Path, "replace")
    atomic_write.replace_file(tmp_path / "a", b"content")
    assert names_in(tmp_path) == ["a"]
    assert (tmp_path / "a").read_bytes() == b"content"


def test_a_link_that_reports_an_error_after_its_work_has_worked(tmp_path, monkeypatch):
    report_late_error(monkeypatch, os, "link")
    atomic_write.create_file(tmp_path / "a", b"content")
    assert names_in(tmp_path) == ["a"]


@WRITERS
def test_a_temporary_file_that_cannot_be_removed_is_no_failure(tmp_path, monkeypatch, write):
    def refuse(*_arguments, **_options):
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr(Path, "unlink", refuse)
    write(tmp_path / "a", b"content")
    assert (tmp_path / "a").read_bytes() == b"content"


@pytest.mark.parametrize("links", [True, False])
def test_a_close_that_fails_after_the_content_was_forced_is_no_failure(
    tmp_path, monkeypatch, links
):
    if not links:
        monkeypatch.setattr(os, "link", lambda *_: (_ for _ in ()).throw(OSError(95, "none")))

    class FailsToClose(io.FileIO):
        def __exit__(self, *_):
            self.close()
            raise OSError(errno.EIO, "Input/output error")

    real = Path.open

    def opening(path, mode="r", **options):
        return FailsToClose(path, mode) if mode == "xb" else real(path, mode, **options)

    monkeypatch.setattr(Path, "open", opening)
    atomic_write.create_file(tmp_path / "a", b"content")
    assert names_in(tmp_path) == ["a"]
    assert (tmp_path / "a").read_bytes() == b"content"


def test_a_lost_file_is_not_called_written(tmp_path, monkeypatch):
    def lose(_folder):
        (tmp_path / "a").unlink(missing_ok=True)
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr(atomic_write, "_sync_folder", lose)
    with pytest.raises(OSError, match="Input/output error") as failure:
        atomic_write.replace_file(tmp_path / "a", b"content")
    assert not isinstance(failure.value, atomic_write.UnconfirmedError)
