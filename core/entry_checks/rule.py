"""Rules that compare several answers with each other."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Objection
from core.readings.survey import COORDINATES, LINKS
from core.text.quantity import format_length

ROUNDING = 1e-9
"""mm, rad or plain; values that differ by less differ by rounding alone."""

ENDS = {link: (f"{link}.frame", f"{link}.axle") for link in LINKS}
"""Frame end and axle end of each link."""

FindObjections = Callable[[KnownAnswers], Iterator[Objection]]


@dataclass(frozen=True)
class Rule:
    """A comparison of several answers.

    Attributes
    ----------
    inputs : frozenset of str
        Names of the readings, or paths of other answers. The rule is asked when one of them is
        entered.
    find_objections : callable
        Yields the objections; none while an input is missing.
    """

    inputs: frozenset[str]
    find_objections: FindObjections


def rule(find_objections: FindObjections, *inputs: str) -> Rule:
    """A rule over these inputs."""
    return Rule(frozenset(inputs), find_objections)


def coordinates(*pivots: str) -> tuple[str, ...]:
    """Names of the height, offset and station of some pivots."""
    return tuple(f"{pivot}.{kind}" for pivot in pivots for kind in COORDINATES)


def format_tape(length: float, known: KnownAnswers) -> str:
    """Text of a length in the session's unit, as a tape reads: "17 5/8 in" or "448 mm".

    Parameters
    ----------
    length : float
        mm
    known : KnownAnswers
        Has the session's unit.
    """
    return format_length(length, known.units)
