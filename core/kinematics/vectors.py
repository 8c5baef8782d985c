"""Vectors as components ahead, across (to the left) and up, which broadcast one by one."""

from typing import Any, NamedTuple

import numpy as np

Array = np.ndarray[tuple[Any, ...], np.dtype[np.float64]]
Scalars = Array | float


class Vector(NamedTuple):
    """Components of one vector or of many; each is an array (...) or a float, in one unit."""

    ahead: Scalars
    across: Scalars
    up: Scalars

    @classmethod
    def of(cls, points: Array) -> "Vector":
        """Components of an array (..., 3)."""
        return cls(points[..., 0], points[..., 1], points[..., 2])

    def plus(self, other: "Vector") -> "Vector":
        """Sum of two vectors."""
        return Vector(self.ahead + other.ahead, self.across + other.across, self.up + other.up)

    def less(self, other: "Vector") -> "Vector":
        """Difference of two vectors."""
        return Vector(self.ahead - other.ahead, self.across - other.across, self.up - other.up)

    def times(self, factor: Scalars) -> "Vector":
        """The vector with each component multiplied."""
        return Vector(self.ahead * factor, self.across * factor, self.up * factor)

    def dot(self, other: "Vector") -> Scalars:
        """Scalar product."""
        return self.ahead * other.ahead + self.across * other.across + self.up * other.up

    def cross(self, other: "Vector") -> "Vector":
        """Vector product."""
        return Vector(
            self.across * other.up - self.up * other.across,
            self.up * other.ahead - self.ahead * other.up,
            self.ahead * other.across - self.across * other.ahead,
        )

    def as_array(self) -> Array:
        """Array (..., 3) of the broadcast components."""
        return np.stack(np.broadcast_arrays(*self), axis=-1).astype(float)


def unit_vector(vector: Vector) -> Vector:
    """The vector of length 1 in the same direction."""
    return vector.times(1 / np.sqrt(vector.dot(vector)))


UPRIGHT = Vector(0.0, 0.0, 1.0)
ACROSS = Vector(0.0, 1.0, 0.0)
