"""The combinations of a set of corrections, computed as if every reading were exact."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.fix.moves import CorrectionSet, with_corrections
from core.kinematics.ball_path import effective_angle
from core.kinematics.linkage import Linkage
from core.kinematics.vectors import Array
from core.profiles.limits import Limits
from core.verdict.curves import Curves
from core.verdict.rules import slopes

PORTION = 16_384
"""Combinations computed at a time; larger arrays would be slower for want of fast memory."""

PEAK_STEPS = 10
"""Steps of the peak steer within its limit; peaks of one step count as equal."""


@dataclass(frozen=True, eq=False)
class Combinations:
    """M combinations of one set of corrections, with the values that they lead to.

    Attributes
    ----------
    correction_set : CorrectionSet
        Its rises, array (M, C), have one row for each combination.
    effective : array (M,), rad
    curves : Curves
        Over the working travel, (M, ...).
    excess : array (M,)
        Largest of the three deciding rules as a share of its limit; infinite where a link binds.
    peak_step : array (M,)
        Peak steer in whole tenths of its limit.
    flatness : array (M,), rad
        Sum of the magnitudes of both links' slopes.
    """

    correction_set: CorrectionSet
    effective: Array
    curves: Curves
    excess: Array
    peak_step: Array
    flatness: Array

    @property
    def least_excess(self) -> int:
        """Row of the combination with the smallest excess."""
        return int(np.argmin(self.excess))

    def at_rows(self, rows: NDArray[np.intp]) -> "Combinations":
        """The combinations of some rows, in their order."""
        return Combinations(
            CorrectionSet(self.correction_set.corrections, self.correction_set.rises[rows]),
            self.effective[rows],
            self.curves.at_index(rows),
            self.excess[rows],
            self.peak_step[rows],
            self.flatness[rows],
        )

    def promising(self) -> "Combinations":
        """Combinations within their limits, smallest peak steer first; else the least excess.

        Among equal peaks, in tenths of the limit, the smallest sum of rises comes first.
        """
        within = np.flatnonzero(self.excess <= 1)
        if not within.size:
            return self.at_rows(np.array([self.least_excess]))
        sums = np.abs(self.correction_set.rises[within]).sum(axis=-1).round(6)
        order = np.lexsort((self.flatness[within], sums, self.peak_step[within]))
        return self.at_rows(within[order])


def promising_combinations(
    linkage: Linkage,
    limits: Limits,
    correction_set: CorrectionSet,
    progress: Callable[[int], None],
) -> Combinations:
    """The promising combinations of a set, computed one portion at a time.

    Parameters
    ----------
    linkage : Linkage
        The measured linkage, without leading axes.
    limits : Limits
    correction_set : CorrectionSet
    progress : callable
        Called after each portion with its number of combinations.
    """
    corrections = correction_set.corrections
    portions = []
    for start in range(0, len(correction_set.rises), PORTION):
        portion = CorrectionSet(corrections, correction_set.rises[start : start + PORTION])
        portions.append(_computed(linkage, limits, portion).promising())
        progress(len(portion.rises))
    if len(portions) == 1:
        return portions[0]
    rises = np.concatenate([portion.correction_set.rises for portion in portions])
    return Combinations(
        CorrectionSet(corrections, rises),
        np.concatenate([portion.effective for portion in portions]),
        Curves.stacked([portion.curves for portion in portions]),
        np.concatenate([portion.excess for portion in portions]),
        np.concatenate([portion.peak_step for portion in portions]),
        np.concatenate([portion.flatness for portion in portions]),
    ).promising()


def _computed(linkage: Linkage, limits: Limits, correction_set: CorrectionSet) -> Combinations:
    """All combinations of a set."""
    moved = with_corrections(linkage, correction_set.corrections, correction_set.rises)
    effective, curves = effective_angle(moved), Curves.of(moved, limits)
    steer, _ = curves.peaks()
    excess = excess_of(effective, curves, limits)
    return Combinations(
        correction_set,
        effective,
        curves,
        excess,
        np.where(np.isnan(steer), np.inf, np.round(steer / limits.steer * PEAK_STEPS)),
        np.broadcast_to(np.nansum(np.abs(slopes(moved)), axis=-1).round(6), excess.shape),
    )


def excess_of(effective: Array, curves: Curves, limits: Limits) -> Array:
    """Largest of the three deciding rules as a share of its limit; infinite where a link binds."""
    steer, toe = curves.peaks()
    excess = np.max(
        [np.abs(effective) / limits.parallel, steer / limits.steer, toe / limits.toe_change], axis=0
    )
    return np.where(np.isnan(excess), np.inf, excess)


def excess_over_travel(linkage: Linkage, limits: Limits) -> Array:
    """Excess of a linkage over its working travel, array (...)."""
    return excess_of(effective_angle(linkage), Curves.of(linkage, limits), limits)
