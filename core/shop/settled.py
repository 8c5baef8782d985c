"""The verdict of a listed session: the filed one if it stands, else one computed afresh."""

from collections.abc import Callable
from dataclasses import replace

from core.documents.entries import EntryError
from core.documents.listed_session import ListedSession
from core.documents.record import RecordError, read_document
from core.profiles.profile import Profile, ProfileError
from core.verdict.assess import assess
from core.verdict.method import METHOD_VERSION


def is_settled(entry: ListedSession) -> bool:
    """True if nothing has to be computed for the list.

    A filed verdict stands if the seal of its record holds and this version of the method has
    computed it.
    """
    return bool(entry.fault) or entry.method_version == METHOD_VERSION


def settled(entry: ListedSession, profile_of: Callable[[str], Profile]) -> ListedSession:
    """A listed session with its verdict, which is computed afresh if the filed one does not stand.

    Parameters
    ----------
    entry : ListedSession
    profile_of : callable
        Loads a profile by its name; called only where the record leaves something out.

    Returns
    -------
    ListedSession
        With the reason, in place of the verdict, where none can be computed.
    """
    if is_settled(entry):
        return entry
    overall, reason = "", ""
    try:
        overall = str(assess(read_document(entry.path), profile_of).overall)
    except (EntryError, ProfileError) as error:
        reason = str(error)
    except RecordError as error:  # the file has changed since it was listed
        return ListedSession(entry.path, fault=str(error))
    return replace(
        entry, overall=overall, reason=reason, method_version=METHOD_VERSION, is_afresh=True
    )
