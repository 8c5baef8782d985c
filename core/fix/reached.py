"""Planned moves beside the moves that the next session measured."""

from dataclasses import dataclass
from math import hypot, sqrt

from core.fix.plan_record import FiledPlan
from core.kinematics.pivots import PIVOTS
from core.verdict.verdict import Verdict

SIGNIFICANT = 2.0
"""Standard uncertainties beyond which a reached move differs from the planned move."""


@dataclass(frozen=True)
class ReachedMove:
    """A planned move beside the measured move of its pivot.

    Attributes
    ----------
    pivot : str
    planned, reached : float
        Rises, mm.
    u : float
        Standard uncertainty of the reached rise, mm.
    """

    pivot: str
    planned: float
    reached: float
    u: float

    @property
    def fits(self) -> bool:
        """True if the uncertainty explains the difference between planned and reached."""
        return abs(self.reached - self.planned) <= SIGNIFICANT * self.u

    @property
    def fell_short(self) -> bool:
        """True if the pivot moved less far than planned, or in the other direction."""
        return not self.fits and (self.reached - self.planned) * self.planned < 0


def reached_moves(planned: FiledPlan, before: Verdict, after: Verdict) -> tuple[ReachedMove, ...]:
    """One reached move for each pivot that a plan moves, in the order of PIVOTS.

    Parameters
    ----------
    planned : FiledPlan
        The plan of the session before.
    before, after : Verdict
    """
    moves = []
    for pivot in PIVOTS:
        rise = planned.rise(pivot)
        if rise:
            height_before, u_before = _height(before, pivot)
            height_after, u_after = _height(after, pivot)
            reached = height_after - height_before
            moves.append(ReachedMove(pivot, rise, reached, hypot(u_before, u_after)))
    return tuple(moves)


def _height(verdict: Verdict, pivot: str) -> tuple[float, float]:
    """Adjusted height of a pivot above the floor, and its standard uncertainty, mm."""
    row = 3 * verdict.adjustment.pivots.index(pivot) + 2
    height = verdict.adjustment.points.ravel()[row]
    return float(height), sqrt(verdict.adjustment.covariance[row, row])
