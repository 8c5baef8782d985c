"""Where files live. Nothing else in Evenarc knows a path."""

import os
from pathlib import Path

from core.documents.record import SHOP

FILES_VARIABLE = "EVENARC_FILES"

_TOP = Path(__file__).resolve().parents[1]  # of the checkout, or of what was installed

PROFILES = _TOP / "profiles"
DEMO_SESSIONS = _TOP / "demo_sessions"


def files_folder(option: str | Path | None = None) -> Path:
    """The folder of records and drafts, which need not exist yet.

    Parameters
    ----------
    option : str, Path or None
        What ``--files`` says; then comes the variable EVENARC_FILES, then the place where
        this system keeps a person's data. Blank text counts as not said.
    """
    for chosen in (option, os.environ.get(FILES_VARIABLE)):
        if chosen is not None and str(chosen).strip():
            return Path(chosen).expanduser().absolute()
    from platformdirs import user_data_path

    return user_data_path("evenarc", appauthor=False)


def profile_folders(files: Path) -> tuple[Path, ...]:
    """Where profiles are looked for: the workshop's own folder first, then those delivered."""
    return (files / SHOP / "profiles", PROFILES)


def crash_log_file(files: Path) -> Path:
    """Where the details of a fault of the program are written."""
    return files / "crash.log"


def parts_shelf(files: Path) -> Path:
    """The workshop's own corrections, a file that need not exist."""
    return files / SHOP / "parts_shelf.toml"
