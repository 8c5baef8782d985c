"""The bench: a pivot, the ride height or an arm is moved on trial. Nothing is filed."""

from dataclasses import dataclass, replace

import numpy as np

from core.fix.moves import ARMS, Move
from core.fix.plan import Plan, plan_of
from core.kinematics.pivots import PIVOTS, RIDE_HEIGHT
from core.profiles.corrections import Correction
from core.text.quantity import INCH
from core.verdict.verdict import Verdict

NUDGED = (*PIVOTS, RIDE_HEIGHT, *ARMS)
"""Names of everything that can be nudged."""

STEPS: dict[str, tuple[float, ...]] = {
    "in": (INCH / 16, INCH / 8, INCH / 4, INCH / 2, INCH),
    "mm": (1.0, 2.0, 5.0, 10.0, 25.0),
}
"""Steps of a nudge, smallest first, mm; as many for one unit as for the other."""

BY_HAND = "tried on the bench"
"""Name of the correction of a move that comes from no profile."""

SHORTEST_ARM = INCH
"""mm; the shortest arm that is tried."""


@dataclass(frozen=True, eq=False)
class Bench:
    """A measured vehicle with its nudges, in the order they were made.

    Attributes
    ----------
    verdict : Verdict
    nudges : tuple of (str, float)
        Name (one of NUDGED) and step, mm.
    """

    verdict: Verdict
    nudges: tuple[tuple[str, float], ...] = ()

    @classmethod
    def of(cls, verdict: Verdict, plan: Plan | None = None) -> "Bench":
        """A bench that begins with the moves of a plan, or as measured."""
        if plan is None:
            return cls(verdict)
        linkage = verdict.measured.linkage
        moves = ((move.correction.pivot, move.rise) for move in plan.moves)
        arms = (
            (name, length - float(getattr(linkage, ARMS[name])))
            for name, length in plan.arms.items()
        )
        return cls(verdict, (*moves, *arms))

    def nudged(self, name: str, step: float) -> "Bench":
        """The bench after one more nudge; an arm stops at its shortest length."""
        if name in ARMS:
            now = float(getattr(self.verdict.measured.linkage, ARMS[name])) + self.change(name)
            step = max(step, SHORTEST_ARM - now)
        return replace(self, nudges=(*self.nudges, (name, step)))

    def undone(self) -> "Bench":
        """The bench before the last nudge."""
        return replace(self, nudges=self.nudges[:-1])

    def reset(self) -> "Bench":
        """The bench as it was measured."""
        return replace(self, nudges=())

    def change(self, name: str) -> float:
        """Sum of the nudges of one name, mm."""
        return sum(step for nudged, step in self.nudges if nudged == name)

    @property
    def moves(self) -> tuple[Move, ...]:
        """One move for each pivot that is off its measured place, and for the ride height."""
        return tuple(
            Move(Correction(BY_HAND, name, (change,)), change)
            for name in (*PIVOTS, RIDE_HEIGHT)
            if not np.isclose(change := self.change(name), 0.0)
        )

    @property
    def arms(self) -> dict[str, float]:
        """Arms of another length than measured, by name, mm."""
        linkage = self.verdict.measured.linkage
        return {
            name: float(getattr(linkage, field)) + change
            for name, field in ARMS.items()
            if not np.isclose(change := self.change(name), 0.0)
        }

    def plan(self) -> Plan:
        """The nudges as a plan, with the probability that the vehicle steers true."""
        return plan_of(self.verdict, self.moves, self.arms)
