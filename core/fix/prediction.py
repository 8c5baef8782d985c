"""Prediction of a moved linkage: the rules, the peaks and the side effects."""

from dataclasses import dataclass
from math import radians

import numpy as np

from core.fix.chances import Chances
from core.fix.combinations import excess_over_travel
from core.kinematics.ball_path import BallPath, ball_path, effective_angle, out_of_square
from core.kinematics.clearance import Clearance, clearance
from core.kinematics.linkage import Linkage
from core.kinematics.motion import Motion, motion_at
from core.kinematics.roll_centre import roll_centre_height
from core.kinematics.series import roll_steer
from core.kinematics.travel_limits import travel_limits
from core.kinematics.vectors import Array
from core.statistics.conformity import decide
from core.verdict.curves import working_heaves
from core.verdict.rules import (
    compares_links,
    length_ratio,
    lengths,
    parallel_angle,
    slopes,
)
from core.verdict.sweep import Split, splits
from core.verdict.verdict import Overall, Value, Verdict, overall_at

NO_WORSE: dict[str, float] = {
    **dict.fromkeys(("parallel", "track_bar", "drag_link", "steer", "toe"), radians(0.01)),
    "length": 0.005,
}
"""Largest increase of the badness of each rule (rad, or a ratio) that counts as no worse."""


@dataclass(frozen=True)
class Prediction:
    """Results of a moved linkage, some beside the results of the measured one; mm and rad.

    Attributes
    ----------
    linkage : Linkage
    chances : Chances
    excess, excess_before : float
        Largest of the three deciding rules as a share of its limit, moved and measured; infinite
        where a link binds.
    effective : float
        Angle of the drag link out of square to its ball's path, rad.
    rise_to_square : Value
        Rise of the drag link's frame end that sets the link square to that path, mm, with the doubt
        of the measured vehicle.
    ball_path : BallPath
    parallel : float or None
        Slope of the drag link less slope of the track bar, rad; None where they cannot be compared.
    slopes : (float, float)
        Track bar, drag link; rad; nan without a track bar.
    length_ratio : float
        nan without a track bar.
    peak_steer, peak_toe_change : float
    castor, castor_before : float
        rad
    roll_steer, roll_steer_before : float
        Derivative of the mean steer by roll, rad/rad.
    clearance : Clearance or None
        Between both links over the whole travel; None without a track bar.
    motion : Motion
        At the heaves of the verdict's sweep, from full droop to full bump.
    splits : (Split, Split)
        Causes of the steer at the ends of the working travel, droop first.
    lengths, length_changes : (float, float)
        Centre-to-centre lengths to set, and their increase, track bar and drag link; mm.
    roll_centre_rise : float or None
        mm; None without both wheel offsets.
    walk, walk_before : (float, float)
        Sideways shift of the axle at full droop and full bump, moved and measured; mm, to the
        left positive.
    travel : (float, float)
        Bump and droop travel that are left, mm.
    travel_limits : (float or None, float or None)
        Heave at which a link binds in droop and in bump, mm; None where none binds.
    worse : tuple of str
        Rules that get worse: "parallel" (the effective angle), "track_bar" and "drag_link"
        (less flat), "length", "steer", "toe".
    """

    linkage: Linkage
    chances: Chances
    excess: float
    excess_before: float
    effective: float
    rise_to_square: Value
    ball_path: BallPath
    parallel: float | None
    slopes: tuple[float, float]
    length_ratio: float
    peak_steer: float
    peak_toe_change: float
    castor: float
    castor_before: float
    roll_steer: float
    roll_steer_before: float
    clearance: Clearance | None
    motion: Motion
    splits: tuple[Split, Split]
    lengths: tuple[float, float]
    length_changes: tuple[float, float]
    roll_centre_rise: float | None
    walk: tuple[float, float]
    walk_before: tuple[float, float]
    travel: tuple[float, float]
    travel_limits: tuple[float | None, float | None]
    worse: tuple[str, ...]

    @property
    def p_true(self) -> float:
        """Probability that all three deciding rules are within their limits."""
        return self.chances.together

    @property
    def overall(self) -> Overall:
        """Verdict at the probability that all deciding rules are within their limits."""
        return overall_at(decide(self.p_true))


