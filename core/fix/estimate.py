"""Estimated probabilities of all combinations of a set, from a few drawn geometries.

A full draw of each of thousands of combinations would take minutes. The uncertainty changes the
curves of all combinations of one set almost alike. So a few hundred geometries are drawn for the
combination with the smallest excess. Their changes of the curves are added to the curves of every
other combination.
"""

import numpy as np

from core.fix.chances import with_model_error, with_setting, within_limits
from core.fix.combinations import Combinations
from core.fix.moves import with_corrections
from core.fix.ranking import Candidate
from core.kinematics.ball_path import effective_angle
from core.kinematics.linkage import Linkage
from core.profiles.limits import Limits
from core.verdict.curves import Curves

DRAWS = 300
"""Number of drawn geometries."""

HEAVES = 5
"""Number of heaves of the working travel that the estimate takes the peak over."""

PORTION = 128
"""Combinations estimated at a time; their arrays then stay in the processor's cache."""

FINALISTS = 6
"""Candidates of a set that go on to the full draw."""


def estimated_candidates(
    combinations: Combinations, drawn: Linkage, limits: Limits, place: int
) -> list[Candidate]:
    """The candidates of one set that could come first, best first.

    Parameters
    ----------
    combinations : Combinations
        The promising combinations of the set, smallest peak steer first.
    drawn : Linkage
        DRAWS geometries of the measured vehicle.
    limits : Limits
    place : int
        Place of the set among all sets.
    """
    correction_set, least = combinations.correction_set, combinations.least_excess
    corrections = correction_set.corrections
    about_least = with_setting(
        with_corrections(drawn, corrections, correction_set.rises[least]), corrections
    )
    effective_change = effective_angle(about_least) - combinations.effective[least]
    curve_change = Curves.of(about_least, limits).minus(combinations.curves.at_index(least))
    candidates: list[Candidate] = []
    for start in range(0, len(combinations.effective), PORTION):
        rows = np.arange(start, min(start + PORTION, len(combinations.effective)))
        effective = combinations.effective[rows, None] + effective_change
        curves = combinations.curves.at_index(rows[:, None]).plus(curve_change)
        within = within_limits(effective, with_model_error(curves.peaks(HEAVES)), limits)
        p_true = within.all(axis=0).mean(axis=-1)
        candidates += [
            Candidate(
                correction_set.moves(row),
                probability,
                float(combinations.excess[row]),
                float(combinations.peak_step[row]),
                float(combinations.flatness[row]),
                place,
            )
            for row, probability in zip(rows.tolist(), p_true.tolist(), strict=True)
        ]
        candidates = sorted(candidates, key=lambda candidate: candidate.order)[:FINALISTS]
        if len(candidates) == FINALISTS and candidates[-1].is_sure:
            break  # later combinations steer more or rise further, and none can be likelier
    return candidates
