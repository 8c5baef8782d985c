"""The application as its screens see it: its surroundings, and the screens it can open."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from textual.app import App
from textual.widget import Widget

from core.documents.document import Document
from core.documents.record import RecordError
from core.fix.plan import Plan
from core.profiles.adjuster import Adjuster
from core.profiles.profile import Profile
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.flow.draft_store import AnsweredElsewhere, DraftStore
from wizard.flow.flow import Flow
from wizard.flow.joining import answers_elsewhere, joined
from wizard.phrases.other_window import taken_over_words
from wizard.tui.pictures.sharp import sharp_picture_of

WritePage = Callable[[Path, Document, Verdict, LengthUnit], Path]
"""Writes the owner's page of a record beside it, and returns the page's file."""

WriteOrder = Callable[
    [Path, Document, Verdict, Plan, Mapping[str, Adjuster], float, LengthUnit], Path
]
"""Writes the work order of a plan beside its record, and returns the page's file."""

WriteSheet = Callable[[str], Path]
"""Writes the sheet of a profile into the files folder, and returns the sheet's file."""

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
    write_page, write_order, write_sheet : callable
    log_fault : callable
    in_folder : callable
        Returns the surroundings with another folder of records and drafts.
    """

    files: Path
    profile_folders: tuple[Path, ...]
    parts_shelf: Path
    write_page: WritePage
    write_order: WriteOrder
    write_sheet: WriteSheet
    log_fault: LogFault
    in_folder: Callable[[Path], Surroundings]


class Host(App[None]):
    """Base of the application: the requests that a screen can make.

    Attributes
    ----------
    surroundings : Surroundings
    draft_store : DraftStore
    """

    surroundings: Surroundings
    draft_store: DraftStore

    @cached_property
    def sharp_picture(self) -> type[Widget] | None:
        """Widget for sharp pictures, asked of the terminal once; None for half-blocks."""
        return sharp_picture_of(self)

    @property
    def files(self) -> Path:
        """The folder of records and drafts."""
        return self.surroundings.files

    @property
    def profile_folders(self) -> tuple[Path, ...]:
        """Folders of profiles, a shop's own first."""
        return self.surroundings.profile_folders

    def keep(self, flow: Flow, before: Flow | None = None) -> Flow:
        """Keep a session on the disk, and return it with the answers of other windows.

        Parameters
        ----------
        flow : Flow
        before : Flow, optional
            The session before its last answer.

        Raises
        ------
        wizard.flow.draft_store.AnsweredElsewhere
            Another window has answered the same question.
        RecordError
            The session cannot be kept.
        """
        kept = self.draft_store.keep(flow.document, before.document if before else None)
        if kept.remark:
            self.warn(kept.remark)
        return self.take_over(flow, kept.document)

    def keep_or_warn(self, flow: Flow, before: Flow) -> tuple[Flow, bool]:
        """Keep a session, or say why not.

        Returns
        -------
        flow : Flow
            The session to go on with. If it was not kept, its change waits for the next time.
        is_kept : bool
        """
        try:
            return self.keep(flow, before), True
        except AnsweredElsewhere as error:
            self.warn(str(error))
            return self.take_over(before, error.document), False
        except RecordError as error:
            self.warn(str(error))
            return flow, False

    def take_over(self, flow: Flow, document: Document) -> Flow:
        """Take the answers of another window into a session, and say which."""
        answers = answers_elsewhere(flow, document)
        flow, remark = joined(flow, document, self.profile_folders)
        for line in (taken_over_words(answers) if answers else "", remark):
            if line:
                self.warn(line)
        return flow

    def go_on_in(self, files: Path) -> None:
        """Keep and file sessions in another folder from now on."""
        self.surroundings = self.surroundings.in_folder(files)
        self.draft_store = DraftStore(files)

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