def prediction_of(
    verdict: Verdict, linkage: Linkage, chances: Chances, travel: tuple[float, float]
) -> Prediction:
    """Prediction of a moved linkage.

    Parameters
    ----------
    verdict : Verdict
        The verdict on the measured linkage.
    linkage : Linkage
        The moved linkage, without leading axes.
    chances : Chances
        Probabilities of the moved linkage.
    travel : (float, float)
        Bump and droop travel that are left, mm.
    """
    session, measured = verdict.session, verdict.measured.linkage
    heaves = working_heaves(session.limits)
    working, full = motion_at(linkage, heaves), motion_at(linkage, verdict.sweep.heave)
    lengths_to_set, square = lengths(linkage), out_of_square(linkage)
    height = roll_centre_height(linkage)
    rise = None
    if verdict.roll_centre_height is not None and height is not None:
        rise = float(height) - verdict.roll_centre_height
    return Prediction(
        linkage=linkage,
        chances=chances,
        excess=float(excess_over_travel(linkage, session.limits)),
        excess_before=float(excess_over_travel(measured, session.limits)),
        effective=float(square.angle),
        rise_to_square=Value(float(square.rise), verdict.rise_to_square.u),
        ball_path=ball_path(linkage),
        parallel=float(parallel_angle(linkage)) if compares_links(linkage) else None,
        slopes=_pair(slopes(linkage)),
        length_ratio=float(length_ratio(linkage)),
        peak_steer=_peak(working.steer),
        peak_toe_change=_peak(working.toe_in_change),
        castor=float(linkage.castor),
        castor_before=float(measured.castor),
        roll_steer=float(roll_steer(linkage)),
        roll_steer_before=verdict.roll_steer.value,
        clearance=clearance(linkage, verdict.sweep.heave),
        motion=full,
        splits=splits(linkage, session.limits),
        lengths=_pair(lengths_to_set),
        length_changes=_pair(lengths_to_set - lengths(measured)),
        roll_centre_rise=rise,
        walk=_pair(full.axle_shift[[0, -1]]),
        walk_before=_pair(verdict.sweep.axle_shift[[0, -1]]),
        travel=travel,
        travel_limits=travel_limits(linkage, travel[1], travel[0]),
        worse=_worse(measured, linkage, heaves),
    )


def _worse(measured: Linkage, moved: Linkage, heaves: Array) -> tuple[str, ...]:
    """Names of the rules that get worse by the moves."""
    before, after = _badness(measured, heaves), _badness(moved, heaves)
    # A peak is nan where a link binds. No comparison with nan is true, so it counts as worse.
    return tuple(
        name
        for name, value in before.items()
        if not np.isnan(value) and not after[name] <= value + NO_WORSE[name]
    )


def _badness(linkage: Linkage, heaves: Array) -> dict[str, float]:
    """Badness of each rule by name: a magnitude in rad, or the negative length ratio."""
    motion = motion_at(linkage, heaves)
    track_bar, drag_link = np.abs(slopes(linkage)).tolist()
    return {
        "parallel": float(np.abs(effective_angle(linkage))),
        "track_bar": track_bar,
        "drag_link": drag_link,
        "length": -float(length_ratio(linkage)),
        "steer": _peak(motion.steer),
        "toe": _peak(motion.toe_in_change),
    }


def _peak(curve: Array) -> float:
    """Largest magnitude of a curve, nan where a link binds."""
    return float(np.abs(curve).max())


def _pair(values: Array) -> tuple[float, float]:
    """Two floats from an array (2,)."""
    first, second = values.tolist()
    return first, second
