"""Least-squares adjustment: one set of pivots out of all readings.

Weighted least squares by Gauss-Newton. The steps include the curvature of the readings, because
without it they do not converge where a reading is inches wrong. The unknowns are the coordinates
of the pivots. The observations are all heights, offsets, stations, lengths, slopes and braces.
Without redundancy the pivots are the readings. `core.adjustment.outliers` finds the readings that
disagree with the rest.

References
----------
W. Baarda, A testing procedure for use in geodetic networks, 1968 (redundancy numbers,
standardized residuals, smallest detectable mistake, delta0 = 4.13).
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from core.adjustment.observation import Observations, curvature, predict
from core.kinematics.vectors import Array
from core.kinematics.pivots import NEAR_BALL, Layout, pivots_of
from core.readings.reading import Instruments, Reading, repeats_scatter, standard_uncertainty
from core.readings.survey import LINKS
from core.statistics.distributions import chi_square_limit

DELTA_0 = 4.13
"""Baarda's non-centrality for a risk of 0.1 % and a power of 80 %."""

CONVERGED = 1e-9
"""Largest last step of a coordinate, mm."""

MOST_STEPS = 100
"""Most steps; five are usual, and mistakes of a foot took about twenty."""

WORSE = 1 + 1e-12
"""Growth of the weighted sum of squares that is only rounding."""

NOTHING_REDUNDANT = 1e-6
"""Redundancy number below which no other reading checks a reading."""


class MissingReading(ValueError):
    """A height or an offset is missing, so a pivot has no place."""

    def __init__(self, name: str) -> None:
        self.name = name
        super().__init__(name)


class NoSolution(ValueError):
    """The steps do not converge to a set of pivots."""


@dataclass(frozen=True)
class AdjustedReading:
    """A reading with its residual from the adjusted pivots; mm, or rad for slopes.

    Attributes
    ----------
    reading : Reading
    u : float
        Standard uncertainty of the mean of its repeats.
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
    scatters: bool
    residual: float
    redundancy_number: float
    w: float | None
    smallest_mistake: float | None


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
    items : tuple of AdjustedReading
    sensitivity : array (3 P, n)
        Change of points.ravel() with each reading.
    residual_covariance : array (n, n)
    redundancy : int
        Observations less unknowns; the sum of the redundancy numbers.
    chi_square, chi_square_limit : float
        Chi-square of the weighted residuals, and its limit at 0.1 %.
    """

    pivots: tuple[str, ...]
    points: Array
    covariance: Array
    items: tuple[AdjustedReading, ...]
    sensitivity: Array
    residual_covariance: Array
    redundancy: int
    chi_square: float
    chi_square_limit: float

    @property
    def closes(self) -> bool:
        """True if the readings agree with each other within their uncertainty."""
        return self.chi_square <= self.chi_square_limit or self.redundancy == 0


def adjust(readings: Sequence[Reading], instruments: Instruments, layout: Layout) -> Adjustment:
    """Adjust the pivots of a layout to all readings.

    Parameters
    ----------
    readings : sequence of Reading
        As from `core.readings.survey.readings_in`; readings that are no
        observation of the pivots (a length without stations) are left out.
    instruments : Instruments
    layout : Layout

    Raises
    ------
    MissingReading
        A pivot's height or offset was not taken.
    NoSolution
        The steps do not converge, which happens only with readings far from any linkage.
    """
    pivots = pivots_of(layout)
    taken = {reading.name for reading in readings}
    for name in (f"{pivot}.{kind}" for pivot in pivots for kind in ("height", "offset")):
        if name not in taken:
            raise MissingReading(name)
    free = _free_coordinates(pivots, taken)
    used = [reading for reading in readings if _observes(reading, taken)]
    value = np.array([reading.value for reading in used])
    u = np.array([standard_uncertainty(reading, instruments) for reading in used])
    observations = Observations.of(used, pivots)

    unknowns, chi_square = _start(used, pivots, free), np.inf
    step = np.zeros_like(unknowns)
    for _ in range(MOST_STEPS):
        points = (free @ unknowns).reshape(-1, 3)
        predicted, jacobian = predict(observations, points)
        misfit = (value - predicted) / u
        if misfit @ misfit > chi_square * WORSE:
            step = step / 2
            unknowns = unknowns - step
        else:
            chi_square = misfit @ misfit
            design = (jacobian @ free) / u[:, None]
            second_order = free.T @ curvature(observations, points, misfit / u) @ free
            step = _step(design, second_order, misfit)
            unknowns = unknowns + step
        if np.abs(step).max() < CONVERGED:
            break
    else:
        raise NoSolution("the readings do not settle on one set of pivots")
    points = (free @ unknowns).reshape(-1, 3)
    residual = predict(observations, points)[0] - value
    return _conclude(pivots, used, instruments, points, free, design, u, residual)


