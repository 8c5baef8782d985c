"""Whether the readings taken so far agree with each other, while there are more to come."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from core.adjustment.least_squares import Adjustment, MissingReading, NoSolution, adjust
from core.adjustment.outliers import SuspectGroup, suspect_groups
from core.documents.entries import EntryError
from core.profiles.profile import Profile
from core.sessions.session import session_from


@dataclass(frozen=True)
class Closure:
    """The readings so far, adjusted, and which of them cannot be right."""

    adjustment: Adjustment
    suspect_groups: tuple[SuspectGroup, ...]

    @property
    def is_checked(self) -> bool:
        """Whether there is any reading more than the pivots need to have a place."""
        return self.adjustment.redundancy > 0

    @property
    def closes(self) -> bool:
        """Whether the readings agree as well as they claim, and none stands out."""
        return self.adjustment.closes and not self.suspect_groups


def closure_of(document: Mapping[str, Any], profile_of: Callable[[str], Profile]) -> Closure | None:
    """How the readings of a document agree; None as long as a pivot has no place.

    Raises
    ------
    core.profiles.profile.ProfileError
        The profile is needed and cannot be had.
    """
    try:
        session = session_from(document, profile_of)
        adjustment = adjust(session.readings, session.instruments, session.layout)
    except (EntryError, MissingReading, NoSolution):
        return None
    return Closure(adjustment, suspect_groups(adjustment))
