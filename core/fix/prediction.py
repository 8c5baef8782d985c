"""Prediction for moved pivots: the rules, the peaks, the side effects."""

from dataclasses import dataclass
from math import radians

import numpy as np

from core.fix.chances import Chances
from core.kinematics.linkage import Array, Linkage
from core.kinematics.motion import Motion, motion_at
from core.kinematics.roll_centre import roll_centre_height
from core.kinematics.travel_limits import travel_limits
from core.statistics.conformity import Conformity, decide
from core.verdict.curves import working_heaves
from core.verdict.rules import length_ratio, lengths, parallel_angle, slopes
from core.verdict.sweep import Split, splits
from core.verdict.verdict import Overall, Verdict

UNCHANGED: dict[str, float] = {
    **dict.fromkeys(("parallel", "track_bar", "drag_link", "steer", "toe"), radians(0.01)),
    "length": 0.005,
}
"""Differences up to which a rule counts as no worse; rad, and a ratio for the length."""


@dataclass(frozen=True, eq=False)
class Prediction:
    """A linkage with moved pivots, compared with the measured one; mm and rad.

    Attributes
    ----------
    linkage : Linkage
    chances : Chances
    slopes : (float, float)
        Track bar, drag link.
    length_ratio, peak_steer, peak_toe_change : float
    motion : Motion
        From full droop to full bump, at the heaves of the verdict's sweep.
    splits : (Split, Split)
        Causes of the steer at the ends of the working travel, droop first.
    lengths, length_changes : (float, float)
        Centre-to-centre lengths to set, and their change from now.
    roll_centre_rise : float or None
        None without wheel offsets.
    walk : (float, float)
        Sideways walk of the axle at full droop and full bump, to the left positive.
    walk_before : (float, float)
    travel_limits : (float or None, float or None)
        Heave at which a link would bind before droop, before bump ends.
    worse : tuple of str
        Rules that become worse: "parallel", "track_bar", "drag_link" (less flat), "length",
        "steer", "toe".
    """

    linkage: Linkage
    chances: Chances
    slopes: tuple[float, float]
    length_ratio: float
    peak_steer: float
    peak_toe_change: float
    motion: Motion
    splits: tuple[Split, Split]
    lengths: tuple[float, float]
    length_changes: tuple[float, float]
    roll_centre_rise: float | None
    walk: tuple[float, float]
    walk_before: tuple[float, float]
    travel_limits: tuple[float | None, float | None]
    worse: tuple[str, ...]

    @property
    def p_true(self) -> float:
        """Probability that parallel, steer and toe are all within their limits."""
        return self.chances.together

    @property
    def parallel(self) -> float:
        """Slope of the drag link less slope of the track bar, rad."""
        return self.slopes[1] - self.slopes[0]

    @property
    def overall(self) -> str:
        """Verdict at this probability."""
        decision = decide(self.p_true)
        if decision == Conformity.TOO_CLOSE:
            return Conformity.TOO_CLOSE
        return Overall.BUMP_STEER if decision == Conformity.OUT else Overall.STEERS_TRUE


def predict(verdict: Verdict, linkage: Linkage, chances: Chances) -> Prediction:
    """Prediction for a moved linkage (no leading axes) of a vehicle with a verdict."""
    session, now = verdict.session, verdict.measured.linkage
    heaves = working_heaves(session.limits)
    working, whole = motion_at(linkage, heaves), motion_at(linkage, verdict.sweep.heave)
    new_lengths = lengths(linkage)
    rise = None
    if verdict.roll_centre_height is not None:
        rise = float(roll_centre_height(linkage)) - verdict.roll_centre_height
    return Prediction(
        linkage=linkage,
        chances=chances,
        slopes=_pair(slopes(linkage)),
        length_ratio=float(length_ratio(linkage)),
        peak_steer=_peak(working.steer),
        peak_toe_change=_peak(working.toe_in_change),
        motion=whole,
        splits=splits(linkage, session.limits),
        lengths=_pair(new_lengths),
        length_changes=_pair(new_lengths - lengths(now)),
        roll_centre_rise=rise,
        walk=_pair(whole.axle_shift[[0, -1]]),
        walk_before=_pair(verdict.sweep.axle_shift[[0, -1]]),
        travel_limits=travel_limits(linkage, session.droop, session.bump),
        worse=_worse(now, linkage, heaves),
    )


def _worse(now: Linkage, then: Linkage, heaves: Array) -> tuple[str, ...]:
    found = []
    before, after = _badness(now, heaves), _badness(then, heaves)
    for name, bad in before.items():
        # Where a link binds after the move (nan) that is worse whatever it was before.
        if not after[name] <= bad + UNCHANGED[name]:
            found.append(name)
    return tuple(found)


def _badness(linkage: Linkage, heaves: Array) -> dict[str, float]:
    """Distance of each rule from its ideal; larger is worse."""
    motion = motion_at(linkage, heaves)
    track_bar, drag_link = np.abs(slopes(linkage)).tolist()
    return {
        "parallel": float(np.abs(parallel_angle(linkage))),
        "track_bar": track_bar,
        "drag_link": drag_link,
        "length": -float(length_ratio(linkage)),
        "steer": _peak(motion.steer),
        "toe": _peak(motion.toe_in_change),
    }


def _peak(curve: Array) -> float:
    return float(np.abs(curve).max())


def _pair(values: Array) -> tuple[float, float]:
    first, second = values.tolist()
    return first, second
