"""The verdict: everything that follows from one session, with its doubt."""

from dataclasses import dataclass

import numpy as np

from core.adjustment.least_squares import Adjustment, adjust
from core.adjustment.outliers import Suspicion, suspicions
from core.kinematics.linkage import Array, Linkage
from core.kinematics.motion import moved
from core.kinematics.road_events import Course, drive
from core.kinematics.roll_centre import roll_centre_height
from core.kinematics.series import Derivatives, derivatives
from core.kinematics.travel_limits import travel_limits
from core.sessions.session import Session
from core.statistics.conformity import OUT, TOO_CLOSE, WITHIN
from core.uncertainty.budget import Advice, Share, advice, budget
from core.uncertainty.measured_linkage import is_centred, measured
from core.uncertainty.propagation import Measured
from core.verdict.peak import Peak, rule_peaks
from core.verdict.rules import Rules, lengths, parallel_angle, rule, rule_parallel
from core.verdict.sweep import Articulation, Split, Sweep, articulation, splits, sweep

STEERS_TRUE, BUMP_STEER, HELD_BACK = "steers true", "bump steer", "held back"
OVERALL = (STEERS_TRUE, BUMP_STEER, TOO_CLOSE, HELD_BACK)

DRAWS = 20_000
"""Draws of the Monte Carlo (JCGM 101:2008); the probability of 0.95 is then good to 0.002."""

TRIED = 4_000
"""Draws with which an advice is tried out."""


@dataclass(frozen=True, eq=False, repr=False)
class Verdict:
    """What a session says about its vehicle; mm and rad.

    Attributes
    ----------
    overall : "steers true", "bump steer", "too close to call" or "held back"
    geometry : str
        The same, whatever the walk-round and the stance say.
    session : Session
    adjustment : Adjustment
    suspicions : tuple of Suspicion
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
        None without wheel offsets: the middle the axle rolls about is not known.
    splits : (Split, Split)
    courses : tuple of Course
    roll_centre_height : float or None
        None without wheel offsets.
    travel_limits : (float or None, float or None)
        Heave at which a link binds before droop, before bump ends.
    budget : tuple of Share
        Shares in the variance of the parallel angle.
    advice : Advice or None
        What would settle the first deciding rule that is too close to call.
    """

    overall: str
    geometry: str
    session: Session
    adjustment: Adjustment
    suspicions: tuple[Suspicion, ...]
    measured: Measured
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
        Of the Monte Carlo for the peaks; 0 for linear propagation alone.

    Raises
    ------
    core.adjustment.least_squares.MissingReading, core.adjustment.least_squares.NoSolution
    """
    adjustment = adjust(session.readings, session.instruments, session.layout)
    subject = measured(session, adjustment)
    linkage, limits = subject.linkage, session.limits
    rules = rule(subject, limits)
    steer, toe = rule_peaks(subject, limits, draws)
    geometry = overall(rules.parallel.verdict, steer.ruling.verdict, toe.ruling.verdict)
    coordinates = 3 * len(adjustment.pivots)
    by_parallel = subject.gradient(parallel_angle)[:coordinates]
    centred = is_centred(session)
    return Verdict(
        overall=HELD_BACK if session.held_back_by else geometry,
        geometry=geometry,
        session=session,
        adjustment=adjustment,
        suspicions=suspicions(adjustment),
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
        if geometry == TOO_CLOSE
        else None,
    )


def overall(parallel: str, steer: str, toe: str) -> str:
    """Overall verdict of the three rules that decide; flat and equal length only advise."""
    deciding = (parallel, steer, toe)
    if OUT in deciding:
        return BUMP_STEER
    return STEERS_TRUE if deciding == (WITHIN,) * 3 else TOO_CLOSE


def _advice(
    session: Session,
    adjustment: Adjustment,
    subject: Measured,
    rules: Rules,
    peaks: tuple[Peak, Peak],
    draws: int,
) -> Advice:
    """What would settle the deciding rules that are too close to call."""
    heaves = np.array([peak.at_heave for peak in peaks])

    def deciding(linkage: Linkage) -> Array:
        motion = moved(linkage.spread(), heaves)
        return np.stack(
            [parallel_angle(linkage), motion.steer[..., 0], motion.toe_in_change[..., 1]], axis=-1
        )

    def holds(advised: Advice) -> bool:
        readings = [
            reading.again(advised.repeats) if reading.name in advised.readings else reading
            for reading in session.readings
        ]
        again = measured(session, adjust(readings, session.instruments, session.layout))
        steer, toe = rule_peaks(again, session.limits, draws)
        parallel = rule_parallel(again, session.limits)
        return overall(parallel.verdict, steer.ruling.verdict, toe.ruling.verdict) != TOO_CLOSE

    gradient = subject.gradient(deciding)[: 3 * len(adjustment.pivots)]
    # A peak is a magnitude: it grows as its steer does, or as that falls.
    at_peaks = moved(subject.linkage, heaves)
    gradient[:, 1] *= np.sign(at_peaks.steer[0])
    gradient[:, 2] *= np.sign(at_peaks.toe_in_change[1])
    rulings = (rules.parallel, *(peak.ruling for peak in peaks))
    contested = [
        (ruling, gradient[:, i]) for i, ruling in enumerate(rulings) if ruling.verdict == TOO_CLOSE
    ]
    return advice(adjustment, contested, holds)
