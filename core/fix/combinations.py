"""All combinations of a set of corrections, each computed as if every reading were exact."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.fix.moves import CorrectionSet, with_corrections
from core.kinematics.linkage import Array, Linkage
from core.profiles.limits import Limits
from core.verdict.curves import Curves
from core.verdict.rules import parallel_angle, slopes

PORTION = 16_384
"""Combinations computed at a time; the arrays of more would not fit the fast memory."""


@dataclass(frozen=True, eq=False)
class Combinations:
    """Combinations of one set of corrections, with their results.

    Attributes
    ----------
    choices : Choices
        Rises (M, C).
    parallel : array (M,), rad
    curves : Curves
        Over the working travel, (M, ...).
    excess : array (M,)
        Largest of the three deciding rules as a share of its limit; infinite where a link binds.
    flatness : array (M,)
        Sum of both links' slopes, rad.
    """

    choices: CorrectionSet
    parallel: Array
    curves: Curves
    excess: Array
    flatness: Array

    @property
    def nearest(self) -> int:
        """Row of the smallest excess."""
        return int(np.argmin(self.excess))

    def of(self, rows: NDArray[np.intp]) -> "Combinations":
        """The combinations of some rows."""
        return Combinations(
            CorrectionSet(self.choices.corrections, self.choices.rises[rows]),
            self.parallel[rows],
            self.curves.at_index(rows),
            self.excess[rows],
            self.flatness[rows],
        )

    def worth_a_look(self) -> "Combinations":
        """The combinations within their limits, smallest sum of rises first; else the nearest."""
        within = np.flatnonzero(self.excess <= 1)
        if not within.size:
            return self.of(np.array([self.nearest]))
        sums = np.abs(self.choices.rises[within]).sum(axis=-1).round(6)
        return self.of(within[np.lexsort((self.flatness[within], sums))])


def contenders(
    linkage: Linkage, limits: Limits, choices: CorrectionSet, tick: Callable[[int], None]
) -> Combinations:
    """The combinations of a set that could become a plan, computed in portions.

    Parameters
    ----------
    linkage : Linkage
        The measured linkage.
    limits : Limits
    choices : Choices
    tick : callable
        Called with the number of combinations that were just worked through.
    """
    found = []
    for start in range(0, len(choices.rises), PORTION):
        portion = CorrectionSet(choices.corrections, choices.rises[start : start + PORTION])
        found.append(_worked(linkage, limits, portion).worth_a_look())
        tick(len(portion.rises))
    if len(found) == 1:
        return found[0]
    return Combinations(
        CorrectionSet(choices.corrections, np.concatenate([one.choices.rises for one in found])),
        np.concatenate([one.parallel for one in found]),
        Curves.stacked([one.curves for one in found]),
        np.concatenate([one.excess for one in found]),
        np.concatenate([one.flatness for one in found]),
    ).worth_a_look()


def _worked(linkage: Linkage, limits: Limits, choices: CorrectionSet) -> Combinations:
    there = with_corrections(linkage, choices.corrections, choices.rises)
    parallel, curves = parallel_angle(there), Curves.of(there, limits)
    steer, toe = curves.peaks()
    excess = np.max(
        [np.abs(parallel) / limits.parallel, steer / limits.steer, toe / limits.toe_change], axis=0
    )
    return Combinations(
        choices,
        parallel,
        curves,
        np.where(np.isnan(excess), np.inf, excess),
        np.abs(slopes(there)).sum(axis=-1).round(6),
    )
