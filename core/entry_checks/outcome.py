"""Outcomes of a check at entry: accepted, queried or refused."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import NamedTuple


@dataclass(frozen=True)
class Accepted:
    """An answer that goes into the document.

    Attributes
    ----------
    value : str, bool or list of str
        Value for the document; quantities with their unit, readings as a list of repeats.
    """

    value: object


@dataclass(frozen=True)
class Queried:
    """An unusual answer: take it again, or keep it with a reason.

    Attributes
    ----------
    value : str, bool or list of str
        Value for the document if it is kept.
    message : str
        One line: why it looks wrong, what is usual, where to look again.
    """

    value: object
    message: str


@dataclass(frozen=True)
class Refused:
    """An impossible answer.

    Attributes
    ----------
    message : str
        One line: what is wrong and what would be right.
    """

    message: str


Outcome = Accepted | Queried | Refused


class Objection(NamedTuple):
    """An objection to an answer; `impossible` where the answer is to be refused."""

    message: str
    impossible: bool = False


SAID = 2
"""Most objections in one message; further ones mostly have the same cause."""


def outcome_of(value: object, objections: Iterable[Objection]) -> Outcome:
    """Outcome for a value and the objections to it."""
    found = tuple(objections)
    for objection in found:
        if objection.impossible:
            return Refused(objection.message)
    if found:
        return Queried(value, " ".join(objection.message for objection in found[:SAID]))
    return Accepted(value)
