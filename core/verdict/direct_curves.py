"""Curves of steer for a direct check: by the pivots, by the rows, and by both together.

The combination is generalized least squares (A. C. Aitken, 1935, from memory): the rows are further
observations of the pivots and of the model's own error.
"""

from dataclasses import dataclass

import numpy as np

from core.kinematics.linkage import Linkage
from core.kinematics.motion import LEFT, motion_at
from core.kinematics.vectors import Array
from core.profiles.limits import Limits
from core.sessions.session import Session
from core.uncertainty.propagation import MeasuredLinkage
from core.verdict.direct_rows import DirectPoints, independent
from core.verdict.model_doubt import FLOOR, SHARE

STEP = 1.0
"""Half the step of heave by which the gradient of the steer is taken, mm."""


@dataclass(frozen=True, eq=False)
class Predicted:
    """Steer that the pivots say at some heaves.

    Attributes
    ----------
    steer : array (n,), rad
    influence : array (n, s)
        Change of the steer with one standard uncertainty of each source: readings, assumed values,
        and the model's own error.
    """

    steer: Array
    influence: Array


def gradient_at(linkage: Linkage, heave: Array) -> Array:
    """Steer per heave that the pivots say at some heaves, rad/mm; 0 where a link cannot reach."""
    after, before = (motion_at(linkage, heave + step).steer for step in (STEP, -STEP))
    return np.nan_to_num((after - before) / (2 * STEP))


def predicted(
    measured: MeasuredLinkage, heave: Array, left_share: Array, limits: Limits
) -> Predicted:
    """Steer that the pivots say at some heaves.

    Parameters
    ----------
    measured : MeasuredLinkage
    heave : array (n,), mm
    left_share : array (n,)
        Share of the left wheel in the steer.
    limits : Limits
        The model's own error has its usual size at the ends of the working travel.
    """

    def steer_of(linkage: Linkage) -> Array:
        motion = motion_at(linkage, heave)
        far_share = left_share if measured.linkage.far_side == LEFT else 1 - left_share
        return np.asarray(far_share * motion.far_steer + (1 - far_share) * motion.near_steer)

    steer = steer_of(measured.linkage)
    gradient = measured.gradient(lambda linkage: steer_of(linkage.with_heave_axis()))
    part = heave / max(limits.working_bump, limits.working_droop)
    # The model's error is smooth and nothing at ride height: a scale, a slope and a bow.
    model = np.stack([SHARE * steer, FLOOR / np.sqrt(2) * part, FLOOR / np.sqrt(2) * part**2])
    return Predicted(steer, np.concatenate([gradient.T @ measured.influence, model.T], axis=1))


def covariance_of(session: Session, linkage: Linkage, points: DirectPoints) -> Array:
    """Covariance of the measured steer, array (n, n), rad2.

    The mark of a laser also takes part in the axle's sideways shift, which nobody takes off. The
    shift as the pivots say it counts as one standard uncertainty.
    """
    check = session.direct
    assert check is not None
    if check.method != "laser" or check.length is None:
        return points.covariance
    shift = np.nan_to_num(motion_at(linkage, points.heave).axle_shift) / check.length
    return np.asarray(points.covariance + np.outer(shift, shift))


def combined(
    before: Predicted, difference: Array, spread: Array, total: Array
) -> tuple[Array, Array]:
    """Steer of pivots and direct check together, array (m,), and its covariance (m, m).

    Parameters
    ----------
    before : Predicted
        Steer by the pivots alone at the m heaves wanted.
    difference : array (n,)
        Measured steer less computed steer, rad.
    spread : array (n, s)
        Influence of the sources on the computed steer.
    total : array (n, n)
        Covariance of the difference, rad2.
    """
    gain = np.linalg.solve(total, spread).T
    left = np.eye(spread.shape[1]) - gain @ spread
    curve = before.steer + before.influence @ (gain @ difference)
    return curve, before.influence @ left @ before.influence.T


def measured_curve(points: DirectPoints, heaves: Array) -> tuple[Array, Array]:
    """Cubic through zero of the measured steer at some heaves (m,), and its covariance (m, m).

    Fewer than three different heights take a polynomial of lower degree. Where the rows scatter by
    more than their doubt, the scatter counts.
    """
    basis = independent(points.covariance)
    largest = float(np.abs(points.heave).max())
    places = len(np.unique(np.round(np.append(points.heave, 0.0), 0)))
    powers = np.arange(1, min(3, places - 1, basis.shape[1]) + 1)
    design = basis.T @ (points.heave[:, None] / largest) ** powers
    weights = np.linalg.inv(basis.T @ points.covariance @ basis)
    cofactor = np.linalg.inv(design.T @ weights @ design)
    steer = basis.T @ points.steer
    terms = cofactor @ design.T @ weights @ steer
    residual = steer - design @ terms
    free = len(steer) - len(terms)
    scatter = float(residual @ weights @ residual) / free if free else 1.0
    wanted = (heaves[:, None] / largest) ** powers
    return wanted @ terms, wanted @ cofactor @ wanted.T * max(scatter, 1.0)
