"""Decisions by probability of conformity (JCGM 106:2012)."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from core.statistics.distributions import normal_cdf


class Conformity(StrEnum):
    """Decision on a value and its limit."""

    WITHIN = "within"
    OUT = "out"
    TOO_CLOSE = "too close to call"


SURE = 0.95
"""Probability from which a value is within; one less it, the probability up to which it is out."""


@dataclass(frozen=True)
class Ruling:
    """A value with its limit and the probability that it conforms.

    Attributes
    ----------
    value, limit, u : float
        In the unit of the value; u is the standard uncertainty.
    p_within : float
        Probability that the true value is within the limit.
    """

    value: float
    limit: float
    u: float
    p_within: float

    @property
    def verdict(self) -> Conformity:
        """Decision at this probability."""
        return decide(self.p_within)


def decide(p_within: float) -> Conformity:
    """Decision at a probability of conformity."""
    if p_within >= SURE:
        return Conformity.WITHIN
    return Conformity.OUT if p_within <= 1 - SURE else Conformity.TOO_CLOSE


def probability_between(value: float, u: float, low: float, high: float) -> float:
    """Probability that a normal quantity lies in an interval (JCGM 106:2012, 7.4)."""
    if u == 0:
        return float(low <= value <= high)
    return normal_cdf((high - value) / u) - normal_cdf((low - value) / u)


def magnitude_ruling(value: float, u: float, limit: float) -> Ruling:
    """Ruling on a signed value whose magnitude has a limit."""
    return Ruling(value, limit, u, probability_between(value, u, -limit, limit))


def combined_decision(decisions: Sequence[Conformity]) -> Conformity:
    """Out if any is out, within if all are within, else too close to call."""
    if Conformity.OUT in decisions:
        return Conformity.OUT
    are_within = all(decision == Conformity.WITHIN for decision in decisions)
    return Conformity.WITHIN if are_within else Conformity.TOO_CLOSE
