"""Outcomes of an entered answer: accepted, queried or refused."""

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True)
class Accepted:
    """A usual answer, which goes into the document.

    Attributes
    ----------
    value : str, bool or list of str
        Value for the document; a quantity has its unit, a reading is a list of repeats.
    """

    value: object


@dataclass(frozen=True)
class Queried:
    """An unusual answer, to be taken again or kept with a reason.

    Attributes
    ----------
    value : str, bool or list of str
        Value for the document if the answer is kept.
    message : str
        One line: what looks wrong, what is usual, what to look at again.
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


@dataclass(frozen=True)
class Objection:
    """A reason to doubt an answer.

    Attributes
    ----------
    message : str
        One line: what is wrong, where, and what would be right.
    impossible : bool
        True if no vehicle can have the answer: it is refused. Otherwise it is queried.
    """

    message: str
    impossible: bool = False


MOST_OBJECTIONS = 2
"""Objections in one query. Further objections mostly have the same cause."""


def outcome_of(value: object, objections: Iterable[Objection]) -> Outcome:
    """Outcome of an answer with these objections to it.

    Parameters
    ----------
    value : str, bool or list of str
        Value for the document.
    objections : iterable of Objection

    Returns
    -------
    Accepted, Queried or Refused
        Refused with the first impossible objection; Queried where all objections are possible;
        Accepted where there is no objection.
    """
    objections = tuple(objections)
    for objection in objections:
        if objection.impossible:
            return Refused(objection.message)
    if objections:
        messages = (objection.message for objection in objections[:MOST_OBJECTIONS])
        return Queried(value, " ".join(messages))
    return Accepted(value)
