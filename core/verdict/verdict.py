"""The verdict: all results of one session, with their uncertainty."""

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Literal, NamedTuple

import numpy as np

from core.adjustment.explanations import leading_explanations
from core.adjustment.least_squares import Adjustment
from core.adjustment.outliers import SuspectGroup, suspect_groups
from core.adjustment.slips import Slip
from core.kinematics.ball_path import BallPath, ball_path, out_of_square
from core.kinematics.clearance import Clearance, clearance
from core.kinematics.linkage import Linkage
from core.kinematics.road_events import Course, drive
from core.kinematics.roll_centre import roll_centre_height
from core.kinematics.series import Derivatives, derivatives, roll_steer
from core.kinematics.travel_limits import travel_limits
from core.kinematics.vectors import Array
from core.readings.reading import Reading
from core.sessions.session import Session
from core.statistics.conformity import Conformity, Ruling, combined_decision
from core.uncertainty.budget import Share, budget
from core.uncertainty.measured_linkage import (
    adjusted,
    has_centre_plane,
    measured_linkage,
    slips_in,
)
from core.uncertainty.next_photograph import advice_with_photographs
from core.uncertainty.next_reading import Advice, ContestedRuling, advice, advice_on_skipped
from core.uncertainty.propagation import MeasuredLinkage
from core.verdict.direct_check import DecidedBy, DirectResult, direct_result
from core.verdict.peak import Peak, peaks_of
from core.verdict.readings_decide import decided_by_explanations
from core.verdict.rules import Rules, lengths, rules_of
from core.verdict.sweep import Articulation, Split, Sweep, articulation, splits, sweep


class Overall(StrEnum):
    """The verdict on a vehicle."""

    STEERS_TRUE = "steers true"
    BUMP_STEER = "bump steer"
    TOO_CLOSE = "too close to call"
    HELD_BACK = "held back"


RuleKey = Literal[
    "parallel",
    "effective",
    "peak_steer",
    "peak_toe_change",
    "track_bar_slope",
    "drag_link_slope",
    "length_ratio",
]
"""A rule of the verdict, by the name of its value in a comparison."""

DRAWS = 2_000
"""Draws of the Monte Carlo (JCGM 101:2008). A probability of 0.95 is then good to 0.005."""

READINGS = "readings"
"""Reason that holds a verdict back: the readings do not close, and what is wrong matters."""


class Value(NamedTuple):
    """A value with its standard uncertainty, in its unit."""

    value: float
    u: float


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
        The peak steer is the one that decides.
    direct : DirectResult or None
        Steer that was read while the axle was moved, beside the steer that the pivots say.
    derivatives : Derivatives
    u_gradient : float
        Standard uncertainty of the steer gradient, rad/mm.
    sweep : Sweep
    ball_path : BallPath
    rise_to_square : Value
        Rise of the drag link's frame end that sets the link square to its ball's path, mm.
    roll_steer : Value
        Derivative of the mean steer by roll at ride height, rad/rad.
    clearance : Clearance or None
        Between both links over the whole travel; None without a track bar.
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
        Shares in the variance of the effective angle.
    steer_budget : tuple of Share
        Shares in the variance of the peak steer.
    advice : Advice or None
        Readings to take again; None unless the geometry is too close to call by the pivots.
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
    direct: DirectResult | None
    derivatives: Derivatives
    u_gradient: float
    sweep: Sweep
    ball_path: BallPath
    rise_to_square: Value
    roll_steer: Value
    clearance: Clearance | None
    articulation: Articulation | None
    splits: tuple[Split, Split]
    courses: tuple[Course, ...]
    roll_centre_height: float | None
    travel_limits: tuple[float | None, float | None]
    budget: tuple[Share, ...]
    steer_budget: tuple[Share, ...]
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
    steer, toe, direct = deciding_peaks(session, measured, draws)
    geometry = overall(rules.effective.verdict, steer.ruling.verdict, toe.ruling.verdict)
    gradients = _gradients(measured)
    centred = has_centre_plane(session)
    heights = roll_centre_height(linkage)
    swept = sweep(measured, session.droop, session.bump)
    advised = None
    # Readings of the pivots settle nothing where the measured steer decides alone.
    rests_on_pivots = direct is None or direct.agrees
    if geometry == Overall.TOO_CLOSE and rests_on_pivots:
        contested = _contested_rulings(rules, gradients[:, 0], (steer, toe))
        advised = advice(adjustment, contested, lambda tried: _settles(session, tried, draws))
        if not advised.settles:
            advised = (
                advice_with_photographs(session, adjustment, measured, contested)
                if session.photographs
                else advice_on_skipped(measured, contested)
            )
    groups = suspect_groups(adjustment)
    slips: tuple[Slip, ...] = ()
    decided: Overall | None = geometry
    if not adjustment.closes:
        slips = slips_in(session, adjustment)
        # Where several marks are wrong, no single explanation speaks for them all.
        is_explained = bool(slips) or not session.photographs
        decided = (
            None
            if not is_explained
            else decided_by_explanations(
                leading_explanations(session.readings, groups, slips, session.photographs),
                lambda evidence: geometry_by(
                    replace(session, photographs=evidence.photographs), evidence.readings, draws
                ),
            )
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
        direct=direct,
        derivatives=derivatives(linkage),
        u_gradient=float(measured.standard_uncertainty(gradients[:, 1])),
        sweep=swept,
        ball_path=ball_path(linkage),
        rise_to_square=_value(measured, out_of_square(linkage).rise, gradients[:, 2]),
        roll_steer=_value(measured, roll_steer(linkage), gradients[:, 3]),
        clearance=clearance(linkage, swept.heave),
        articulation=articulation(linkage, session.droop, session.bump) if centred else None,
        splits=splits(linkage, limits),
        courses=_courses(session, linkage),
        roll_centre_height=float(heights) if centred and heights is not None else None,
        travel_limits=travel_limits(linkage, session.droop, session.bump),
        budget=budget(measured, gradients[:, 0]),
        steer_budget=budget(measured, steer.gradient, steer.u_model),
        advice=advised,
    )


