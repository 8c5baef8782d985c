"""The filed sessions of a files folder, however many there are.

The records are the only truth. The index remembers what a list shows of each file as long as the
file does not change: in memory, and in a file beside the records.
"""

from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from core.documents.listed_session import ListedSession, newest_first
from core.documents.record_list import listed_file, record_files
from core.profiles.profile import Profile
from core.shop.index_file import Row, read_index, write_index
from core.shop.settled import is_settled, settled

FIRST_PORTION = 60
"""Files that are read before the first look: more than a screen shows."""

PORTION = 500
"""Files that are read between two looks."""

COMPUTED_PORTION = 20
"""Verdicts that are computed afresh between two looks."""


@dataclass(frozen=True)
class Look:
    """The filed sessions as far as they are known.

    Attributes
    ----------
    entries : tuple of ListedSession
        Newest first; files that cannot be read come last.
    unread : int
        Number of files that are not read yet.
    uncomputed : int
        Number of sessions whose verdict is to be computed afresh, and is not yet.
    """

    entries: tuple[ListedSession, ...]
    unread: int
    uncomputed: int

    @property
    def is_last(self) -> bool:
        """True if nothing is left to read or to compute."""
        return not self.unread and not self.uncomputed


class RecordIndex:
    """Filed sessions of a files folder, each read only once for each state of its file.

    Parameters
    ----------
    files : Path
    profile_of : callable
        Loads a profile by its name, for verdicts that are computed afresh.
    """

    def __init__(self, files: Path, profile_of: Callable[[str], Profile]) -> None:
        self.files, self.profile_of = files, profile_of
        self._rows: dict[Path, Row] | None = None

    def looks(self) -> Iterator[Look]:
        """Read what is new or changed, newest first, and yield the sessions after each portion.

        The last look has every session with its verdict. A caller can stop at any look.

        Raises
        ------
        core.documents.record.RecordError
            The folder cannot be read.
        """
        present = record_files(self.files)
        known = self._known_rows()
        entries, unread = {}, []
        for file in present:
            row = known.get(file.path)
            if row and row.state == file.state != "":
                entries[file.path] = row.entry
            else:
                unread.append(file)
        self._forget(known.keys() - {file.path for file in present})
        if not unread:
            yield _look(entries, 0)
        begin, end = 0, FIRST_PORTION
        while begin < len(unread):
            rows = [Row(file.state, listed_file(file)) for file in unread[begin:end]]
            self._remember(rows)
            entries.update((row.entry.path, row.entry) for row in rows)
            yield _look(entries, len(unread[end:]))
            begin, end = end, end + PORTION
        yield from self._computed(entries, {file.path: file.state for file in present})

    def entries(self) -> tuple[ListedSession, ...]:
        """Every filed session with its verdict, newest first. Raises RecordError."""
        *_, last = self.looks()
        return last.entries

    def _computed(
        self, entries: dict[Path, ListedSession], states: dict[Path, str]
    ) -> Iterator[Look]:
        """Compute the verdicts that do not stand afresh, and yield a look after each portion."""
        pending = [entry for entry in newest_first(entries.values()) if not is_settled(entry)]
        for begin in range(0, len(pending), COMPUTED_PORTION):
            rows = []
            for entry in pending[begin : begin + COMPUTED_PORTION]:
                entries[entry.path], is_lasting = self._settled(entry)
                if is_lasting:
                    rows.append(Row(states[entry.path], entries[entry.path]))
            self._remember(rows)
            yield _look(entries, 0)

    def _settled(self, entry: ListedSession) -> tuple[ListedSession, bool]:
        """A session with its verdict, and whether that follows from the record alone."""
        is_lasting = True

        def profile_of(name: str) -> Profile:
            nonlocal is_lasting
            is_lasting = False  # the profile can change, and the record does not
            return self.profile_of(name)

        return settled(entry, profile_of), is_lasting

    def _known_rows(self) -> dict[Path, Row]:
        if self._rows is None:
            self._rows = read_index(self.files)
        return dict(self._rows)  # another thread may add rows meanwhile

    def _remember(self, rows: Sequence[Row]) -> None:
        if self._rows is not None:
            self._rows.update((row.entry.path, row) for row in rows)
        write_index(self.files, rows)

    def _forget(self, gone: Collection[Path]) -> None:
        if self._rows is not None and gone:
            for path in gone:
                self._rows.pop(path, None)
            write_index(self.files, (), gone)


def _look(entries: dict[Path, ListedSession], unread: int) -> Look:
    uncomputed = sum(not is_settled(entry) for entry in entries.values())
    return Look(tuple(newest_first(entries.values())), unread, uncomputed)
