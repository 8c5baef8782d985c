"""Lifts: the steer against the ride height, and the heights at which a vehicle steers true.

A vehicle at another ride height has its axle set in the middle and its wheels straight, as after
any work. A range takes the readings as exact. A sure range counts their uncertainty, that of every
assumed value, and that of the model: in it the vehicle steers true with a chance of at least 0.95.
"""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from core.fix.chances import with_model_error, within_limits
from core.fix.combinations import excess_of
from core.fix.plan import Plan
from core.kinematics.ball_path import ball_path, effective_angle, out_of_square
from core.kinematics.clearance import clearance
from core.kinematics.linkage import Linkage
from core.kinematics.pivots import RIDE_HEIGHT
from core.kinematics.raising import raised
from core.kinematics.roll_centre import roll_centre_height
from core.kinematics.series import derivatives, roll_steer
from core.kinematics.travel_limits import travel_limits
from core.kinematics.vectors import Array
from core.profiles.limits import Limits
from core.text.quantity import INCH
from core.uncertainty.measured_linkage import has_centre_plane
from core.uncertainty.propagation import MeasuredLinkage, parameters
from core.verdict.curves import Curves
from core.verdict.peak import SEED, peaks_of
from core.verdict.rules import lengths, rules_of
from core.verdict.sweep import articulation, splits, sweep
from core.verdict.verdict import DRAWS, Value, Verdict, overall

LOWEST, HIGHEST = -2 * INCH, 8 * INCH
"""Changes of the ride height between which the steer is computed, mm."""

STEPS = 81
"""Number of ride heights of a curve, an eighth of an inch apart."""

SURE = 0.95
"""Chance from which on a height counts as sure, as in a verdict."""

SURE_STEPS, SURE_DRAWS = 41, 1_000
"""Numbers of ride heights, a quarter of an inch apart, and of geometries drawn for sure ranges."""

BISECTIONS = 20
"""Halvings of an interval in which a range ends; its end is then exact to 1e-5 mm."""


@dataclass(frozen=True, eq=False)
class HeightCurve:
    """Peak steer of one geometry against its ride height.

    Attributes
    ----------
    rise : array (81,), mm
        Change of the ride height, up positive.
    peak_steer : array (81,), rad
        nan where a link binds in the working travel.
    excess : array (81,)
        Largest of the three deciding rules as a share of its limit; infinite where a link binds.
    ranges : tuple of (float, float)
        Changes of the ride height between which all deciding rules are within their limits, mm.
    sure_ranges : tuple of (float, float) or None
        The same with a chance of at least 0.95, mm; None where the chance was not computed.
    """

    rise: Array
    peak_steer: Array
    excess: Array
    ranges: tuple[tuple[float, float], ...]
    sure_ranges: tuple[tuple[float, float], ...] | None = None

    def steers_true_at(self, rise: float) -> bool:
        """True if a change of the ride height, mm, lies in one of the ranges."""
        return any(low <= rise <= high for low, high in self.ranges)


def height_curve(
    linkage: Linkage, limits: Limits, start: float = 0.0, drawn: Linkage | None = None
) -> HeightCurve:
    """Peak steer of a linkage against its ride height.

    Parameters
    ----------
    linkage : Linkage
        Without leading axes.
    limits : Limits
    start : float
        Change of the ride height that the linkage has already, mm.
    drawn : Linkage, optional
        Geometries drawn from the uncertainty of the linkage, which give the sure ranges.
    """
    rise = np.linspace(LOWEST, HIGHEST, STEPS)
    peak_steer, excess = _at_heights(linkage, limits, rise - start)
    crossings = np.flatnonzero((excess <= 1)[1:] != (excess <= 1)[:-1])
    ends = _crossing(linkage, limits, rise[crossings], rise[crossings + 1], start)
    ranges = _ranges(excess <= 1, ends)
    sure_ranges = None if drawn is None else _sure_ranges(drawn, limits, start)
    return HeightCurve(rise, peak_steer, excess, ranges, sure_ranges)


def _ranges(within: NDArray[np.bool_], ends: Array) -> tuple[tuple[float, float], ...]:
    """Ranges from the heights that are within, and the ends between them, mm."""
    edges = [*([LOWEST] if within[0] else []), *ends.tolist(), *([HIGHEST] if within[-1] else [])]
    return tuple(zip(edges[::2], edges[1::2], strict=True))


def _sure_ranges(drawn: Linkage, limits: Limits, start: float) -> tuple[tuple[float, float], ...]:
    """Changes of the ride height between which drawn geometries steer true surely enough, mm."""
    rises = np.linspace(LOWEST, HIGHEST, SURE_STEPS)
    margin = np.array([_chance(drawn, limits, rise - start) for rise in rises.tolist()]) - SURE
    sure = margin >= 0
    crossings = np.flatnonzero(sure[1:] != sure[:-1])
    before, after = margin[crossings], margin[crossings + 1]
    ends = rises[crossings] + (rises[1] - rises[0]) * before / (before - after)
    return _ranges(sure, ends)


