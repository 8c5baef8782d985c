"""Places of files: records, drafts, profiles, demo sessions. No other module knows a path."""

import os
from pathlib import Path

from core.documents.record import SHOP
from core.text.plain_text import plain

FILES_VARIABLE = "EVENARC_FILES"
"""Environment variable that names the files folder."""

_TOP = Path(__file__).resolve().parents[1]  # of the checkout, or of the installed packages

PROFILES = _TOP / "profiles"
DEMO_SESSIONS = _TOP / "demo_sessions"


class UnknownHome(ValueError):
    """A path begins with a home folder that this system does not know; the message is one line."""


def with_home(path: str | Path) -> Path:
    """The whole path, where "~" stands for a home folder. Raises UnknownHome."""
    try:
        return Path(path).expanduser().absolute()
    except RuntimeError:
        whose = plain(Path(path).parts[0], 60)
        raise UnknownHome(
            f"“{whose}” is the home folder of nobody here; give the whole path, or ~ for your own"
        ) from None


def files_folder(option: str | Path | None = None) -> Path:
    """Folder of records and drafts, which need not exist yet.

    The option comes first, then the variable EVENARC_FILES, then the folder in which this system
    keeps a person's data. Blank text counts as missing.

    Parameters
    ----------
    option : str, Path or None
        Value of ``--files``.

    Raises
    ------
    UnknownHome
        The path begins with the home folder of somebody whom this system does not know.
    """
    named = {"--files": option, f"the variable {FILES_VARIABLE}": os.environ.get(FILES_VARIABLE)}
    for name, chosen in named.items():
        if chosen is not None and str(chosen).strip():
            try:
                return with_home(chosen)
            except UnknownHome as error:
                raise UnknownHome(f"{name}: {error}") from None
    from platformdirs import user_data_path  # a check of a complete record does without it

    return user_data_path("evenarc", appauthor=False)


def profile_folders(files: Path) -> tuple[Path, ...]:
    """Folders of profiles: the shop's own folder first, then the folder of the program."""
    return (files / SHOP / "profiles", PROFILES)


def crash_log_file(files: Path) -> Path:
    """File for the details of a fault in the program."""
    return files / "crash.log"


def parts_shelf(files: Path) -> Path:
    """File of the shop's own corrections, which need not exist."""
    return files / SHOP / "parts_shelf.toml"


def shop_file(files: Path) -> Path:
    """File of the shop's name and address, which need not exist."""
    return files / SHOP / "shop.toml"
