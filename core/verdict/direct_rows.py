"""Rows of a direct check as heave and steer, with the covariance of the steer.

The zero is the mean of a wheel's first and last row, which are read at ride height. All rows of a
wheel share it, so their errors are correlated.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import atan, radians, sqrt

import numpy as np

from core.kinematics.vectors import Array
from core.readings.direct import DirectCheck, DirectRow, Side, mean_of
from core.readings.reading import Instruments

TURN_PLATE = radians(0.25)
"""Half-width of an angle that a turn plate shows, rad (common practice, no source)."""

BOARD = 1.6
"""Half-width of the length of a board, or of the distance of a wall, mm."""

PAIRED = 6.0
"""mm; rows of both wheels whose heaves are closer are one place of the axle."""

RETURNED = 3.0
"""Standard uncertainties within which the last row is back at ride height."""

DEPENDENT = 1e-9
"""Part of the largest variance below which a combination of rows says nothing of its own."""

ENDS = (0, -1)
"""Rows at ride height: the first and the last."""


@dataclass(frozen=True, eq=False)
class DirectPoints:
    """Measured steer at n places of the axle.

    Attributes
    ----------
    heave : array (n,)
        mm, bump positive.
    steer : array (n,)
        To the left positive, 0 at ride height, rad. The mean of both wheels where both were read.
    covariance : array (n, n)
        Of the steer, rad2; singular, because the zero comes from the same rows.
    left_share : array (n,)
        Share of the left wheel in the steer: 1, 0, or 1/2 where both wheels were read.
    going : array (n,)
        1 where the jack went up to the place, -1 where it came down, 0 where nobody says.
    closing : float
        Largest height of a wheel's last row above its first row, as a magnitude, mm.
    has_returned : bool
        True if the axle was back at ride height in the last row, as far as a tape tells.
    """

    heave: Array
    steer: Array
    covariance: Array
    left_share: Array
    going: Array
    closing: float
    has_returned: bool


@dataclass(frozen=True)
class _Read:
    """A row as it is used: its place among the rows, and its heave (mm)."""

    index: int
    row: DirectRow
    heave: float


def points_of(
    check: DirectCheck,
    instruments: Instruments,
    gradient_at: Callable[[Array], Array] = np.zeros_like,
) -> DirectPoints:
    """Heave and steer of a direct check.

    Parameters
    ----------
    check : DirectCheck
    instruments : Instruments
    gradient_at : callable
        Steer per heave (rad/mm) at some heaves (mm), by which the doubt of a height counts as
        doubt of the steer.
    """
    angles = np.array([angle_of(check, row) for row in check.rows])
    u_height = np.array([u_of(row.height, instruments.tape / sqrt(12)) for row in check.rows])
    u_angle = np.array([u_of_angle(check, row, instruments) for row in check.rows])
    reads = {side: _reads_of(check, side) for side in check.sides}
    heaves = np.zeros(len(angles))
    for each in (read for wheel in reads.values() for read in wheel):
        heaves[each.index] = each.heave
    variances = u_angle**2 + (gradient_at(heaves) * u_height) ** 2
    places = _paired(list(reads.values()))
    mixing = np.zeros((len(places), len(angles)))
    for place, together in zip(mixing, places, strict=True):
        for each in together:
            share = 1 / len(together)
            place[each.index] += share
            zero = reads[each.row.side]
            for end in ENDS:
                place[zero[end].index] -= share / 2
    closings = [reads[side][-1].row.mean_height - reads[side][0].row.mean_height for side in reads]
    u_closing = sqrt(2) * float(u_height.max())
    closing = max(map(abs, closings))
    return DirectPoints(
        heave=np.array([np.mean([each.heave for each in together]) for together in places]),
        steer=mixing @ angles,
        covariance=mixing * variances @ mixing.T,
        left_share=np.array([_left_share(together) for together in places]),
        going=np.array([_going(together[0].row) for together in places]),
        closing=closing,
        has_returned=closing <= RETURNED * u_closing,
    )


def independent(covariance: Array) -> Array:
    """Independent combinations of rows of a singular covariance (n, n), array (n, r)."""
    values, vectors = np.linalg.eigh(covariance)
    return np.asarray(vectors[:, values > DEPENDENT * values[-1]])


def angle_of(check: DirectCheck, row: DirectRow) -> float:
    """Angle of a wheel to its line, to the left positive, rad.

    The front end of a board, or the mark of a laser, comes nearer to a line on the left where the
    wheel turns to the left.
    """
    if check.method == "turn-plate":
        return mean_of(row.angle)
    assert check.length is not None
    moved = (
        mean_of(row.rear) - mean_of(row.front) if check.method == "board" else -mean_of(row.mark)
    )
    return atan(moved / check.length) * (1 if check.line == "left" else -1)


def u_of_angle(check: DirectCheck, row: DirectRow, instruments: Instruments) -> float:
    """Standard uncertainty of the angle of a row, rad."""
    if check.method == "turn-plate":
        return u_of(row.angle, TURN_PLATE / sqrt(3))
    assert check.length is not None
    tape = instruments.tape / sqrt(12)
    ends = (row.front, row.rear) if check.method == "board" else (row.mark,)
    squares = sum(u_of(end, tape) ** 2 for end in ends)
    # The length of the board scales all angles alike; a row takes the part of its own angle.
    slope = np.tan(angle_of(check, row)) if check.method == "board" else 0.0
    return float(np.hypot(sqrt(squares), slope * BOARD / sqrt(3)) / check.length)


def u_of(repeats: Sequence[float], single: float) -> float:
    """Standard uncertainty of the mean of repeats; their scatter counts where it is larger."""
    scatter = float(np.std(repeats, ddof=1)) if len(repeats) > 1 else 0.0
    return max(single, scatter) / sqrt(len(repeats))


def _reads_of(check: DirectCheck, side: Side) -> list[_Read]:
    """Rows of one wheel with their heaves."""
    rows = [(index, row) for index, row in enumerate(check.rows) if row.side == side]
    ride_height = sum(rows[end][1].mean_height for end in ENDS) / 2
    return [_Read(index, row, ride_height - row.mean_height) for index, row in rows]


def _paired(wheels: list[list[_Read]]) -> list[tuple[_Read, ...]]:
    """Rows of both wheels at one place of the axle together, every other row alone."""
    if len(wheels) == 1:
        return [(each,) for each in wheels[0]]
    left, right = wheels
    free = list(right)
    places: list[tuple[_Read, ...]] = []
    for each in left:
        partner = next((other for other in free if _at_one_place(each, other)), None)
        if partner is not None:
            free.remove(partner)
        places.append((each,) if partner is None else (each, partner))
    places += [(each,) for each in free]
    return sorted(places, key=lambda together: min(each.index for each in together))


def _at_one_place(first: _Read, second: _Read) -> bool:
    return abs(first.heave - second.heave) <= PAIRED and first.row.going == second.row.going


def _left_share(together: tuple[_Read, ...]) -> float:
    return sum(each.row.side == "left" for each in together) / len(together)


def _going(row: DirectRow) -> float:
    return {"up": 1.0, "down": -1.0, "": 0.0}[row.going]
