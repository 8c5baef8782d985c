"""A plan: corrections to make, arms of other lengths, and what they would bring."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from core.fix.chances import chances_of
from core.fix.moves import ARMS, Move, with_moves
from core.fix.prediction import Prediction, predict
from core.profiles.corrections import Correction
from core.statistics.conformity import SURE
from core.verdict.verdict import Verdict


@dataclass(frozen=True, eq=False)
class Plan:
    """Moves, and what they would bring.

    Attributes
    ----------
    moves : tuple of Move
    after : Prediction
    arms : dict of float
        Arms tried in another length, by the name of their reading (core.fix.moves.ARMS), mm.
    """

    moves: tuple[Move, ...]
    after: Prediction
    arms: Mapping[str, float] = field(default_factory=dict)

    @property
    def steers_true(self) -> bool:
        """True if its probability is high enough for the verdict "steers true"."""
        return self.after.p_true >= SURE

    @property
    def corrections(self) -> tuple[Correction, ...]:
        """The corrections that it makes."""
        return tuple(move.correction for move in self.moves)


def plan_of(
    verdict: Verdict, moves: tuple[Move, ...], arms: Mapping[str, float] | None = None
) -> Plan:
    """A plan of some moves, whether they are on offer or not, and of arms of other lengths."""
    arms = arms or {}
    lengths = {ARMS[name]: length for name, length in arms.items()}
    linkage = replace(verdict.measured.linkage, **lengths)  # type: ignore[arg-type]
    with_arms = replace(verdict, measured=replace(verdict.measured, linkage=linkage))
    chances = chances_of(with_arms, moves)
    return Plan(moves, predict(verdict, with_moves(linkage, moves), chances), arms)
