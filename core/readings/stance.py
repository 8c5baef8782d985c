"""The stance: statements that have to be true so that the links lie at their ride-height angles.

All of them are common practice, no source.
"""

from collections.abc import Mapping
from typing import Any

from core.documents.document import value_at
from core.documents.entries import flag_at

STATEMENTS = (
    "level_floor",
    "tyres_set",
    "usual_load",
    "settled",
    "wheels_on_ground",
    "straight_ahead",
)


def failures(document: Mapping[str, Any]) -> tuple[str, ...]:
    """Paths of the statements that were answered with no, "stance.wheels_on_ground".

    Each of them holds the verdict back; a statement without an answer does not. Raises
    core.documents.entries.EntryError where an answer is neither true nor false.
    """
    paths = (f"stance.{statement}" for statement in STATEMENTS)
    return tuple(path for path in paths if flag_at(document, path) is False)


def not_checked(document: Mapping[str, Any]) -> tuple[str, ...]:
    """Paths of the statements that have no answer."""
    paths = (f"stance.{statement}" for statement in STATEMENTS)
    return tuple(path for path in paths if value_at(document, path) is None)
