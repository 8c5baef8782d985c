"""Least-squares adjustment: one set of pivots out of all readings.

Weighted least squares by Newton steps. They include the curvature of the readings, because without
it they do not converge where a reading is inches wrong. The unknowns are the coordinates
of the pivots. The observations are all heights, offsets, stations, lengths, slopes and braces, and
the priors of coordinates that were not read. Without redundancy the pivots are the readings.
`core.adjustment.outliers` finds the readings that disagree with the rest.

References
----------
W. Baarda, A testing procedure for use in geodetic networks, 1968 (redundancy numbers,
standardized residuals, smallest detectable mistake, delta0 = 4.13).
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from core.adjustment.marks import AdjustedCamera, AdjustedMark, MarkCoordinate, Network
from core.adjustment.observation import NOTHING_REDUNDANT, Observations, curvature, predict
from core.adjustment.prior import Prior
from core.kinematics.vectors import Array
from core.readings.reading import (
    CRITICAL,
    Instruments,
    Reading,
    least_uncertainty,
    repeats_scatter,
    standard_uncertainty,
)
from core.readings.survey import ends_of
from core.statistics.distributions import chi_square_limit

DELTA_0 = 4.13
"""Baarda's non-centrality for a risk of 0.1 % and a power of 80 %."""

CONVERGED = 1e-9
"""Largest last step of a coordinate, mm."""

MOST_STEPS = 100
"""Most steps; six are usual, and mistakes of a foot took up to sixteen."""

WORSE = 1 + 1e-12
"""Growth of the weighted sum of squares that is only rounding."""

FLATTEST = 1e-9
"""Least magnitude of an eigenvalue of the Hessian, as part of the largest one."""

UNSETTLED = "the readings do not settle on one set of pivots"


class MissingReading(ValueError):
    """A height, an offset or a station is missing, so a pivot has no place."""

    def __init__(self, name: str) -> None:
        self.name = name
        super().__init__(name)


class NoSolution(ValueError):
    """The steps do not converge to a set of pivots."""

    path = "readings"
    """The entry of a record that the message is about."""


@dataclass(frozen=True)
class AdjustedReading:
    """A reading with its residual from the adjusted pivots; mm, or rad for slopes.

    Attributes
    ----------
    reading : Reading
    u : float
        Standard uncertainty of the mean of its repeats.
    least_u : float
        Standard uncertainty below which no number of repeats brings it.
    scatters : bool
        True if the repeats disagree by more than the instruments claim.
    residual : float
        Adjusted less read.
    redundancy_number : float
        Share of a mistake that the other readings reveal: 0 none, 1 all of it.
    w : float or None
        Standardized residual; None where nothing checks the reading.
    smallest_mistake : float or None
        Smallest mistake of this reading that the set would reveal.
    """

    reading: Reading
    u: float
    least_u: float
    scatters: bool
    residual: float
    redundancy_number: float
    w: float | None
    smallest_mistake: float | None

    @property
    def name(self) -> str:
        """Name of the reading."""
        return self.reading.name


@dataclass(frozen=True, eq=False)
class Adjustment:
    """Adjusted pivots with their covariance.

    Attributes
    ----------
    pivots : tuple of str
    points : array (P, 3)
        Pivot centres in the order of `pivots`, mm; the datum line lies at y = 0.
    covariance : array (3 P, 3 P)
        Covariance of points.ravel(), mm2.
    items : tuple of n AdjustedReading
    priors : tuple of m Prior
    sensitivity : array (3 P, n + m + 2 k)
        Change of points.ravel() with each source.
    residual_covariance : array (n + 2 k, n + 2 k)
        Covariance of the residuals of the readings, then of the marks' coordinates.
    redundancy : int
        Readings, priors and marks' coordinates less unknowns.
    chi_square, chi_square_limit : float
        Chi-square of the weighted residuals of all of them, and its limit at 0.1 %.
    marks : tuple of k AdjustedMark
        Marks in photographs; () without photographs.
    cameras : tuple of AdjustedCamera
    network : Network or None
        All points and cameras together; None without photographs.
    """

    pivots: tuple[str, ...]
    points: Array
    covariance: Array
    items: tuple[AdjustedReading, ...]
    priors: tuple[Prior, ...]
    sensitivity: Array
    residual_covariance: Array
    redundancy: int
    chi_square: float
    chi_square_limit: float
    marks: tuple[AdjustedMark, ...] = ()
    cameras: tuple[AdjustedCamera, ...] = ()
    network: Network | None = None

    @property
    def sources(self) -> tuple[AdjustedReading | Prior | MarkCoordinate, ...]:
        """Sources of the uncertainty, each with its name and its u: readings, priors, marks."""
        return (*self.items, *self.priors, *(each for mark in self.marks for each in mark.sources))

    @property
    def observed(self) -> tuple[AdjustedReading | AdjustedMark, ...]:
        """Readings, then marks, each with its name and its w."""
        return (*self.items, *self.marks)

    @property
    def closes(self) -> bool:
        """True if all readings together, and each of them, agree within their uncertainty."""
        if self.redundancy == 0:
            return True
        each = all(item.w is None or abs(item.w) <= CRITICAL for item in self.observed)
        return each and self.chi_square <= self.chi_square_limit


