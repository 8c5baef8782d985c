"""Reading of a TOML file: every failure is one line that names the file."""

import os

import pytest

from core.documents.toml_file import LARGEST, TomlFileError, read_toml


@pytest.mark.parametrize("content", [b'a = "1"', b'\xef\xbb\xbfa = "1"'])
def test_a_file_is_read_with_or_without_a_mark_at_its_beginning(tmp_path, content):
    file = tmp_path / "a.toml"
    file.write_bytes(content)
    assert read_toml(file) == {"a": "1"}


@pytest.mark.parametrize(
    ("content", "reason"),
    [
        (b"a = b", "is not TOML: .*line 1"),
        (b'b = "x"\na = "\xff"', "line 2: is not UTF-8 text"),
        (b"a = " + b"[" * 5000, "is not TOML"),
        (b"#" * (LARGEST + 1), "is larger than 1 MB"),
    ],
)
def test_a_faulty_file_is_one_line(tmp_path, content, reason):
    file = tmp_path / "a.toml"
    file.write_bytes(content)
    with pytest.raises(TomlFileError, match=reason) as refusal:
        read_toml(file)
    assert str(file) in str(refusal.value)
    assert "\n" not in str(refusal.value)


def test_a_missing_file_a_folder_and_a_pipe_are_refused(tmp_path):
    os.mkfifo(tmp_path / "pipe.toml")
    for path in (tmp_path / "none.toml", tmp_path, tmp_path / "pipe.toml"):
        with pytest.raises(TomlFileError, match="cannot be opened"):
            read_toml(path)
