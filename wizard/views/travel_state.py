"""Heave and roll of the axle on the screen of its travel: steps, play, reset."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import asin, radians, sin, tau
from typing import Literal

Axis = Literal["heave", "roll"]
Plays = Axis | Literal[""]

LARGEST_ROLL = radians(8.0)
"""Largest roll to either side, rad."""

PERIOD = 5.0
"""Time of one play to and fro, s."""


@dataclass(frozen=True)
class TravelState:
    """A heave and a roll within the travel, and the movement that is played.

    Attributes
    ----------
    droop, bump : float
        Travel, both positive, mm.
    heave, roll : float
        mm and rad.
    plays : "heave", "roll" or ""
        The movement that is played; "" while the axle stands still.
    phase : float
        Phase of the play, rad.
    """

    droop: float
    bump: float
    heave: float = 0.0
    roll: float = 0.0
    plays: Plays = ""
    phase: float = 0.0

    def at_heave(self, heave: float) -> TravelState:
        """The axle at another heave, limited to the travel; stopped."""
        return replace(self, heave=min(max(heave, -self.droop), self.bump), plays="")

    def at_roll(self, roll: float) -> TravelState:
        """The axle at another roll, limited to the largest roll; stopped."""
        return replace(self, roll=min(max(roll, -LARGEST_ROLL), LARGEST_ROLL), plays="")

    def reset(self) -> TravelState:
        """The axle level at ride height; stopped."""
        return TravelState(self.droop, self.bump)

    def stopped(self) -> TravelState:
        """The axle at the same heave and roll; stopped."""
        return replace(self, plays="")

    def playing(self, axis: Axis) -> TravelState:
        """Play of heave or roll from the present place, upwards first."""
        middle, half = self._range(axis)
        value = self.roll if axis == "roll" else self.heave
        phase = asin(min(max((value - middle) / half, -1.0), 1.0))
        return replace(self, plays=axis, phase=phase)

    def after(self, seconds: float) -> TravelState:
        """State of the play some time later; it slows down towards both ends as on springs."""
        if not self.plays:
            return self
        middle, half = self._range(self.plays)
        phase = self.phase + tau * seconds / PERIOD
        value = middle + half * sin(phase)
        if self.plays == "roll":
            return replace(self, roll=value, phase=phase)
        return replace(self, heave=value, phase=phase)

    def _range(self, axis: Axis) -> tuple[float, float]:
        """Middle and half of the range that is played, mm or rad."""
        if axis == "roll":
            return 0.0, LARGEST_ROLL
        return (self.bump - self.droop) / 2, (self.bump + self.droop) / 2
