"""The application as its screens see it: its surroundings, and the screens it can open."""

from abc import abstractmethod
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from textual.app import App

from core.documents.document import Document
from core.profiles.profile import Profile
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.flow.draft_store import DraftStore

WritePage = Callable[[Path, Document, Verdict, LengthUnit], Path]
"""Writes the owner's page of a record beside it, and returns the page's file."""

LogFault = Callable[[BaseException], str]
"""Writes the details of a fault of the program to a file, and returns a line about it."""


@dataclass(frozen=True)
class Surroundings:
    """Places and services that the application is given from outside.

    Attributes
    ----------
    files : Path
        The folder of records and drafts.
    profile_folders : tuple of Path
        Folders of profiles, a shop's own first.
    parts_shelf : Path
        The shop's own corrections; the file need not exist.
    write_page : callable
    log_fault : callable
    """

    files: Path
    profile_folders: tuple[Path, ...]
    parts_shelf: Path
    write_page: WritePage
    log_fault: LogFault


class Host(App[None]):
    """Base of the application: the requests that a screen can make.

    Attributes
    ----------
    surroundings : Surroundings
    draft_store : DraftStore
    """

    surroundings: Surroundings
    draft_store: DraftStore

    @property
    def files(self) -> Path:
        """The folder of records and drafts."""
        return self.surroundings.files

    @property
    def profile_folders(self) -> tuple[Path, ...]:
        """Folders of profiles, a shop's own first."""
        return self.surroundings.profile_folders

    @abstractmethod
    def measure(self) -> None:
        """Measure a vehicle for the first time."""

    @abstractmethod
    def measure_again(self, path: Path) -> None:
        """Measure the vehicle of a filed session again."""

    @abstractmethod
    def resume(self, path: Path) -> None:
        """Resume an unfinished session at the question it had reached."""

    @abstractmethod
    def open_record(self, path: Path) -> None:
        """Open a filed session."""

    @abstractmethod
    def compare(self, path: Path) -> None:
        """Compare a filed session with the session it follows, or with one that is chosen."""

    @abstractmethod
    def warn(self, text: str) -> None:
        """Say on any screen why an action was not done."""

    @abstractmethod
    def profile_of(self, name: str) -> Profile:
        """Load the profile of a name. Raises ProfileError."""
