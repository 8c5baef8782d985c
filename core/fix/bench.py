"""The bench: trial positions of pivots, the ride height and arms, none of which is filed."""

from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np

from core.fix.moves import ARMS, Move
from core.fix.plan import Plan, plan_of
from core.kinematics.linkage import Linkage
from core.kinematics.pivots import DRAG_LINK_ENDS, GUIDE_PIVOTS, PIVOTS, RIDE_HEIGHT
from core.profiles.corrections import Correction
from core.text.quantity import INCH
from core.verdict.verdict import Verdict

STEPS: dict[str, tuple[float, ...]] = {
    "in": (INCH / 16, INCH / 8, INCH / 4, INCH / 2, INCH),
    "mm": (1.0, 2.0, 5.0, 10.0, 25.0),
}
"""Steps of a nudge by unit, smallest first, mm; each unit has the same number of steps."""

BY_HAND = "tried on the bench"
"""Name of the correction of a move that comes from no profile."""

SHORTEST_ARM = INCH
"""Shortest arm that the bench tries, mm."""


def nudged_names(linkage: Linkage) -> tuple[str, ...]:
    """Names of the pivots and lengths of a vehicle that can be nudged; those of its guide last."""
    links = PIVOTS if linkage.has_track_bar else DRAG_LINK_ENDS
    return (*links, RIDE_HEIGHT, *ARMS, *GUIDE_PIVOTS[linkage.guide.kind])


class Nudge(NamedTuple):
    """One step of a pivot or a length.

    Attributes
    ----------
    name : str
        One of the names on the bench.
    step : float
        mm; up, or longer, is positive.
    """

    name: str
    step: float


@dataclass(frozen=True)
class Bench:
    """A measured vehicle with nudges.

    Attributes
    ----------
    verdict : Verdict
    nudges : tuple of Nudge
        In the order in which they were made.
    """

    verdict: Verdict
    nudges: tuple[Nudge, ...] = ()

    @classmethod
    def of(cls, verdict: Verdict, plan: Plan | None = None) -> "Bench":
        """A bench that starts with the moves and the arms of a plan."""
        if plan is None:
            return cls(verdict)
        linkage = verdict.measured.linkage
        moves = (Nudge(step.pivot, step.rise) for move in plan.moves for step in move.steps)
        arms = (
            Nudge(name, length - float(getattr(linkage, ARMS[name])))
            for name, length in plan.arms.items()
        )
        return cls(verdict, (*moves, *arms))

    @property
    def names(self) -> tuple[str, ...]:
        """Names of the pivots and lengths that can be nudged."""
        return nudged_names(self.verdict.measured.linkage)

    def nudged(self, name: str, step: float) -> "Bench":
        """The bench with one more nudge; an arm stops at SHORTEST_ARM."""
        if name in ARMS:
            measured = float(getattr(self.verdict.measured.linkage, ARMS[name]))
            step = max(step, SHORTEST_ARM - (measured + self.change(name)))
        return replace(self, nudges=(*self.nudges, Nudge(name, step)))

    def undone(self) -> "Bench":
        """The bench without its last nudge."""
        return replace(self, nudges=self.nudges[:-1])

    def reset(self) -> "Bench":
        """The bench without nudges."""
        return replace(self, nudges=())

    def change(self, name: str) -> float:
        """Sum of the nudges of one name, mm."""
        return sum(nudge.step for nudge in self.nudges if nudge.name == name)

    @property
    def moves(self) -> tuple[Move, ...]:
        """One move for each pivot, or ride height, whose nudges do not cancel.

        They keep the order of their first nudges, because a guide that was moved turns the axle
        otherwise when the frame rises.
        """
        return tuple(
            Move(Correction(BY_HAND, name, (change,)), change)
            for name in dict.fromkeys(nudge.name for nudge in self.nudges)
            if name not in ARMS and not np.isclose(change := self.change(name), 0.0)
        )

    @property
    def arms(self) -> dict[str, float]:
        """Trial lengths of the arms that were nudged, by name, mm."""
        linkage = self.verdict.measured.linkage
        return {
            name: float(getattr(linkage, field)) + change
            for name, field in ARMS.items()
            if not np.isclose(change := self.change(name), 0.0)
        }

    def plan(self) -> Plan:
        """The nudges as a plan, with its prediction."""
        return plan_of(self.verdict, self.moves, self.arms)
