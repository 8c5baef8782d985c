"""The shape of the difference between measured and computed steer: where to look.

A shape is a hint. The simplest shape that explains the difference is named: Akaike's criterion
(H. Akaike, 1974, from memory).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from core.kinematics.vectors import Array
from core.verdict.direct_rows import DirectPoints, independent

PRESENT = 2.0
"""Standard uncertainties beyond which a loop is there."""


class LookAt(StrEnum):
    """Place to look at, by the shape of the difference."""

    ARC = "arc"
    """Even in heave: a length, a height or the guide is not what was read."""
    SLOPE = "slope"
    """Odd and growing: an arm, a slope or a guide reading, or a soft bush."""
    LASH = "lash"
    """A loop between going up and coming down."""
    BINDING = "binding"
    """Only beyond some height: a part touches or binds."""


@dataclass(frozen=True)
class Lash:
    """Width of the loop between going up and coming down, with its standard uncertainty, rad."""

    width: float
    u: float


def lash_of(points: DirectPoints, computed: Array) -> Lash | None:
    """Mean difference of the steer between going up and coming down, at one height.

    The difference between measured and computed steer is taken as a cubic through zero with a step
    between both ways. None where the rows do not tell them apart.
    """
    if not {1.0, -1.0} <= set(points.going.tolist()):
        return None
    known = np.isfinite(computed)
    basis = independent(points.covariance)[known]
    heave = points.heave[known] / np.abs(points.heave).max()
    design = basis.T @ np.stack([heave, heave**2, heave**3, points.going[known] / 2], axis=1)
    if np.linalg.matrix_rank(design, tol=1e-3) < design.shape[1]:
        return None
    terms, cofactor, _ = fitted(points, computed, design, known)
    return Lash(abs(float(terms[-1])), float(np.sqrt(cofactor[-1, -1])))


def look_at(
    points: DirectPoints, computed: Array, doubt: Array, agrees: bool, lash: Lash | None
) -> tuple[LookAt, ...]:
    """Places to look at; () where the measured steer agrees and shows no loop.

    Parameters
    ----------
    points : DirectPoints
    computed : array (n,)
        Steer that the pivots say, rad.
    doubt : array (n, n)
        Covariance of the computed steer, rad2; a difference that it explains has no shape.
    agrees : bool
    lash : Lash or None
    """
    loop = (LookAt.LASH,) if lash is not None and lash.width > PRESENT * lash.u else ()
    if agrees:
        return loop
    known = np.isfinite(computed)
    if not known.all():
        return (*loop, LookAt.BINDING)
    basis = independent(points.covariance)
    step = [points.going / 2] if loop else []
    best: tuple[LookAt, ...] = ()
    smallest = np.inf
    for looked_at, columns, knots in shapes(points.heave):
        design = basis.T @ np.stack([*columns, *step], axis=1)
        if np.linalg.matrix_rank(design) < design.shape[1]:
            continue
        _, _, chi_square = fitted(points, computed, design, known, doubt)
        criterion = chi_square + 2 * (len(columns) + knots)
        if criterion < smallest:
            best, smallest = looked_at, criterion
    return (*loop, *best)


def shapes(heave: Array) -> Iterator[tuple[tuple[LookAt, ...], list[Array], int]]:
    """Shapes of a difference: where to look, columns of the design, and knots that were chosen."""
    part = heave / np.abs(heave).max()
    yield (LookAt.SLOPE,), [part], 0
    yield (LookAt.ARC,), [part**2], 0
    yield (LookAt.SLOPE, LookAt.ARC), [part, part**2], 0
    for side in (1, -1):
        beyond = np.sort(part[side * part > 0.1] * side)
        for knot in beyond[:-1]:
            yield (LookAt.BINDING,), [np.maximum(side * part - knot, 0.0)], 1


def fitted(
    points: DirectPoints,
    computed: Array,
    design: Array,
    known: Array,
    doubt: Array | float = 0.0,
) -> tuple[Array, Array, float]:
    """Terms of a design fitted to measured less computed steer, their covariance, chi-square."""
    basis = independent(points.covariance)[known]
    difference = basis.T @ (points.steer - computed)[known]
    noise = basis.T @ (points.covariance + doubt)[np.ix_(known, known)] @ basis
    weights = np.linalg.pinv(noise, hermitian=True)
    cofactor = np.linalg.inv(design.T @ weights @ design)
    terms = cofactor @ design.T @ weights @ difference
    residual = difference - design @ terms
    return terms, np.asarray(cofactor), float(residual @ weights @ residual)
