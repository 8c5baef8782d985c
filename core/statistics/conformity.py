"""Decisions by probability of conformity (JCGM 106:2012), and their words."""

from dataclasses import dataclass

from core.statistics.distributions import normal_cdf

WITHIN, OUT, TOO_CLOSE = "within", "out", "too close to call"

SURE = 0.95
"""Probability from which a rule is called within, and below one less which it is called out."""


@dataclass(frozen=True, eq=False, repr=False)
class Ruling:
    """A value held to its limit.

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
    def verdict(self) -> str:
        """ "within", "out" or "too close to call"."""
        return decide(self.p_within)


def decide(p_within: float) -> str:
    """The verdict that a probability of conformity carries."""
    if p_within >= SURE:
        return WITHIN
    return OUT if p_within <= 1 - SURE else TOO_CLOSE


def p_between(value: float, u: float, low: float, high: float) -> float:
    """Probability that a normal quantity lies in an interval (JCGM 106:2012, 7.4)."""
    if u == 0:
        return float(low <= value <= high)
    return normal_cdf((high - value) / u) - normal_cdf((low - value) / u)


def hold(value: float, u: float, limit: float) -> Ruling:
    """A signed quantity held to a limit on its magnitude."""
    return Ruling(value, limit, u, p_between(value, u, -limit, limit))


def worst(verdicts: list[str]) -> str:
    """`out` if any is out, `within` if all are within, else `too close to call`."""
    if OUT in verdicts:
        return OUT
    return WITHIN if all(verdict == WITHIN for verdict in verdicts) else TOO_CLOSE
