"""What becomes of an entered answer: accepted, queried or refused."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import NamedTuple


@dataclass(frozen=True)
class Accepted:
    """Goes into the document as it is.

    Attributes
    ----------
    value : str, bool or list of str
        What the document gets; quantities with their unit, readings as a list of repeats.
    """

    value: object


@dataclass(frozen=True)
class Queried:
    """Unusual: to be taken again, or kept with a reason.

    Attributes
    ----------
    value : str, bool or list of str
        What the document gets if it is kept.
    message : str
        One line: why it looks wrong, what is usual, what to look at again.
    """

    value: object
    message: str


@dataclass(frozen=True)
class Refused:
    """Impossible.

    Attributes
    ----------
    message : str
        One line: what is wrong and what would be right.
    """

    message: str


Outcome = Accepted | Queried | Refused


class Objection(NamedTuple):
    """Something that speaks against an answer, and whether it makes it impossible."""

    message: str
    impossible: bool = False


SAID = 2
"""Objections that are told at once: more of them mostly have the same cause."""


def outcome_of(value: object, objections: Iterable[Objection]) -> Outcome:
    """The outcome for a value with everything that speaks against it."""
    found = tuple(objections)
    for objection in found:
        if objection.impossible:
            return Refused(objection.message)
    if found:
        return Queried(value, " ".join(objection.message for objection in found[:SAID]))
    return Accepted(value)
