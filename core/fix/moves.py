"""Moves of pivots, and the sets of corrections that a shop can combine."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from core.fix.converting import converted
from core.kinematics.linkage import Linkage
from core.kinematics.pivots import DRAG_LINK_ENDS, GUIDE_PIVOTS, PIVOTS, pivots_raised
from core.kinematics.raising import raised
from core.kinematics.vectors import Array
from core.profiles.conversions import Change, Conversion
from core.profiles.corrections import PivotStep

MOST_CORRECTIONS = 3
"""Largest number of corrections in one set."""

ARMS = {"steering.arm": "arm", "steering.pitman_arm": "pitman_arm"}
"""Attribute of a linkage for each arm that can have another length, by the arm's reading."""


@dataclass(frozen=True)
class Move:
    """One correction with the chosen rise, or one conversion.

    Attributes
    ----------
    correction : Correction or Conversion
    rise : float
        mm, up positive; 0 for a conversion.
    """

    correction: Change
    rise: float = 0.0

    @property
    def steps(self) -> tuple[PivotStep, ...]:
        """Steps of the move, one for each pivot."""
        return self.correction.steps(self.rise)

    @property
    def amount(self) -> float:
        """Sum of the magnitudes of all rises, mm."""
        return sum(abs(step.rise) for step in self.steps)

    def raises(self, pivot: str) -> float:
        """Rise of one pivot, or of "ride_height", mm."""
        return sum(step.rise for step in self.steps if step.pivot == pivot)


@dataclass(frozen=True, eq=False)
class CorrectionSet:
    """One set of C corrections with M combinations of their rises.

    Attributes
    ----------
    corrections : tuple of Correction or Conversion
        A conversion stands first.
    rises : array (M, C), mm
        One row for each combination, one column for each correction.
    """

    corrections: tuple[Change, ...]
    rises: Array

    def moves(self, row: int) -> tuple[Move, ...]:
        """The moves of the combination in one row."""
        return tuple(
            Move(correction, float(rise))
            for correction, rise in zip(self.corrections, self.rises[row], strict=True)
        )


def correction_sets(
    corrections: Sequence[Change],
    most: int = MOST_CORRECTIONS,
    conversion: Conversion | None = None,
) -> Iterator[CorrectionSet]:
    """Sets of up to `most` changes that can be made together, smallest sets first.

    Each has every combination of the rises that are worth the work.

    Parameters
    ----------
    corrections : sequence of Correction
    most : int
    conversion : Conversion, optional
        Stands in every set, alone in the first one.
    """
    fixed = () if conversion is None else (conversion,)
    for count in range(1 - len(fixed), most + 1 - len(fixed)):
        for others in combinations(corrections, count):
            chosen = (*fixed, *others)
            if can_be_combined(chosen):
                grid = np.meshgrid(
                    *(correction.rises_tried for correction in chosen), indexing="ij"
                )
                yield CorrectionSet(chosen, np.stack([axis.ravel() for axis in grid], axis=-1))


def can_be_combined(changes: Sequence[Change]) -> bool:
    """True if no change excludes another one, and each has what it needs."""
    names = {change.name for change in changes}
    return all(names.issuperset(change.needs) for change in changes) and not any(
        excludes(first, second) for first, second in combinations(changes, 2)
    )


def excludes(first: Change, second: Change) -> bool:
    """True if two corrections cannot be combined, because either of them excludes the other."""
    return first.name in second.not_with or second.name in first.not_with


def pivots_of_changes(changes: Sequence[Change]) -> tuple[str, ...]:
    """Names of the pivots that some changes move, or "ride_height", each once."""
    return tuple(dict.fromkeys(step.pivot for change in changes for step in change.steps(0.0)))


def moved_pivots(corrections: Sequence[Change], has_track_bar: bool = True) -> tuple[str, ...]:
    """Names of the pivots that some corrections move, those of the links first."""
    pivots = {pivot for moved in pivots_of_changes(corrections) for pivot in pivots_raised(moved)}
    links = PIVOTS if has_track_bar else DRAG_LINK_ENDS
    guides = (pivot for of_guide in GUIDE_PIVOTS.values() for pivot in of_guide)
    return tuple(pivot for pivot in (*links, *guides) if pivot in pivots)


def with_moves(linkage: Linkage, moves: Sequence[Move]) -> Linkage:
    """The linkage after some moves; each link is adjusted to the new distance of its pivots."""
    corrections = [move.correction for move in moves]
    return with_corrections(linkage, corrections, np.array([move.rise for move in moves]))


def with_corrections(linkage: Linkage, corrections: Sequence[Change], rises: Array) -> Linkage:
    """The linkage after some corrections; each link is adjusted to the distance of its pivots.

    Parameters
    ----------
    linkage : Linkage
        Its leading axes broadcast with the leading axes of `rises`.
    corrections : sequence of C Correction or Conversion
    rises : array (..., C), mm
    """
    for column, correction in enumerate(corrections):
        rise = rises[..., column]
        if isinstance(correction, Conversion):
            linkage = converted(linkage, correction, rise)
        else:
            linkage = raised(linkage, correction.pivot, rise)
    return linkage
