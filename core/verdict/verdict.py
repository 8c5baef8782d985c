"""The verdict: all results of one session, with their uncertainty."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

import numpy as np

from core.adjustment.explanations import leading_explanations
from core.adjustment.least_squares import Adjustment
from core.adjustment.outliers import SuspectGroup, suspect_groups
from core.adjustment.slips import Slip, slips_of
from core.kinematics.linkage import Array, Linkage
from core.kinematics.motion import motion_at
from core.kinematics.road_events import Course, drive
from core.kinematics.roll_centre import roll_centre_height
from core.kinematics.series import Derivatives, derivatives
from core.kinematics.travel_limits import travel_limits
from core.readings.reading import Reading
from core.sessions.session import Session
from core.statistics.conformity import Conformity, Ruling, combined_decision
from core.uncertainty.budget import Share, budget
from core.uncertainty.measured_linkage import adjusted, has_centre_plane, measured_linkage
from core.uncertainty.next_reading import Advice, ContestedRuling, advice
from core.uncertainty.propagation import MeasuredLinkage
from core.verdict.peak import Peak, peaks_of
from core.verdict.readings_decide import decided_by_explanations
from core.verdict.rules import Rules, lengths, parallel_angle, rules_of
from core.verdict.sweep import Articulation, Split, Sweep, articulation, splits, sweep


class Overall(StrEnum):
    """The verdict on a vehicle."""

    STEERS_TRUE = "steers true"
    BUMP_STEER = "bump steer"
    TOO_CLOSE = "too close to call"
    HELD_BACK = "held back"


RuleKey = Literal[
    "parallel",
    "peak_steer",
    "peak_toe_change",
    "track_bar_slope",
    "drag_link_slope",
    "length_ratio",
]
"""A rule of the verdict, by the name of its value in a comparison."""

DRAWS = 20_000
"""Draws of the Monte Carlo (JCGM 101:2008). A probability of 0.95 is then good to 0.002."""

TRIAL_DRAWS = 4_000
"""Draws of the trial of other readings: those of an advice, or without a mistake."""

READINGS = "readings"
"""Reason that holds a verdict back: the readings do not close, and what is wrong matters."""


@dataclass(frozen=True, eq=False)
class Verdict:
    """Results of a session; mm and rad.

    Attributes
    ----------
    overall : Overall
    geometry : Overall
        Verdict on the geometry of the adjusted pivots, whatever holds the verdict back.
    held_back_by : tuple of str
        Failures of the walk-round and the stance, and READINGS where readings that do not close
        decide nothing.
    session : Session
    adjustment : Adjustment
    suspect_groups : tuple of SuspectGroup
    slips : tuple of Slip
        Slips that explain why the readings do not close, the best first; () where they close.
    measured : MeasuredLinkage
    lengths : array (2,)
        Centre-to-centre lengths of track bar and drag link, mm.
    rules : Rules
    steer, toe : Peak
    derivatives : Derivatives
    u_gradient : float
        Standard uncertainty of the steer gradient, rad/mm.
    sweep : Sweep
    articulation : Articulation or None
        None without both wheel offsets, which give the middle about which the axle rolls.
    splits : (Split, Split)
        Full working droop, full working bump.
    courses : tuple of Course
        One for each event.
    roll_centre_height : float or None
        Above the floor, mm; None without both wheel offsets.
    travel_limits : (float or None, float or None)
        Heave at which a link binds in droop and in bump, mm; None where none binds.
    budget : tuple of Share
        Shares in the variance of the parallel angle.
    advice : Advice or None
        Readings to take again; None unless the geometry is too close to call.
    """

    overall: Overall
    geometry: Overall
    held_back_by: tuple[str, ...]
    session: Session
    adjustment: Adjustment
    suspect_groups: tuple[SuspectGroup, ...]
    slips: tuple[Slip, ...]
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
        Number of draws of the Monte Carlo for the peaks; 0 for linear propagation alone.

    Raises
    ------
    core.adjustment.least_squares.MissingReading
        The height or the offset of a pivot was not taken.
    core.adjustment.least_squares.NoSolution
        The readings do not settle on one set of pivots.
    """
    adjustment = adjusted(session)
    measured = measured_linkage(session, adjustment)
    linkage, limits = measured.linkage, session.limits
    rules = rules_of(measured, limits)
    steer, toe = peaks_of(measured, limits, draws)
    geometry = overall(rules.parallel.verdict, steer.ruling.verdict, toe.ruling.verdict)
    coordinates = 3 * len(adjustment.pivots)
    gradient_of_parallel = measured.gradient(parallel_angle)[:coordinates]
    gradient_of_steer = measured.gradient(lambda stepped: derivatives(stepped).gradient)
    centred = has_centre_plane(session)
    advised = None
    if geometry == Overall.TOO_CLOSE:
        contested = _contested_rulings(adjustment, measured, rules, (steer, toe))
        trial_draws = min(draws, TRIAL_DRAWS)
        advised = advice(adjustment, contested, lambda tried: _settles(session, tried, trial_draws))
    groups = suspect_groups(adjustment)
    slips: tuple[Slip, ...] = ()
    decided: Overall | None = geometry
    if not adjustment.closes:
        slips = slips_of(
            session.readings, session.instruments, adjustment.pivots, adjustment.priors
        )
        trial_draws = min(draws, TRIAL_DRAWS)
        decided = decided_by_explanations(
            leading_explanations(session.readings, groups, slips),
            lambda readings: geometry_by(session, readings, trial_draws),
        )
    held_back_by = session.held_back_by if decided else (*session.held_back_by, READINGS)
    return Verdict(
        overall=decided if decided and not held_back_by else Overall.HELD_BACK,
        geometry=geometry,
        held_back_by=held_back_by,
        session=session,
        adjustment=adjustment,
        suspect_groups=groups,
        slips=slips,
        measured=measured,
        lengths=lengths(linkage),
        rules=rules,
        steer=steer,
        toe=toe,
        derivatives=derivatives(linkage),
        u_gradient=float(measured.standard_uncertainty(gradient_of_steer)),
        sweep=sweep(measured, session.droop, session.bump),
        articulation=articulation(linkage, session.droop, session.bump) if centred else None,
        splits=splits(linkage, limits),
        courses=tuple(drive(event, linkage, session.wheelbase) for event in session.events),
        roll_centre_height=float(roll_centre_height(linkage)) if centred else None,
        travel_limits=travel_limits(linkage, session.droop, session.bump),
        budget=budget(adjustment, gradient_of_parallel),
        advice=advised,
    )


