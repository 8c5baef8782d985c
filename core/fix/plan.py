"""A plan: corrections to make, arms of other lengths, and the predicted result."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from core.fix.answers import Answer, answer_to
from core.fix.chances import chances_among, chances_of
from core.fix.moves import ARMS, Move, moved_pivots, with_moves
from core.fix.possible import travel_after
from core.fix.prediction import Prediction, prediction_of
from core.kinematics.linkage import Linkage
from core.kinematics.pivots import RIDE_HEIGHT
from core.profiles.conversions import Change
from core.profiles.part import Cost, cost_of
from core.statistics.conformity import SURE
from core.verdict.verdict import Verdict


@dataclass(frozen=True)
class Plan:
    """Moves with their predicted result.

    Attributes
    ----------
    moves : tuple of Move
    after : Prediction
    arms : dict of float
        Arms of another length, by the name of their reading (core.fix.moves.ARMS), mm.
    """

    moves: tuple[Move, ...]
    after: Prediction
    arms: Mapping[str, float] = field(default_factory=dict)

    @property
    def steers_true(self) -> bool:
        """True if the probability suffices for the verdict that the vehicle steers true."""
        return self.after.p_true >= SURE

    @property
    def answer(self) -> Answer:
        """Promise of the plan."""
        return answer_to(self.after.p_true, self.after.excess < self.after.excess_before)

    @property
    def size(self) -> tuple[int, float]:
        """Number of parts, and sum of the rises, mm."""
        parts = len(self.moves) + len(self.arms)
        return parts, round(sum(move.amount for move in self.moves), 6)

    @property
    def cost(self) -> Cost:
        """Cost of the parts."""
        return cost_of([move.correction.part for move in self.moves])

    @property
    def moved(self) -> tuple[str, ...]:
        """Names of the pivots that move."""
        return moved_pivots(self.corrections, self.after.linkage.has_track_bar)

    @property
    def corrections(self) -> tuple[Change, ...]:
        """The corrections of the moves."""
        return tuple(move.correction for move in self.moves)


def plan_of(
    verdict: Verdict,
    moves: tuple[Move, ...],
    arms: Mapping[str, float] | None = None,
    drawn: Linkage | None = None,
) -> Plan:
    """A plan of some moves and arms of other lengths, with its prediction.

    Parameters
    ----------
    verdict : Verdict
        The verdict on the measured vehicle.
    moves : tuple of Move
        A move need not be on offer in the profile.
    arms : mapping of float
        Arms of another length, by the name of their reading (core.fix.moves.ARMS), mm.
    drawn : Linkage
        Geometries drawn from the measured vehicle, where they are at hand.
    """
    arms = arms or {}
    lengths = {ARMS[name]: length for name, length in arms.items()}
    linkage = replace(verdict.measured.linkage, **lengths)  # type: ignore[arg-type]
    with_arms = replace(verdict.measured, linkage=linkage)
    limits = verdict.session.limits
    if drawn is None or arms:
        chances = chances_of(with_arms, moves, limits)
    else:
        chances = chances_among(drawn, moves, limits)
    rise = sum(move.raises(RIDE_HEIGHT) for move in moves)
    travel = travel_after(verdict.session, rise)
    after = prediction_of(verdict, with_moves(linkage, moves), chances, travel)
    return Plan(moves, after, arms)
