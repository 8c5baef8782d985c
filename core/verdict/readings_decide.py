"""The verdict on readings that do not close: it stands if every explanation leads to it."""

from collections.abc import Callable, Sequence
from enum import StrEnum
from typing import TypeVar

from core.adjustment.least_squares import NoSolution
from core.readings.reading import Reading

Overall = TypeVar("Overall", bound=StrEnum)
"""The verdict on a vehicle, `core.verdict.verdict.Overall`."""


def decided_by_explanations(
    explanations: Sequence[tuple[Reading, ...]],
    evaluate: Callable[[tuple[Reading, ...]], Overall],
) -> Overall | None:
    """The verdict that every explanation leads to, or None.

    Parameters
    ----------
    explanations : sequence of tuple of Reading
        As from `core.adjustment.explanations.leading_explanations`.
    evaluate : callable
        Verdict on the geometry of a set of readings.

    Returns
    -------
    Overall or None
        None where the explanations disagree, where nothing explains the set, and where one
        explanation places no pivots.
    """
    agreed = None
    for readings in explanations:
        try:
            decided = evaluate(readings)
        except NoSolution:
            return None
        if agreed is not None and decided != agreed:
            return None
        agreed = decided
    return agreed
