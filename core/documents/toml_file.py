"""Reading a TOML file, with one clear line where that cannot be done."""

from __future__ import annotations

import tomllib
from os import PathLike, stat
from stat import S_ISREG
from typing import Any

from core.text.plain_text import plain

LARGEST = 1_000_000
"""Bytes. A profile or a shelf has some thousands; more is not one of ours."""


class TomlFileError(ValueError):
    """A file that cannot be read as TOML; the message names the file and says why."""


def read_toml(path: str | PathLike[str]) -> dict[str, Any]:
    """The tables of a TOML file.

    Raises
    ------
    TomlFileError
        It cannot be opened, is too large, is not UTF-8 text or not TOML (with line and column).
    """
    shown = plain(path, 300)
    try:
        # pathlib takes longer to load than a record; to open a pipe could take for ever.
        if not S_ISREG(stat(path).st_mode):  # noqa: PTH116
            raise ValueError("it is not a file")
        with open(path, "rb") as file:  # noqa: PTH123
            content = file.read(LARGEST + 1)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or error
        raise TomlFileError(f"{shown}: cannot be opened: {plain(reason)}") from None
    if len(content) > LARGEST:
        raise TomlFileError(f"{shown}: is larger than {LARGEST // 1_000_000} MB")
    try:
        return tomllib.loads(content.decode("utf-8-sig"))
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        raise TomlFileError(f"{shown}: line {line}: is not UTF-8 text") from None
    except ValueError as error:  # TOMLDecodeError, or a number with thousands of digits
        raise TomlFileError(f"{shown}: is not TOML: {plain(error, 200)}") from None
    except RecursionError:
        raise TomlFileError(f"{shown}: is not TOML we can read: nested too deeply") from None