def _chance(drawn: Linkage, limits: Limits, rise: float) -> float:
    """Share of drawn geometries, each with an error of the model, that steer true at a height."""
    moved = raised(drawn, RIDE_HEIGHT, rise)
    peaks = with_model_error(Curves.of(moved, limits).peaks())
    return float(within_limits(effective_angle(moved), peaks, limits).all(axis=0).mean())


def drawn_from(verdict: Verdict) -> Linkage:
    """Geometries of a vehicle, drawn for the sure ranges."""
    return verdict.measured.draw(SURE_DRAWS, SEED)


def curve_now(verdict: Verdict) -> HeightCurve:
    """Peak steer of a measured vehicle against its ride height."""
    return height_curve(verdict.measured.linkage, verdict.session.limits)


def curve_with_plan(verdict: Verdict, plan: Plan) -> HeightCurve:
    """Peak steer with a plan, against the ride height that the vehicle has now."""
    start = sum(move.raises(RIDE_HEIGHT) for move in plan.moves)
    return height_curve(plan.after.linkage, verdict.session.limits, start)


def _at_heights(linkage: Linkage, limits: Limits, rise: Array) -> tuple[Array, Array]:
    """Peak steer, rad, and excess at some changes of the ride height, both (n,)."""
    moved = raised(linkage, RIDE_HEIGHT, rise)
    curves = Curves.of(moved, limits)
    effective = np.broadcast_to(effective_angle(moved), rise.shape)
    return curves.peaks()[0], excess_of(effective, curves, limits)


def _crossing(linkage: Linkage, limits: Limits, low: Array, high: Array, start: float) -> Array:
    """Changes of the ride height at which the excess crosses 1, by bisection of intervals (n,)."""
    if not low.size:
        return low
    low_is_within = _at_heights(linkage, limits, low - start)[1] <= 1
    for _ in range(BISECTIONS):
        middle = (low + high) / 2
        is_within = _at_heights(linkage, limits, middle - start)[1] <= 1
        on_low_side = is_within == low_is_within
        low, high = np.where(on_low_side, middle, low), np.where(on_low_side, high, middle)
    return np.asarray(np.where(low_is_within, low, high))


def lifted(verdict: Verdict, lift: float) -> Verdict:
    """The verdict on a vehicle after a lift, with the uncertainty of its readings carried over.

    The travel stays as it was: shock absorbers and bump stops of a lift have its length. Results
    that come from the readings, such as their residuals, are those of the vehicle before.

    Parameters
    ----------
    verdict : Verdict
    lift : float
        mm, up positive.
    """
    before = verdict.measured
    gradient = before.gradient(lambda each: parameters(raised(each, RIDE_HEIGHT, lift)))
    linkage = _without_axes(raised(before.linkage, RIDE_HEIGHT, lift))
    measured = MeasuredLinkage(linkage, before.sources, gradient.T @ before.influence)
    return _verdict_on(verdict, measured)


def _without_axes(linkage: Linkage) -> Linkage:
    """The linkage with plain numbers where raising it has left arrays of no axes."""
    return replace(linkage, castor=float(linkage.castor))


def _verdict_on(verdict: Verdict, measured: MeasuredLinkage) -> Verdict:
    """The verdict with the results of another geometry of its vehicle."""
    session, linkage = verdict.session, measured.linkage
    limits = session.limits
    rules = rules_of(measured, limits)
    steer, toe = peaks_of(measured, limits, DRAWS)
    geometry = overall(rules.effective.verdict, steer.ruling.verdict, toe.ruling.verdict)
    swept = sweep(measured, session.droop, session.bump)

    def results(each: Linkage) -> Array:
        values = [derivatives(each).gradient, out_of_square(each).rise, roll_steer(each)]
        return np.stack(values, axis=-1)

    u_gradient, u_rise, u_roll = measured.standard_uncertainty(measured.gradient(results)).tolist()
    centred = has_centre_plane(session)
    height = roll_centre_height(linkage)
    return replace(
        verdict,
        overall=verdict.overall if verdict.held_back_by else geometry,
        geometry=geometry,
        measured=measured,
        lengths=lengths(linkage),
        rules=rules,
        steer=steer,
        toe=toe,
        derivatives=derivatives(linkage),
        u_gradient=u_gradient,
        sweep=swept,
        ball_path=ball_path(linkage),
        rise_to_square=Value(float(out_of_square(linkage).rise), u_rise),
        roll_steer=Value(float(roll_steer(linkage)), u_roll),
        clearance=clearance(linkage, swept.heave),
        articulation=articulation(linkage, session.droop, session.bump) if centred else None,
        splits=splits(linkage, limits),
        courses=(),
        roll_centre_height=float(height) if centred and height is not None else None,
        travel_limits=travel_limits(linkage, session.droop, session.bump),
        budget=(),
        steer_budget=(),
        advice=None,
    )
