"""Records named on the command line, read and judged. Each fault is one line with its file."""

from collections.abc import Callable
from typing import Any

from core.documents.entries import EntryError
from core.documents.record import RecordError, read_document
from core.profiles.profile import Profile, ProfileError
from core.text.plain_text import plain
from core.verdict.assess import assess
from core.verdict.verdict import Verdict

LONGEST_PATH = 300
"""Characters of a path in a message."""


class Unreadable(Exception):
    """A record cannot be read or judged. The message is the line to print."""


def read_and_judge(
    path: str, profile_of: Callable[[str], Profile]
) -> tuple[dict[str, Any], Verdict]:
    """Read a record and compute its verdict.

    Parameters
    ----------
    path : str
        The file, as typed.
    profile_of : callable
        Loads a profile by its name.

    Raises
    ------
    Unreadable
        The record or its profile is faulty.
    """
    try:
        document = read_document(path)
        return document, assess(document, profile_of)
    except RecordError as error:  # its message names the file already
        raise Unreadable(str(error)) from None
    except EntryError as error:
        raise Unreadable(f"{plain(path, LONGEST_PATH)}: {error}") from None
    except ProfileError as error:
        raise Unreadable(f"{plain(path, LONGEST_PATH)}: [session] profile: {error}") from None
