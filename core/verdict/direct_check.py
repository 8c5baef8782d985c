"""The direct check beside the steer that the pivots say, and the peak steer that counts.

Where both agree they decide together. Where they do not, the measured steer decides alone, by a
cubic through zero.
"""

from dataclasses import dataclass, replace
from enum import StrEnum

import numpy as np

from core.kinematics.linkage import Linkage
from core.kinematics.vectors import Array
from core.profiles.limits import Limits
from core.sessions.session import Session
from core.statistics.conformity import Ruling, magnitude_ruling
from core.statistics.distributions import chi_square_sf
from core.statistics.random_numbers import standard_normal
from core.uncertainty.propagation import MeasuredLinkage
from core.verdict.curves import working_heaves
from core.verdict.direct_curves import (
    combined,
    covariance_of,
    gradient_at,
    measured_curve,
    predicted,
)
from core.verdict.direct_rows import independent, points_of
from core.verdict.direct_shape import Lash, LookAt, lash_of, look_at
from core.verdict.peak import CLEAR, SEED, Method, Peak

AGREES = 0.05
"""Least probability of the difference at which the measured steer agrees with the pivots."""


class DecidedBy(StrEnum):
    """Evidence that decides the peak steer."""

    PIVOTS = "pivots"
    BOTH = "pivots and direct"
    DIRECT = "direct"


@dataclass(frozen=True, eq=False)
class DirectResult:
    """A direct check, worked out; arrays (n,) over the places of the axle.

    Attributes
    ----------
    heave_mm : array (n,)
    steer_deg, u_deg : array (n,)
        Measured steer with its standard uncertainty.
    computed_deg, u_computed_deg : array (n,)
        Steer that the pivots say of the same wheels, nan where a link cannot reach.
    chi_square : float
    degrees_of_freedom : int
        Number of rows less one for each zero: the zero of a wheel is the mean of its own rows at
        ride height, so one combination of its rows says nothing.
    p : float
        Probability of so large a chi-square where the vehicle does what its pivots say.
    agrees : bool
    peak_deg, u_peak_deg : float
        Peak steer that decides, over the working travel.
    lash_deg : float or None
        Width of the loop between going up and coming down; None where only one way was read.
    u_lash_deg : float or None
    lash_wheel_deg : float or None
        The same at the steering wheel.
    look_at : tuple of LookAt
    decided_by : DecidedBy
    closing_mm : float
        Height by which the last row is off the first row.
    has_returned : bool
        True if the axle was back at ride height in the last row.
    peak : Peak
        The peak that decides, with its ruling.
    by_pivots : Peak
        The peak by the pivots alone.
    curve : array (41,)
        Steer that decides, over the working travel, rad.
    """

    heave_mm: Array
    steer_deg: Array
    u_deg: Array
    computed_deg: Array
    u_computed_deg: Array
    chi_square: float
    degrees_of_freedom: int
    p: float
    agrees: bool
    peak_deg: float
    u_peak_deg: float
    lash_deg: float | None
    u_lash_deg: float | None
    lash_wheel_deg: float | None
    look_at: tuple[LookAt, ...]
    decided_by: DecidedBy
    closing_mm: float
    has_returned: bool
    peak: Peak
    by_pivots: Peak
    curve: Array


