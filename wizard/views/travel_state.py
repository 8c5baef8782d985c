"""Where the axle is while its travel is looked at: steps, play, reset."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import asin, radians, sin, tau
from typing import Literal

Plays = Literal["", "heave", "roll"]

ROLL_END = radians(8.0)
"""As far as the axle is rolled either way."""

ROUND = 5.0
"""Seconds of a whole round of play."""


@dataclass(frozen=True)
class TravelState:
    """A heave and a roll within the travel, and what is playing.

    Attributes
    ----------
    droop, bump : float
        Travel, both positive, mm.
    heave, roll : float
        mm and rad.
    plays : "heave", "roll" or ""
    phase : float
        Where in its round the play is, rad.
    """

    droop: float
    bump: float
    heave: float = 0.0
    roll: float = 0.0
    plays: Plays = ""
    phase: float = 0.0

    def at_heave(self, heave: float) -> TravelState:
        """At another heave, as far as the travel goes; stopped."""
        return replace(self, heave=min(max(heave, -self.droop), self.bump), plays="")

    def at_roll(self, roll: float) -> TravelState:
        """At another roll, as far as it goes; stopped."""
        return replace(self, roll=min(max(roll, -ROLL_END), ROLL_END), plays="")

    def reset(self) -> TravelState:
        """At ride height and level; stopped."""
        return TravelState(self.droop, self.bump)

    def stopped(self) -> TravelState:
        """As it stands."""
        return replace(self, plays="")

    def playing(self, what: Literal["heave", "roll"]) -> TravelState:
        """Playing heave or roll from where it stands, upwards first."""
        middle, half = self._round(what)
        phase = asin(min(max((getattr(self, what) - middle) / half, -1.0), 1.0))
        return replace(self, plays=what, phase=phase)

    def after(self, seconds: float) -> TravelState:
        """So much later in the play: to and fro, slower towards both ends as on springs."""
        if not self.plays:
            return self
        middle, half = self._round(self.plays)
        phase = self.phase + tau * seconds / ROUND
        value = middle + half * sin(phase)
        if self.plays == "roll":
            return replace(self, roll=value, phase=phase)
        return replace(self, heave=value, phase=phase)

    def _round(self, what: str) -> tuple[float, float]:
        """Middle and half of the way that is played."""
        if what == "roll":
            return 0.0, ROLL_END
        return (self.bump - self.droop) / 2, (self.bump + self.droop) / 2
