"""Moves of pivots, and the sets of corrections that a shop can combine."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from core.kinematics.linkage import Linkage
from core.kinematics.pivots import DRAG_LINK_ENDS, GUIDE_PIVOTS, PIVOTS, pivots_raised
from core.kinematics.raising import raised
from core.kinematics.vectors import Array
from core.profiles.corrections import Correction

MOST_CORRECTIONS = 3
"""Largest number of corrections in one set."""

ARMS = {"steering.arm": "arm", "steering.pitman_arm": "pitman_arm"}
"""Attribute of a linkage for each arm that can have another length, by the arm's reading."""


@dataclass(frozen=True)
class Move:
    """One correction with the chosen rise.

    Attributes
    ----------
    correction : Correction
    rise : float
        mm, up positive.
    """

    correction: Correction
    rise: float


@dataclass(frozen=True, eq=False)
class CorrectionSet:
    """One set of C corrections with M combinations of their rises.

    Attributes
    ----------
    corrections : tuple of Correction
    rises : array (M, C), mm
        One row for each combination, one column for each correction.
    """

    corrections: tuple[Correction, ...]
    rises: Array

    def moves(self, row: int) -> tuple[Move, ...]:
        """The moves of the combination in one row."""
        return tuple(
            Move(correction, float(rise))
            for correction, rise in zip(self.corrections, self.rises[row], strict=True)
        )


def correction_sets(
    corrections: Sequence[Correction], most: int = MOST_CORRECTIONS
) -> Iterator[CorrectionSet]:
    """Sets of up to `most` corrections that do not exclude each other, smallest sets first.

    Each has every combination of the rises that are worth the work.
    """
    for count in range(1, most + 1):
        for chosen in combinations(corrections, count):
            if not any(excludes(first, second) for first, second in combinations(chosen, 2)):
                grid = np.meshgrid(
                    *(correction.rises_tried for correction in chosen), indexing="ij"
                )
                yield CorrectionSet(chosen, np.stack([axis.ravel() for axis in grid], axis=-1))


def excludes(first: Correction, second: Correction) -> bool:
    """True if two corrections cannot be combined, because either of them excludes the other."""
    return first.name in second.not_with or second.name in first.not_with


def moved_pivots(corrections: Sequence[Correction], has_track_bar: bool = True) -> tuple[str, ...]:
    """Names of the pivots that some corrections move, those of the links first."""
    pivots = {pivot for correction in corrections for pivot in pivots_raised(correction.pivot)}
    links = PIVOTS if has_track_bar else DRAG_LINK_ENDS
    guides = (pivot for of_guide in GUIDE_PIVOTS.values() for pivot in of_guide)
    return tuple(pivot for pivot in (*links, *guides) if pivot in pivots)


def with_moves(linkage: Linkage, moves: Sequence[Move]) -> Linkage:
    """The linkage after some moves; each link is adjusted to the new distance of its pivots."""
    corrections = [move.correction for move in moves]
    return with_corrections(linkage, corrections, np.array([move.rise for move in moves]))


def with_corrections(linkage: Linkage, corrections: Sequence[Correction], rises: Array) -> Linkage:
    """The linkage after some corrections; each link is adjusted to the distance of its pivots.

    Parameters
    ----------
    linkage : Linkage
        Its leading axes broadcast with the leading axes of `rises`.
    corrections : sequence of C Correction
    rises : array (..., C), mm
    """
    for column, correction in enumerate(corrections):
        linkage = raised(linkage, correction.pivot, rises[..., column])
    return linkage
