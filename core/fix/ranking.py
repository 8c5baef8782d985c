"""The order of the combinations of a search: which of them comes first."""

from dataclasses import dataclass

from core.fix.moves import Move

STEP = 0.05
"""Probabilities in one step of this count as equal."""


@dataclass(frozen=True)
class Candidate:
    """A combination with the figures that it is ordered by.

    Attributes
    ----------
    moves : tuple of Move
    p_true : float
        Probability that it steers true.
    excess : float
        Largest of the three deciding rules as a share of its limit.
    flatness : float
        Sum of both links' slopes, rad.
    place : int
        Place of its set of corrections among all sets.
    """

    moves: tuple[Move, ...]
    p_true: float
    excess: float
    flatness: float
    place: int

    @property
    def order(self) -> tuple[float, ...]:
        """Sort key: fewest corrections, likeliest, smallest sum of rises, flattest pair.

        Where none has a chance, the candidate that comes nearest to the limits goes first.
        """
        return (len(self.moves), *self.likeliest, *self.small, self.place)

    @property
    def small(self) -> tuple[float, float]:
        """Sort key among equally likely candidates of one size: sum of rises, then flatness."""
        return round(sum(abs(move.rise) for move in self.moves), 6), self.flatness

    @property
    def likeliest(self) -> tuple[float, float]:
        """Sort key by probability in steps; by excess where there is no chance at all."""
        steps = round(self.p_true / STEP)
        return -steps, 0.0 if steps else self.excess

    @property
    def is_sure(self) -> bool:
        """True if no candidate can be likelier."""
        return round((1 - self.p_true) / STEP) == 0

    def could_precede(self, other: "Candidate") -> bool:
        """True if it may precede another candidate of its set, whatever its probability."""
        return not other.is_sure or self.small < other.small