def _step(design: Array, second_order: Array, misfit: Array) -> Array:
    """Newton step where the Hessian is positive definite, else Gauss-Newton step."""
    normal = design.T @ design
    try:
        np.linalg.cholesky(normal - second_order)
    except np.linalg.LinAlgError:
        second_order = np.zeros_like(normal)
    return np.asarray(np.linalg.solve(normal - second_order, design.T @ misfit))


def _conclude(
    pivots: tuple[str, ...],
    used: list[Reading],
    instruments: Instruments,
    points: Array,
    free: Array,
    design: Array,
    u: Array,
    residual: Array,
) -> Adjustment:
    cofactor = np.linalg.inv(design.T @ design)
    # In units of each reading's own u the residuals' covariance is I - A N^-1 A^T.
    checked = np.eye(len(used)) - design @ cofactor @ design.T
    redundancy_numbers = np.clip(np.diag(checked), 0.0, 1.0)
    redundancy = len(used) - free.shape[1]
    items = []
    for reading, u_i, v, r in zip(used, u, residual, redundancy_numbers, strict=True):
        is_checked = r > NOTHING_REDUNDANT
        items.append(
            AdjustedReading(
                reading,
                float(u_i),
                repeats_scatter(reading, instruments),
                float(v),
                float(r),
                float(v / (u_i * np.sqrt(r))) if is_checked else None,
                float(DELTA_0 * u_i / np.sqrt(r)) if is_checked else None,
            )
        )
    return Adjustment(
        pivots,
        points,
        free @ cofactor @ free.T,
        tuple(items),
        free @ cofactor @ design.T / u,
        checked * np.outer(u, u),
        redundancy,
        float(np.sum((residual / u) ** 2)),
        chi_square_limit(redundancy),
    )


def has_stations(link: str, taken: set[str]) -> bool:
    """True if both ends of a link have a station."""
    return {f"{link}.frame.station", f"{link}.axle.station"} <= taken


def _observes(reading: Reading, taken: set[str]) -> bool:
    """True if a reading is an observation of the pivots, given the stations that were taken."""
    if reading.kind == "brace":
        return all(has_stations(link, taken) for link in LINKS)
    link, _, end = reading.name.rpartition(".")[0].partition(".")
    if reading.kind == "length":
        return has_stations(reading.name.partition(".")[0], taken)
    if reading.kind == "station":
        # A lone station still places the steering-arm ball, which the near ball is seen from.
        return (
            reading.name.startswith(NEAR_BALL)
            or has_stations(link, taken)
            or ((link, end) == ("drag_link", "axle"))
        )
    return True


def _free_coordinates(pivots: tuple[str, ...], taken: set[str]) -> Array:
    """Matrix (3 P, unknowns) from the unknowns to all coordinates.

    A link without stations has both ends at x = 0 (track bar) or at the station of the
    steering-arm ball (drag link); the near ball without one stands at that station too.
    """
    rows = {
        f"{pivot}.{axis}": 3 * i + j
        for i, pivot in enumerate(pivots)
        for j, axis in enumerate("xyz")
    }
    groups = [[f"{pivot}.{axis}"] for pivot in pivots for axis in "yz"]
    if has_stations("track_bar", taken):
        groups += [["track_bar.frame.x"], ["track_bar.axle.x"]]
    at_ball = ["drag_link.axle.x"]
    if has_stations("drag_link", taken):
        groups += [["drag_link.frame.x"]]
    else:
        at_ball += ["drag_link.frame.x"]
    if NEAR_BALL in pivots:
        if f"{NEAR_BALL}.station" in taken:
            groups += [[f"{NEAR_BALL}.x"]]
        else:
            at_ball += [f"{NEAR_BALL}.x"]
    if "drag_link.axle.station" in taken:
        groups += [at_ball]
    free = np.zeros((len(rows), len(groups)))
    for column, group in enumerate(groups):
        free[[rows[name] for name in group], column] = 1.0
    return free


def _start(used: list[Reading], pivots: tuple[str, ...], free: Array) -> Array:
    """Initial unknowns from the heights, offsets and stations."""
    read = {reading.name: reading.value for reading in used}
    points = [
        [
            read.get(f"{pivot}.station", 0.0),
            -read[f"{pivot}.offset"],
            read[f"{pivot}.height"],
        ]
        for pivot in pivots
    ]
    # Coordinates that share an unknown start at their mean; the first step settles them.
    return np.asarray(free.T @ np.ravel(points) / free.sum(axis=0))