def deciding_peaks(
    session: Session, measured: MeasuredLinkage, draws: int
) -> tuple[Peak, Peak, DirectResult | None]:
    """Peak steer that decides, peak toe-in change, and the direct check where there is one."""
    steer, toe = peaks_of(measured, session.limits, draws)
    direct = direct_result(session, measured, steer, draws)
    return steer if direct is None else direct.peak, toe, direct


def _gradients(measured: MeasuredLinkage) -> Array:
    """Derivatives of results by each parameter, array (K, 4).

    Effective angle, steer gradient, rise to square, roll steer.
    """

    def results(linkage: Linkage) -> Array:
        angle, rise = out_of_square(linkage)
        values = [angle, derivatives(linkage).gradient, rise, roll_steer(linkage)]
        return np.stack(values, axis=-1)

    return measured.gradient(results)


def _value(measured: MeasuredLinkage, value: Array, gradient: Array) -> Value:
    """A result with its standard uncertainty by linear propagation."""
    return Value(float(value), float(measured.standard_uncertainty(gradient)))


def _courses(session: Session, linkage: Linkage) -> tuple[Course, ...]:
    """Courses through the events of a session; () where its handling is not known."""
    if session.road is None:
        return ()
    return tuple(drive(event, linkage, session.wheelbase, session.road) for event in session.events)


def decided_by(verdict: Verdict) -> DecidedBy:
    """Evidence that decides the peak steer of a verdict."""
    return DecidedBy.PIVOTS if verdict.direct is None else verdict.direct.decided_by


def overall(effective: Conformity, steer: Conformity, toe: Conformity) -> Overall:
    """Overall verdict by the three deciding rules; flat and length only advise."""
    return overall_at(combined_decision((effective, steer, toe)))


def overall_at(decision: Conformity) -> Overall:
    """Overall verdict at a decision on the deciding rules together."""
    if decision == Conformity.OUT:
        return Overall.BUMP_STEER
    return Overall.STEERS_TRUE if decision == Conformity.WITHIN else Overall.TOO_CLOSE


def _contested_rulings(
    rules: Rules, effective_gradient: Array, peaks: tuple[Peak, Peak]
) -> list[ContestedRuling]:
    """Deciding rulings that are too close to call, with their gradients."""
    rulings = [
        (rules.effective, effective_gradient),
        *((peak.ruling, peak.gradient) for peak in peaks),
    ]
    return [
        ContestedRuling(ruling, gradient)
        for ruling, gradient in rulings
        if ruling.verdict == Conformity.TOO_CLOSE
    ]


def rulings_of(verdict: Verdict) -> dict[RuleKey, Ruling]:
    """The rulings on the rules of a verdict, in rad; the ratio of lengths is a plain number.

    A rule that does not apply to the vehicle is left out.
    """
    rules = verdict.rules
    rulings: dict[RuleKey, Ruling | None] = {
        "parallel": rules.parallel,
        "effective": rules.effective,
        "peak_steer": verdict.steer.ruling,
        "peak_toe_change": verdict.toe.ruling,
        "track_bar_slope": rules.flat_track_bar,
        "drag_link_slope": rules.flat_drag_link,
        "length_ratio": rules.length,
    }
    return {name: ruling for name, ruling in rulings.items() if ruling is not None}


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
    steer, toe, _ = deciding_peaks(session, measured, draws)
    effective = rules_of(measured, session.limits).effective
    return overall(effective.verdict, steer.ruling.verdict, toe.ruling.verdict)
