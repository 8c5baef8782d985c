"""The verdict on readings that do not close: it stands if every explanation leads to it."""

from collections.abc import Callable, Sequence
from enum import StrEnum
from typing import TypeVar

from core.adjustment.bundle import MissingMark
from core.adjustment.explanations import Evidence
from core.adjustment.least_squares import NoSolution

Overall = TypeVar("Overall", bound=StrEnum)
"""The verdict on a vehicle, `core.verdict.verdict.Overall`."""


def decided_by_explanations(
    explanations: Sequence[Evidence],
    evaluate: Callable[[Evidence], Overall],
) -> Overall | None:
    """The verdict that every explanation leads to, or None.

    Parameters
    ----------
    explanations : sequence of Evidence
        As from `core.adjustment.explanations.leading_explanations`.
    evaluate : callable
        Verdict on the geometry by some evidence.

    Returns
    -------
    Overall or None
        None where the explanations disagree, where nothing explains the set, and where one
        explanation places no pivots.
    """
    agreed = None
    for evidence in explanations:
        try:
            decided = evaluate(evidence)
        except (NoSolution, MissingMark):
            return None
        if agreed is not None and decided != agreed:
            return None
        agreed = decided
    return agreed