def adjust(
    readings: Sequence[Reading],
    instruments: Instruments,
    pivots: tuple[str, ...],
    priors: Sequence[Prior] = (),
) -> Adjustment:
    """Adjust the pivots of a vehicle to all readings and priors.

    Parameters
    ----------
    readings : sequence of Reading
        As from `core.readings.survey.readings_in`. A reading whose pivots the vehicle does not
        have is left out. A reading that is set aside is no observation; the steps start from it.
    instruments : Instruments
    pivots : tuple of str
        Pivots that the vehicle has.
    priors : sequence of Prior
        As from `core.adjustment.prior.station_priors`.

    Raises
    ------
    MissingReading
        A pivot's height or offset was not taken, or its station has neither reading nor prior.
    NoSolution
        The steps do not converge, or the readings that count do not place every pivot.
    """
    readings = [reading for reading in readings if set(ends_of(reading.name)) <= set(pivots)]
    _refuse_missing(readings, pivots, priors)
    used = [reading for reading in readings if reading.counts]
    value = np.array([reading.value for reading in used] + [prior.value for prior in priors])
    u = np.array(
        [standard_uncertainty(reading, instruments) for reading in used]
        + [prior.u for prior in priors]
    )
    observations = Observations.of(used, pivots, priors)

    coordinates, chi_square = _start(readings, pivots, priors), np.inf
    step = np.zeros_like(coordinates)
    for _ in range(MOST_STEPS):
        predicted, jacobian = predict(observations, coordinates)
        misfit = (value - predicted) / u
        if misfit @ misfit > chi_square * WORSE:
            step = step / 2
            coordinates = coordinates - step
        else:
            chi_square = misfit @ misfit
            design = jacobian / u[:, None]
            step = _step(design, curvature(observations, coordinates, misfit / u), misfit)
            coordinates = coordinates + step
        if np.abs(step).max() < CONVERGED:
            break
    else:
        raise NoSolution(UNSETTLED)
    residual = predict(observations, coordinates)[0] - value
    return _conclude(pivots, used, tuple(priors), instruments, coordinates, design, u, residual)


def _refuse_missing(
    readings: Sequence[Reading], pivots: tuple[str, ...], priors: Sequence[Prior]
) -> None:
    """Raise MissingReading for the first coordinate with neither a reading nor a prior."""
    taken = {reading.name for reading in readings}
    known = {coordinate for prior in priors for coordinate in prior.coefficients}
    for pivot in pivots:
        for kind in ("height", "offset"):
            if f"{pivot}.{kind}" not in taken:
                raise MissingReading(f"{pivot}.{kind}")
        if f"{pivot}.station" not in taken and f"{pivot}.x" not in known:
            raise MissingReading(f"{pivot}.station")


def _start(readings: list[Reading], pivots: tuple[str, ...], priors: Sequence[Prior]) -> Array:
    """Initial coordinates from heights, offsets, stations and priors alone, array (3 P,)."""
    values = [reading.value for reading in readings] + [prior.value for prior in priors]
    direct = Observations.of(readings, pivots, priors).direct
    return np.asarray(np.linalg.lstsq(direct, np.array(values), rcond=None)[0])


def _step(design: Array, second_order: Array, misfit: Array) -> Array:
    """Newton step; where the Hessian is not positive definite, one that leads downhill.

    That step takes the Hessian with the magnitudes of its eigenvalues.
    """
    hessian, downhill = design.T @ design - second_order, design.T @ misfit
    try:
        np.linalg.cholesky(hessian)
        return np.asarray(np.linalg.solve(hessian, downhill))
    except np.linalg.LinAlgError:
        values, vectors = np.linalg.eigh(hessian)
        steepness = np.maximum(np.abs(values), FLATTEST * np.abs(values).max())
        return np.asarray(vectors @ (vectors.T @ downhill / steepness))


def _conclude(
    pivots: tuple[str, ...],
    used: list[Reading],
    priors: tuple[Prior, ...],
    instruments: Instruments,
    coordinates: Array,
    design: Array,
    u: Array,
    residual: Array,
) -> Adjustment:
    try:
        cofactor: Array = np.asarray(np.linalg.inv(design.T @ design))
    except np.linalg.LinAlgError:
        raise NoSolution(UNSETTLED) from None
    # In units of each source's own u the residuals' covariance is I - A N^-1 A^T.
    checked = np.eye(len(u)) - design @ cofactor @ design.T
    redundancy_numbers = np.clip(np.diag(checked), 0.0, 1.0)
    redundancy = len(u) - len(coordinates)
    items = adjusted_readings(used, instruments, u, residual, redundancy_numbers)
    return Adjustment(
        pivots,
        coordinates.reshape(-1, 3),
        cofactor,
        items,
        priors,
        cofactor @ design.T / u,
        (checked * np.outer(u, u))[: len(used), : len(used)],
        redundancy,
        float(np.sum((residual / u) ** 2)),
        chi_square_limit(redundancy),
    )


def adjusted_readings(
    used: Sequence[Reading],
    instruments: Instruments,
    u: Array,
    residual: Array,
    redundancy_numbers: Array,
) -> tuple[AdjustedReading, ...]:
    """Readings with their residuals.

    Parameters
    ----------
    used : sequence of Reading
    instruments : Instruments
    u, residual, redundancy_numbers : array (n, ...)
        Their rows come first; mm, or rad for slopes.
    """
    items = []
    for reading, u_i, v, r in zip(used, u, residual, redundancy_numbers, strict=False):
        is_checked = r > NOTHING_REDUNDANT
        items.append(
            AdjustedReading(
                reading,
                float(u_i),
                least_uncertainty(reading.kind, instruments),
                repeats_scatter(reading, instruments),
                float(v),
                float(r),
                float(v / (u_i * np.sqrt(r))) if is_checked else None,
                float(DELTA_0 * u_i / np.sqrt(r)) if is_checked else None,
            )
        )
    return tuple(items)
