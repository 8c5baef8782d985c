"""Moves of pivots, and the sets of corrections with all combinations of their rises."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from core.kinematics.linkage import Array, Linkage
from core.kinematics.pivots import PIVOTS, RIDE_HEIGHT
from core.profiles.corrections import Correction

MOST_CORRECTIONS = 3

ARMS = {"steering.arm": "arm", "steering.pitman_arm": "pitman_arm"}
"""Attributes of a linkage for arms that can have another length, by name of the reading."""


@dataclass(frozen=True)
class Move:
    """One correction carried out: a pivot raised by `rise` mm."""

    correction: Correction
    rise: float


@dataclass(frozen=True, eq=False)
class CorrectionSet:
    """One set of corrections with every combination of their rises.

    Attributes
    ----------
    corrections : tuple of Correction
    rises : array (M, C)
        One column a correction, mm.
    """

    corrections: tuple[Correction, ...]
    rises: Array

    def moves(self, row: int) -> tuple[Move, ...]:
        """The moves of one combination."""
        return tuple(
            Move(correction, float(rise))
            for correction, rise in zip(self.corrections, self.rises[row], strict=True)
        )


def correction_sets(
    corrections: Sequence[Correction], most: int = MOST_CORRECTIONS
) -> Iterator[CorrectionSet]:
    """Every set of at most `most` corrections without exclusions, smallest sets first."""
    for count in range(1, most + 1):
        for chosen in combinations(corrections, count):
            if not any(excludes(one, other) for one, other in combinations(chosen, 2)):
                grid = np.meshgrid(*(one.rises for one in chosen), indexing="ij")
                yield CorrectionSet(chosen, np.stack([axis.ravel() for axis in grid], axis=-1))


def excludes(one: Correction, other: Correction) -> bool:
    """True if two corrections exclude each other; either of them may say so."""
    return one.name in other.not_with or other.name in one.not_with


def moved_pivots(corrections: Sequence[Correction]) -> tuple[str, ...]:
    """Pivots that corrections move, in the order of PIVOTS."""
    named = {correction.pivot for correction in corrections}
    if RIDE_HEIGHT in named:
        named |= {"track_bar.frame", "drag_link.frame"}
    return tuple(pivot for pivot in PIVOTS if pivot in named)


def with_moves(linkage: Linkage, moves: Sequence[Move]) -> Linkage:
    """The linkage with moves made and the bars set to the new distances."""
    corrections = [move.correction for move in moves]
    return with_corrections(linkage, corrections, np.array([move.rise for move in moves]))


def with_corrections(linkage: Linkage, corrections: Sequence[Correction], rises: Array) -> Linkage:
    """The linkage with corrections made and the bars set to the new distances.

    Parameters
    ----------
    linkage : Linkage
        Its leading axes broadcast with those of `rises`.
    corrections : sequence of Correction, C of them
    rises : array (..., C)
        mm
    """
    for column, correction in enumerate(corrections):
        linkage = linkage.raised(correction.pivot, rises[..., column])
    return linkage
