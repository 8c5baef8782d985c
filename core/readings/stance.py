"""How the vehicle has to stand so that its links carry their ride-height angles.

All of it is common practice in the trade, without a published source.
"""

from collections.abc import Mapping
from typing import Any

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
    """Every statement of the stance that was answered with no, as "stance.wheels_on_ground".

    Each of them holds the verdict back; what was not answered does not. Raises
    core.documents.entries.EntryError where an answer is neither true nor false.
    """
    paths = (f"stance.{statement}" for statement in STATEMENTS)
    return tuple(path for path in paths if flag_at(document, path) is False)
