"""The verdict on one session: every result with its uncertainty."""

from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from core.adjustment.least_squares import Adjustment, adjust
from core.adjustment.outliers import SuspectGroup, suspect_groups
from core.kinematics.linkage import Array, Linkage
from core.kinematics.motion import motion_at
from core.kinematics.road_events import Course, drive
from core.kinematics.roll_centre import roll_centre_height
from core.kinematics.series import Derivatives, derivatives
from core.kinematics.travel_limits import travel_limits
from core.sessions.session import Session
from core.statistics.conformity import Conformity
from core.uncertainty.budget import Share, budget
from core.uncertainty.measured_linkage import has_centre_plane, measured_linkage
from core.uncertainty.next_reading import Advice, advice
from core.uncertainty.propagation import MeasuredLinkage
from core.verdict.peak import Peak, peaks_of
from core.verdict.rules import Rules, lengths, parallel_angle, parallel_ruling, rules_of
from core.verdict.sweep import Articulation, Split, Sweep, articulation, splits, sweep


class Overall(StrEnum):
    """The verdict on a vehicle."""

    STEERS_TRUE = "steers true"
    BUMP_STEER = "bump steer"
    TOO_CLOSE = "too close to call"
    HELD_BACK = "held back"


DRAWS = 20_000
"""Draws of the Monte Carlo (JCGM 101:2008); the probability of 0.95 is then good to 0.002."""

TRIED = 4_000
"""Draws of the trial of an advice."""


@dataclass(frozen=True, eq=False)
class Verdict:
    """All results of a session; mm and rad.

    Attributes
    ----------
    overall : Overall
    geometry : Overall
        Verdict of the geometry alone, without walk-round and stance.
    session : Session
    adjustment : Adjustment
    suspect_groups : tuple of Suspicion
    measured : Measured
    lengths : array (2,)
        Centre-to-centre, track bar and drag link.
    rules : Rules
    steer, toe : Peak
    derivatives : Derivatives
    u_gradient : float
        Standard uncertainty of the steer gradient, rad/mm.
    sweep : Sweep
    articulation : Articulation or None
        None without wheel offsets: the point that the axle rolls about is unknown.
    splits : (Split, Split)
    courses : tuple of Course
    roll_centre_height : float or None
        None without wheel offsets.
    travel_limits : (float or None, float or None)
        Heave at which a link binds before droop, before bump ends.
    budget : tuple of Share
        Shares in the variance of the parallel angle.
    advice : Advice or None
        Readings that would settle the rules that are too close to call.
    """

    overall: Overall
    geometry: Overall
    session: Session
    adjustment: Adjustment
    suspect_groups: tuple[SuspectGroup, ...]
    measured: MeasuredLinkage
    lengths: Array
    rules: Rules
    steer: Peak
    toe: Peak
    derivatives: Derivatives
    u_gradient: float
    sweep: Sweep
    articulation: Articulation | None
    splits: tuple[Split, Split]
    courses: tuple[Course, ...]
    roll_centre_height: float | None
    travel_limits: tuple[float | None, float | None]
    budget: tuple[Share, ...]
    advice: Advice | None


def evaluate(session: Session, draws: int = DRAWS) -> Verdict:
    """The verdict on a session.

    Parameters
    ----------
    session : Session
    draws : int
        Draws of the Monte Carlo for the peaks; 0 for linear propagation alone.

    Raises
    ------
    core.adjustment.least_squares.MissingReading, core.adjustment.least_squares.NoSolution
    """
    adjustment = adjust(session.readings, session.instruments, session.layout)
    subject = measured_linkage(session, adjustment)
    linkage, limits = subject.linkage, session.limits
    rules = rules_of(subject, limits)
    steer, toe = peaks_of(subject, limits, draws)
    geometry = overall(rules.parallel.verdict, steer.ruling.verdict, toe.ruling.verdict)
    coordinates = 3 * len(adjustment.pivots)
    by_parallel = subject.gradient(parallel_angle)[:coordinates]
    centred = has_centre_plane(session)
    return Verdict(
        overall=Overall.HELD_BACK if session.held_back_by else geometry,
        geometry=geometry,
        session=session,
        adjustment=adjustment,
        suspect_groups=suspect_groups(adjustment),
        measured=subject,
        lengths=lengths(linkage),
        rules=rules,
        steer=steer,
        toe=toe,
        derivatives=derivatives(linkage),
        u_gradient=float(subject.u(subject.gradient(lambda drawn: derivatives(drawn).gradient))),
        sweep=sweep(subject, session.droop, session.bump),
        articulation=articulation(linkage, session.droop, session.bump) if centred else None,
        splits=splits(linkage, limits),
        courses=tuple(drive(event, linkage, session.wheelbase) for event in session.events),
        roll_centre_height=float(roll_centre_height(linkage)) if centred else None,
        travel_limits=travel_limits(linkage, session.droop, session.bump),
        budget=budget(adjustment, by_parallel),
        advice=_advice(session, adjustment, subject, rules, (steer, toe), min(draws, TRIED))
        if geometry == Overall.TOO_CLOSE
        else None,
    )


def overall(parallel: Conformity, steer: Conformity, toe: Conformity) -> Overall:
    """Overall verdict from the three values that decide; flatness and length only advise."""
    deciding = (parallel, steer, toe)
    if Conformity.OUT in deciding:
        return Overall.BUMP_STEER
    are_within = deciding == (Conformity.WITHIN,) * 3
    return Overall.STEERS_TRUE if are_within else Overall.TOO_CLOSE


def _advice(
    session: Session,
    adjustment: Adjustment,
    subject: MeasuredLinkage,
    rules: Rules,
    peaks: tuple[Peak, Peak],
    draws: int,
) -> Advice:
    """Advice that would settle the deciding rules that are too close to call."""
    heaves = np.array([peak.at_heave for peak in peaks])

    def deciding(linkage: Linkage) -> Array:
        motion = motion_at(linkage.with_heave_axis(), heaves)
        return np.stack(
            [parallel_angle(linkage), motion.steer[..., 0], motion.toe_in_change[..., 1]], axis=-1
        )

    def holds(advised: Advice) -> bool:
        readings = [
            reading.repeated(advised.repeats) if reading.name in advised.readings else reading
            for reading in session.readings
        ]
        again = measured_linkage(session, adjust(readings, session.instruments, session.layout))
        steer, toe = peaks_of(again, session.limits, draws)
        parallel = parallel_ruling(again, session.limits)
        return (
            overall(parallel.verdict, steer.ruling.verdict, toe.ruling.verdict) != Overall.TOO_CLOSE
        )

    gradient = subject.gradient(deciding)[: 3 * len(adjustment.pivots)]
    # A peak is a magnitude: it grows as its steer does, or as that falls.
    at_peaks = motion_at(subject.linkage, heaves)
    gradient[:, 1] *= np.sign(at_peaks.steer[0])
    gradient[:, 2] *= np.sign(at_peaks.toe_in_change[1])
    rulings = (rules.parallel, *(peak.ruling for peak in peaks))
    contested = [
        (ruling, gradient[:, i])
        for i, ruling in enumerate(rulings)
        if ruling.verdict == Conformity.TOO_CLOSE
    ]
    return advice(adjustment, contested, holds)
