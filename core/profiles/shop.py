"""The shop's own name and address, for the head of its printed pages: text alone."""

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from core.documents.document import value_at
from core.documents.entries import EntryError
from core.documents.tables import line_at, refuse_unknown
from core.documents.toml_file import TomlFileError, read_toml
from core.profiles.profile import ProfileError
from core.text.plain_text import plain

LONGEST_LINE = 60
MOST_LINES = 3
"""Characters of a line, and lines of an address."""

KEYS = ("name", "address", "phone", "email")


@dataclass(frozen=True)
class Shop:
    """Head of a printed page.

    Attributes
    ----------
    name : str
        "" where there is no file.
    lines : tuple of str
        Address, telephone and e-mail, as far as the file has them.
    """

    name: str = ""
    lines: tuple[str, ...] = ()


NO_SHOP = Shop()
"""The shop of a folder without such a file."""


def load_shop(path: Path) -> Shop:
    """The shop in a file; an empty one where the file does not exist.

    Raises
    ------
    ProfileError
        The file cannot be read, or an entry is not a line of text.
    """
    if not path.exists():
        return NO_SHOP
    try:
        tables = read_toml(path)
        refuse_unknown(tables, KEYS)
        name = _line(tables, "name")
        others = (_line(tables, key) for key in ("phone", "email") if key in tables)
        return Shop(name, (*_address(tables), *others))
    except TomlFileError as error:
        raise ProfileError(str(error)) from None
    except EntryError as error:
        raise ProfileError(f"{plain(path, 300)}: {error}") from None


def _address(tables: dict[str, Any]) -> tuple[str, ...]:
    """Lines of the address, written as one text or as a list of texts."""
    address = value_at(tables, "address", [])
    lines = [address] if isinstance(address, str) else address
    if not isinstance(lines, list) or len(lines) > MOST_LINES:
        raise EntryError("address", f"should be a text, or a list of at most {MOST_LINES} texts")
    return tuple(_line({"address": line}, "address") for line in lines)


def _line(tables: dict[str, Any], key: str) -> str:
    line = line_at(tables, key)
    if len(line) > LONGEST_LINE:
        raise EntryError(key, f"should have at most {LONGEST_LINE} characters")
    return line