def overall(parallel: Conformity, steer: Conformity, toe: Conformity) -> Overall:
    """Overall verdict by the three deciding rules; flat and length only advise."""
    return overall_at(combined_decision((parallel, steer, toe)))


def overall_at(decision: Conformity) -> Overall:
    """Overall verdict at a decision on the deciding rules together."""
    if decision == Conformity.OUT:
        return Overall.BUMP_STEER
    return Overall.STEERS_TRUE if decision == Conformity.WITHIN else Overall.TOO_CLOSE


def _contested_rulings(
    adjustment: Adjustment, measured: MeasuredLinkage, rules: Rules, peaks: tuple[Peak, Peak]
) -> list[ContestedRuling]:
    """Deciding rulings that are too close to call, with their gradients."""
    heaves = np.array([peak.at_heave for peak in peaks])

    def deciding_values(linkage: Linkage) -> Array:
        """Parallel angle, steer and toe-in change, the last two at their peaks."""
        motion = motion_at(linkage.with_heave_axis(), heaves)
        return np.stack(
            [parallel_angle(linkage), motion.steer[..., 0], motion.toe_in_change[..., 1]], axis=-1
        )

    gradient = measured.gradient(deciding_values)[: 3 * len(adjustment.pivots)]
    # The value of a peak is a magnitude: where the steer is negative it grows as the steer falls.
    at_peaks = motion_at(measured.linkage, heaves)
    gradient[:, 1] *= np.sign(at_peaks.steer[0])
    gradient[:, 2] *= np.sign(at_peaks.toe_in_change[1])
    rulings = (rules.parallel, *(peak.ruling for peak in peaks))
    return [
        ContestedRuling(ruling, gradient[:, i])
        for i, ruling in enumerate(rulings)
        if ruling.verdict == Conformity.TOO_CLOSE
    ]


def rulings_of(verdict: Verdict) -> dict[RuleKey, Ruling]:
    """The ruling on every rule of a verdict, in rad; the ratio of lengths is a plain number."""
    rules = verdict.rules
    return {
        "parallel": rules.parallel,
        "peak_steer": verdict.steer.ruling,
        "peak_toe_change": verdict.toe.ruling,
        "track_bar_slope": rules.flat_track_bar,
        "drag_link_slope": rules.flat_drag_link,
        "length_ratio": rules.length,
    }


def _settles(session: Session, advised: Advice, draws: int) -> bool:
    """True if the verdict is settled once the readings are repeated as advised.

    The repeats equal the readings taken so far, and the pivots are adjusted afresh with them.
    """
    readings = tuple(
        reading.repeated(advised.repeats) if reading.name in advised.readings else reading
        for reading in session.readings
    )
    return geometry_by(session, readings, draws) != Overall.TOO_CLOSE


def geometry_by(session: Session, readings: tuple[Reading, ...], draws: int) -> Overall:
    """Verdict on the geometry of a session by other readings of its vehicle."""
    measured = measured_linkage(session, adjusted(session, readings))
    steer, toe = peaks_of(measured, session.limits, draws)
    parallel = rules_of(measured, session.limits).parallel
    return overall(parallel.verdict, steer.ruling.verdict, toe.ruling.verdict)
