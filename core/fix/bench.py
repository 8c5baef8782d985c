"""The bench: what if a pivot, the ride height or an arm were elsewhere. Nothing of it is filed."""

from dataclasses import dataclass, replace

import numpy as np

from core.fix.moves import ARMS, Move
from core.fix.plan import Plan, plan_of
from core.kinematics.pivots import PIVOTS, RIDE_HEIGHT
from core.profiles.corrections import Correction
from core.text.quantity import INCH
from core.verdict.verdict import Verdict

NUDGED = (*PIVOTS, RIDE_HEIGHT, *ARMS)
"""Everything that can be nudged."""

STEPS: dict[str, tuple[float, ...]] = {
    "in": (INCH / 16, INCH / 8, INCH / 4, INCH / 2, INCH),
    "mm": (1.0, 2.0, 5.0, 10.0, 25.0),
}
"""Tape steps to nudge by, smallest first, mm; as many for one unit as for the other."""

BY_HAND = "tried on the bench"
"""Name of a move that comes from no profile."""

SHORTEST_ARM = INCH
"""mm; an arm is not tried out shorter than this."""


@dataclass(frozen=True, eq=False)
class Bench:
    """A measured vehicle with nudges, in the order they were made.

    Attributes
    ----------
    verdict : Verdict
    nudges : tuple of (str, float)
        What was nudged (one of NUDGED) and by how much, mm.
    """

    verdict: Verdict
    nudges: tuple[tuple[str, float], ...] = ()

    @classmethod
    def of(cls, verdict: Verdict, plan: Plan | None = None) -> "Bench":
        """A bench on which a plan is made already."""
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
        """One nudge more; an arm is left at its shortest."""
        if name in ARMS:
            now = float(getattr(self.verdict.measured.linkage, ARMS[name])) + self.change(name)
            step = max(step, SHORTEST_ARM - now)
        return replace(self, nudges=(*self.nudges, (name, step)))

    def undone(self) -> "Bench":
        """Without the last nudge."""
        return replace(self, nudges=self.nudges[:-1])

    def reset(self) -> "Bench":
        """Back where it was measured."""
        return replace(self, nudges=())

    def change(self, name: str) -> float:
        """How far something is from where it was measured, mm."""
        return sum(step for nudged, step in self.nudges if nudged == name)

    @property
    def moves(self) -> tuple[Move, ...]:
        """The nudges of pivots and ride height as moves, each once."""
        return tuple(
            Move(Correction(BY_HAND, name, (change,)), change)
            for name in (*PIVOTS, RIDE_HEIGHT)
            if not np.isclose(change := self.change(name), 0.0)
        )

    @property
    def arms(self) -> dict[str, float]:
        """Lengths that were tried out instead of those measured, by name, mm."""
        linkage = self.verdict.measured.linkage
        return {
            name: float(getattr(linkage, field)) + change
            for name, field in ARMS.items()
            if not np.isclose(change := self.change(name), 0.0)
        }

    def plan(self) -> Plan:
        """What the nudges bring, with the probability that the vehicle then steers true."""
        return plan_of(self.verdict, self.moves, self.arms)
