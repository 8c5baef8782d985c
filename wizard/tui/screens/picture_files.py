"""Questions for the file of a picture: it is typed, or chosen from a folder."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

from textual.app import App

from core.text.plain_text import plain
from wizard.questions.question import Choice
from wizard.tui.screens.pick import PickScreen
from wizard.tui.screens.prompt import PromptScreen

SUFFIXES = (".jpg", ".jpeg", ".png", ".heic", ".heif")
MOST_LISTED = 200
LONGEST_PATH = 200


def ask_picture(app: App[Any], take: Callable[[str], None], refuse: Callable[[str], None]) -> None:
    """Ask for a picture by its file, or by a folder whose pictures are offered.

    Parameters
    ----------
    app : App
    take : callable
        Takes the path of the picture.
    refuse : callable
        Takes the words on a folder without a picture.
    """

    def read(text: str) -> tuple[Path, str]:
        try:
            path = Path(text.strip()).expanduser()
            is_there = bool(text.strip()) and path.exists()
        except (OSError, RuntimeError):  # too long a name, or the home of an unknown user
            is_there = False
        if not is_there:
            raise ValueError("there is no such file or folder")
        return path, plain(path, LONGEST_PATH)

    def offer(path: Path | None) -> None:
        if path is None:
            return
        if not path.is_dir():
            take(str(path))
            return
        try:
            files = sorted(file for file in path.iterdir() if file.suffix.lower() in SUFFIXES)
        except OSError as error:
            refuse(f"{plain(path, LONGEST_PATH)}: cannot be read: {error.strerror}")
            return
        if not files:
            refuse(f"{plain(path, LONGEST_PATH)}: holds no picture")
            return
        choices = [Choice(str(file), plain(file.name)) for file in files[:MOST_LISTED]]
        question = PickScreen("Which picture?", plain(path, LONGEST_PATH), choices, None)
        app.push_screen(question, take_chosen)

    def take_chosen(name: str | None) -> None:
        if name is not None:
            take(name)

    do = "Type a file, or a folder to choose from."
    app.push_screen(PromptScreen("Which picture?", do, str(Path.home()), read), offer)
