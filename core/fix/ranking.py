"""The order of the combinations of a search."""

from dataclasses import dataclass

from core.fix.moves import Move

PROBABILITY_STEP = 0.05
"""Probabilities that round to the same multiple of this step count as equal."""


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
        rises = round(sum(abs(move.rise) for move in self.moves), 6)
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

    def could_precede(self, other: "Candidate") -> bool:
        """True if a higher probability would put this candidate before another one of its set."""
        return not other.is_sure or self.by_merit < other.by_merit
