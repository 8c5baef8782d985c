"""Reading of a TOML file; every failure is one line."""

import stat
from pathlib import Path
from typing import Any

import tomli

from core.text.plain_text import plain

LARGEST = 1_000_000
"""Bytes of the largest file; a profile or a record has some thousands."""


class TomlFileError(ValueError):
    """A file that cannot be read as TOML; the message names the file and says why."""


def read_toml(path: str | Path) -> dict[str, Any]:
    """The tables of a TOML file.

    Raises
    ------
    TomlFileError
        The file cannot be opened, is too large, or is not UTF-8 text or TOML (with its line).
    """
    name = plain(path, 300)
    try:
        if not stat.S_ISREG(Path(path).stat().st_mode):  # opening a pipe could wait for ever
            raise ValueError("it is not a file")
        with Path(path).open("rb") as file:
            content = file.read(LARGEST + 1)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or error
        raise TomlFileError(f"{name}: cannot be opened: {plain(reason)}") from None
    if len(content) > LARGEST:
        raise TomlFileError(f"{name}: is larger than {LARGEST // 1_000_000} MB")
    try:
        return tomli.loads(content.decode("utf-8-sig"))
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        raise TomlFileError(f"{name}: line {line}: is not UTF-8 text") from None
    except ValueError as error:  # TOMLDecodeError, or a number with thousands of digits
        raise TomlFileError(f"{name}: is not TOML: {plain(error, 200)}") from None
    except RecursionError:
        raise TomlFileError(f"{name}: is not TOML we can read: nested too deeply") from None