def direct_result(
    session: Session, measured: MeasuredLinkage, steer: Peak, draws: int
) -> DirectResult | None:
    """The direct check of a session; None where there is none.

    Parameters
    ----------
    session : Session
    measured : MeasuredLinkage
    steer : Peak
        Peak steer by the pivots alone.
    draws : int
        Number of draws where a peak is not clear; 0 for linear propagation in any case.
    """
    if session.direct is None:
        return None
    limits, linkage = session.limits, measured.linkage
    points = points_of(
        session.direct, session.instruments, lambda heave: gradient_at(linkage, heave)
    )
    at_points = predicted(measured, points.heave, points.left_share, limits)
    reached = np.isfinite(at_points.steer) & np.isfinite(at_points.influence).all(axis=1)
    basis = independent(points.covariance)[reached]
    difference = basis.T @ (points.steer - at_points.steer)[reached]
    spread = basis.T @ at_points.influence[reached]
    noise = basis.T @ covariance_of(session, linkage, points)[np.ix_(reached, reached)] @ basis
    total = noise + spread @ spread.T
    chi_square = float(difference @ np.linalg.solve(total, difference))
    p = chi_square_sf(chi_square, len(difference)) if reached.all() else 0.0
    agrees = p >= AGREES
    if agrees:
        heaves = working_heaves(limits)
        before = predicted(measured, heaves, np.full(len(heaves), 0.5), limits)
        curve, covariance = combined(before, difference, spread, total)
    else:
        curve, covariance = measured_curve(points, working_heaves(limits))
    peak = peak_of(steer, curve, covariance, limits, draws)
    doubt = at_points.influence @ at_points.influence.T
    lash = lash_of(points, at_points.steer)
    return DirectResult(
        heave_mm=points.heave,
        steer_deg=np.degrees(points.steer),
        u_deg=np.degrees(np.sqrt(np.diag(points.covariance))),
        computed_deg=np.degrees(at_points.steer),
        u_computed_deg=np.degrees(np.sqrt((at_points.influence**2).sum(axis=1))),
        chi_square=chi_square,
        degrees_of_freedom=len(difference),
        p=p,
        agrees=agrees,
        peak_deg=float(np.degrees(peak.ruling.value)),
        u_peak_deg=float(np.degrees(peak.ruling.u)),
        lash_deg=None if lash is None else float(np.degrees(lash.width)),
        u_lash_deg=None if lash is None else float(np.degrees(lash.u)),
        lash_wheel_deg=None if lash is None else float(np.degrees(at_the_wheel(linkage, lash))),
        look_at=look_at(points, at_points.steer, doubt, agrees, lash),
        decided_by=DecidedBy.BOTH if agrees else DecidedBy.DIRECT,
        closing_mm=points.closing,
        has_returned=points.has_returned,
        peak=peak,
        by_pivots=steer,
        curve=curve,
    )


def peak_of(steer: Peak, curve: Array, covariance: Array, limits: Limits, draws: int) -> Peak:
    """Peak of a curve over the working travel, in place of the peak by the pivots alone.

    Parameters
    ----------
    steer : Peak
        Peak by the pivots alone.
    curve : array (41,), rad
    covariance : array (41, 41), rad2
    limits : Limits
    draws : int
        Number of draws where no point is clearly the largest; 0 for none.
    """
    place = int(np.argmax(np.abs(curve)))
    value, u = float(abs(curve[place])), float(np.sqrt(covariance[place, place]))
    at_heave = float(working_heaves(limits)[place])
    if not draws or is_clear(curve, covariance, place):
        ruling = magnitude_ruling(value, u, limits.steer)
        return replace(steer, ruling=ruling, at_heave=at_heave, method=Method.LINEAR)
    values, vectors = np.linalg.eigh(covariance)
    root = vectors * np.sqrt(np.maximum(values, 0.0)) @ vectors.T
    errors = root @ standard_normal((len(curve), draws), SEED)
    peaks = np.abs(curve[:, None] + errors).max(axis=0)
    ruling = Ruling(value, limits.steer, float(peaks.std()), float(np.mean(peaks <= limits.steer)))
    return replace(steer, ruling=ruling, at_heave=at_heave, method=Method.MONTE_CARLO)


def is_clear(curve: Array, covariance: Array, place: int) -> bool:
    """True if the point at `place` is the peak of a curve within the doubt of the curve."""
    signs = np.sign(curve)
    margin = np.abs(curve[place]) - np.abs(curve)
    shared = covariance[place] * signs * signs[place]
    variances = covariance[place, place] + np.diag(covariance) - 2 * shared
    u_margin = np.sqrt(np.maximum(variances, 0.0))
    others = np.arange(len(curve)) != place
    is_largest = (margin > CLEAR * u_margin)[others].all()
    return bool(is_largest and abs(curve[place]) > CLEAR * np.sqrt(covariance[place, place]))


def wheel_per_steer(linkage: Linkage) -> float:
    """Turn of the steering wheel for a turn of the road wheels, by the box and the arms."""
    return float(linkage.ratio * linkage.arm / linkage.pitman_arm)


def at_the_wheel(linkage: Linkage, lash: Lash) -> float:
    """Width of a loop at the steering wheel, rad: by the box and the arms."""
    return float(lash.width * wheel_per_steer(linkage))
