"""Agreement of the readings so far with each other, while more readings are to come."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from core.adjustment.bundle import MissingMark
from core.adjustment.least_squares import Adjustment, MissingReading, NoSolution
from core.adjustment.outliers import SuspectGroup, suspect_groups
from core.adjustment.slips import Slip
from core.documents.entries import EntryError
from core.profiles.profile import Profile
from core.sessions.session import Session, session_from
from core.uncertainty.measured_linkage import adjusted, slips_in


@dataclass(frozen=True)
class Closure:
    """The adjustment of the readings so far.

    Attributes
    ----------
    adjustment : Adjustment
    suspect_groups : tuple of SuspectGroup
        Readings that disagree with the others.
    session : Session
    """

    adjustment: Adjustment
    suspect_groups: tuple[SuspectGroup, ...]
    session: Session

    @property
    def is_checked(self) -> bool:
        """True if there are more readings than the pivots need."""
        return self.adjustment.redundancy > 0

    @property
    def closes(self) -> bool:
        """True if the readings agree within their uncertainty and none is suspect."""
        return self.adjustment.closes

    @cached_property
    def slips(self) -> tuple[Slip, ...]:
        """Slips that explain why the readings do not close, the best first; () where they do.

        The search adjusts the pivots some hundred times, so it waits until it is asked for.
        """
        return slips_in(self.session, self.adjustment)


def closure_of(document: Mapping[str, Any], profile_of: Callable[[str], Profile]) -> Closure | None:
    """Agreement of the readings of a document; None until every pivot can be placed.

    Parameters
    ----------
    document : mapping
    profile_of : callable
        Loads a profile by its name; called only where the document leaves something out.

    Raises
    ------
    core.profiles.profile.ProfileError
        The profile is needed and cannot be loaded.
    """
    try:
        session = session_from(document, profile_of)
        adjustment = adjusted(session)
    except (EntryError, MissingReading, MissingMark, NoSolution):
        return None
    return Closure(adjustment, suspect_groups(adjustment), session)
