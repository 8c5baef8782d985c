"""The question for another files folder, after the disk has refused an answer."""

from pathlib import Path

from core.text.plain_text import plain
from wizard.tui.screens.prompt import PromptScreen

GO_ON_ELSEWHERE = "F6 goes on in another folder"

SUGGESTED = "~/evenarc"
"""Folder to begin with."""


def folder_question() -> PromptScreen[Path]:
    """Screen whose result is the folder to go on in."""
    return PromptScreen(
        "In which folder shall Evenarc go on?",
        "This session and every later one go there. The others stay where they are; to see them "
        "again, begin with --files FOLDER.",
        SUGGESTED,
        read_folder,
    )


def read_folder(text: str) -> tuple[Path, str]:
    """Read the name of a folder, which need not exist. Raises ValueError.

    Returns
    -------
    folder : Path
    outcome : str
        Effect of the name, in words.
    """
    if not text.strip() or "\0" in text:
        raise ValueError("type the name of a folder, like /media/stick/evenarc")
    try:
        folder = Path(text.strip()).expanduser().absolute()
        is_there, is_folder = folder.exists(), folder.is_dir()
    except (OSError, RuntimeError) as error:  # RuntimeError: a home folder that nobody has
        raise ValueError(f"{plain(text, 100)}: cannot be looked at: {plain(error, 100)}") from None
    if is_there and not is_folder:
        raise ValueError(f"{plain(folder, 200)}: is a file; type the name of a folder")
    words = "is there" if is_there else "is made"
    return folder, f"{plain(folder, 200)} {words}; sessions go there"
