"""Atomic writes: a file is whole or absent, and an existing file is never overwritten."""

import os

import pytest

from core.documents import atomic_write


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
