"""A rule between readings: its inputs, and its objections."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Objection
from core.readings.survey import COORDINATES, LINKS

ROUNDING = 1e-9
"""mm, rad or a plain number; a smaller difference is rounding."""

ENDS = {link: (f"{link}.frame", f"{link}.axle") for link in LINKS}
"""Frame end and axle end of each link."""

Find = Callable[[KnownAnswers], Iterator[Objection]]


@dataclass(frozen=True)
class Rule:
    """A rule with its inputs: names of readings, or paths.

    It is applied when one of its inputs is entered. It objects to nothing while one is missing.
    """

    inputs: frozenset[str]
    find: Find


def rule(find: Find, *inputs: str) -> Rule:
    """A rule over these inputs."""
    return Rule(frozenset(inputs), find)


def coordinates(*pivots: str) -> tuple[str, ...]:
    """Names of the height, offset and station of some pivots."""
    return tuple(f"{pivot}.{kind}" for pivot in pivots for kind in COORDINATES)
