"""A sheet to measure with as a file of the files folder."""

from collections.abc import Sequence
from pathlib import Path

from core.profiles.profile import load_profile
from wizard.printed.page_file import unused_page_path, write_page
from wizard.printed.sheet import Paper, sheet_document, sheet_html


def write_sheet_for(name: str, files: Path, profile_folders: Sequence[Path]) -> Path:
    """Write the sheet of a profile in inches on Letter paper, and return its file.

    Raises
    ------
    core.profiles.profile.ProfileError
        The profile cannot be used.
    core.documents.record.RecordError
        The file cannot be written.
    """
    profile = load_profile(name, profile_folders)
    html = sheet_html(sheet_document(profile, None, None, "in"), profile, Paper.LETTER, True)
    path = unused_page_path(files / f"sheet_{profile.name}")
    write_page(path, html)
    return path
