"""The verdict on a document; every failure names the entry that caused it."""

from collections.abc import Callable, Mapping
from math import isfinite
from typing import Any

from core.adjustment.bundle import MissingMark
from core.adjustment.least_squares import MissingReading, NoSolution
from core.documents.entries import EntryError
from core.profiles.profile import Profile
from core.sessions.session import session_from
from core.verdict.verdict import DRAWS, Verdict, evaluate


def assess(
    document: Mapping[str, Any], profile_of: Callable[[str], Profile], draws: int = DRAWS
) -> Verdict:
    """The verdict on the session of a document.

    Parameters
    ----------
    document : mapping
    profile_of : callable
        Loads a profile by its name; called only where the document leaves something out.
    draws : int
        Number of draws, as in `core.verdict.verdict.evaluate`.

    Raises
    ------
    core.documents.entries.EntryError
        An entry is missing or invalid, or the readings do not settle on one set of pivots.
    core.profiles.profile.ProfileError
        The profile is needed and cannot be loaded.
    """
    try:
        verdict = evaluate(session_from(document, profile_of), draws)
    except MissingReading as missing:
        raise EntryError(
            f"readings.{missing.name}", 'is missing; it should be a list such as ["24 1/2 in"]'
        ) from None
    except MissingMark as missing:
        raise EntryError(
            "photographs",
            f"{missing.pivot} is marked in none of them, and was not read; mark it in one, or take "
            "its height and its offset",
        ) from None
    except NoSolution as error:
        raise EntryError(error.path, str(error)) from None
    if verdict.session.photographs and not isfinite(verdict.rules.effective.value):
        raise EntryError("photographs", "the marks give links that no vehicle has; set them again")
    return verdict
