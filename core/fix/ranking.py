"""The order of the combinations of a search."""

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal, get_args

from core.fix.moves import Move
from core.profiles.part import Cost, Part, cost_of
from core.statistics.conformity import SURE

By = Literal["parts", "price", "hours"]
"""What plans are ordered by."""

ORDERS: tuple[By, ...] = get_args(By)

PROBABILITY_STEP = 0.05
"""Probabilities that round to the same multiple of this step count as equal."""


def known_orders(parts: Sequence[Part]) -> tuple[By, ...]:
    """Orders in which plans of these parts can differ; price and hours count only where known."""
    orders: list[By] = ["parts"]
    if any(part.price is not None for part in parts):
        orders.append("price")
    if any(part.hours is not None for part in parts):
        orders.append("hours")
    return tuple(orders)


@dataclass(frozen=True)
class Candidate:
    """A combination with the values that decide its place in the order.

    Attributes
    ----------
    moves : tuple of Move
    p_true : float
        Probability that the vehicle then steers true.
    excess : float
        Largest of the three deciding rules as a share of its limit.
    peak_step : float
        Peak steer in whole tenths of its limit.
    flatness : float
        Sum of the magnitudes of both links' slopes, rad.
    place : int
        Place of the set of corrections among all sets.
    """

    moves: tuple[Move, ...]
    p_true: float
    excess: float
    peak_step: float
    flatness: float
    place: int

    @property
    def order(self) -> tuple[float, ...]:
        """Sort key: fewest corrections, highest probability, smallest peak steer, least moved.

        Candidates without a chance are ordered by their excess in place of their probability.
        """
        return (len(self.moves), *self.by_probability, *self.by_merit, self.place)

    @property
    def by_merit(self) -> tuple[float, float, float]:
        """Sort key of equally likely candidates of one size.

        Peak steer in tenths of its limit, then the sum of rises, mm, then flatness, rad.
        """
        rises = round(sum(move.amount for move in self.moves), 6)
        return self.peak_step, rises, self.flatness

    @property
    def by_probability(self) -> tuple[float, float]:
        """Sort key by probability in steps, and by excess where the probability is zero steps."""
        steps = round(self.p_true / PROBABILITY_STEP)
        return -steps, 0.0 if steps else self.excess

    @property
    def is_sure(self) -> bool:
        """True if no candidate can have a higher probability, in steps."""
        return round((1 - self.p_true) / PROBABILITY_STEP) == 0

    @property
    def is_promising(self) -> bool:
        """True if its estimate leaves it a chance to steer true."""
        return self.p_true >= SURE - PROBABILITY_STEP

    @property
    def cost(self) -> Cost:
        """Cost of the parts."""
        return cost_of([move.correction.part for move in self.moves])

    def could_precede(self, other: "Candidate") -> bool:
        """True if a higher probability would put this candidate before another one of its set."""
        return not other.is_sure or self.by_merit < other.by_merit


CostKey = Callable[[Candidate], tuple[float, float, Decimal]]
"""Sort key of a candidate by what it costs."""


def cost_key(by: By, candidates: Sequence[Candidate]) -> CostKey:
    """Sort key of candidates by what they cost; what is not known comes last.

    Amounts of different currencies are not compared: the currency of most candidates comes first.

    Parameters
    ----------
    by : "parts", "price" or "hours"
        By parts all candidates are equal: their order counts the parts already.
    candidates : sequence of Candidate
        All that are put in order.
    """
    prices = [price for candidate in candidates if (price := candidate.cost.price)]
    count = Counter(price.currency for price in prices)
    ranked = sorted(count, key=lambda currency: (-count[currency], currency))

    def key(candidate: Candidate) -> tuple[float, float, Decimal]:
        cost, nothing = candidate.cost, Decimal(0)
        if by == "price" and cost.price:
            return 0, ranked.index(cost.price.currency), cost.price.amount
        if by == "hours" and cost.hours is not None:
            return 0, cost.hours, nothing
        return 1, 0, nothing

    return key
