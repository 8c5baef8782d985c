"""Places of files: records, drafts, profiles, demo sessions. No other module knows a path."""

import os
from pathlib import Path

from core.documents.record import SHOP

FILES_VARIABLE = "EVENARC_FILES"
"""Environment variable that names the files folder."""

_TOP = Path(__file__).resolve().parents[1]  # of the checkout, or of the installed packages

PROFILES = _TOP / "profiles"
DEMO_SESSIONS = _TOP / "demo_sessions"


def files_folder(option: str | Path | None = None) -> Path:
    """Folder of records and drafts, which need not exist yet.

    The option comes first, then the variable EVENARC_FILES, then the folder in which this system
    keeps a person's data. Blank text counts as missing.

    Parameters
    ----------
    option : str, Path or None
        Value of ``--files``.
    """
    for chosen in (option, os.environ.get(FILES_VARIABLE)):
        if chosen is not None and str(chosen).strip():
            return Path(chosen).expanduser().absolute()
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
