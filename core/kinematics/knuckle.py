"""Knuckles that turn about their kingpins: the ball of a steering arm, and the wheel's heading.

Everything is in the axle's own axes, in which the kingpins stand still. A turn is given by the
tangent of its half, t: its cosine is then (1 - t^2)/(1 + t^2) and its sine 2 t/(1 + t^2).
"""

from dataclasses import dataclass

import numpy as np

from core.kinematics.guide import half_tangent
from core.kinematics.pivots import Direction
from core.kinematics.pose import Pose
from core.kinematics.vectors import ACROSS, UPRIGHT, Array, Scalars, Vector, unit_vector


@dataclass(frozen=True, eq=False)
class Swing:
    """A vector that turns about an axis: its parts along the axis, across it, and aside.

    Turned by a, it is along + across cos a + aside sin a.
    """

    along: Vector
    across: Vector
    aside: Vector

    @classmethod
    def of(cls, vector: Vector, axis: Vector) -> "Swing":
        """Parts of a vector that turns about an axis of length 1 (formula of Rodrigues)."""
        along = axis.times(axis.dot(vector))
        return cls(along, vector.less(along), axis.cross(vector))

    def turned(self, half: Scalars) -> Vector:
        """The vector after a turn, by the tangent of half the turn."""
        scale = 1 / (1 + half * half)
        swung = self.across.times((1 - half * half) * scale).plus(
            self.aside.times(2 * half * scale)
        )
        return self.along.plus(swung)


@dataclass(frozen=True, eq=False)
class Arm:
    """An arm with its ball, which turns about an axis.

    Attributes
    ----------
    ball : Vector
        Ball with the arm at rest, mm.
    swing : Swing
        Arm from its axis to the ball, mm.
    """

    ball: Vector
    swing: Swing

    @classmethod
    def of(cls, ball: Array, arm: Vector, axis: Vector) -> "Arm":
        """An arm that ends at a ball, array (..., 3)."""
        return cls(Vector.of(ball), Swing.of(arm, axis))

    def ball_at(self, half: Scalars) -> Vector:
        """Place of the ball after a turn, mm."""
        pin = self.ball.less(self.swing.along.plus(self.swing.across))
        return pin.plus(self.swing.turned(half))

    def turn_to_reach(self, target: Vector, at_rest: Vector) -> Array:
        """Smallest turn that keeps the ball's distance from a target; nan out of reach.

        Parameters
        ----------
        target : Vector
            Place of the link's other end, mm.
        at_rest : Vector
            Place of that end while the arm is at rest, mm.
        """
        moved = target.less(at_rest)
        growth = moved.dot(target.plus(at_rest).less(self.ball.times(2.0)))
        from_target = self.ball.less(self.swing.across).less(target)
        return half_tangent(
            2 * from_target.dot(self.swing.across), 2 * from_target.dot(self.swing.aside), growth
        )


def kingpin_axis(castor: Scalars, inclination: Scalars, side: int) -> Vector:
    """Direction of a kingpin, of length 1, upward; `side` is +1 left, -1 right.

    Its top leans back by the castor and inboard by the inclination (ISO 8855:2011, 7.2).
    """
    leaning = Vector(-np.tan(castor), -side * np.tan(inclination), 1.0)
    return unit_vector(leaning)


def arm_vector(direction: Direction, length: Scalars, side: int) -> Vector:
    """Vector of an arm from its axis to its ball, mm; `side` decides what inboard is."""
    signed = direction.sign * length
    if direction in (Direction.AHEAD, Direction.BEHIND):
        return Vector(signed, 0.0, 0.0)
    if direction in (Direction.UP, Direction.DOWN):
        return Vector(0.0, 0.0, signed)
    return Vector(0.0, side * signed, 0.0)


def shaft_axis(direction: Direction) -> Vector:
    """Axis of the sector shaft: upright, or across for a pitman arm that points up or down."""
    return ACROSS if direction in (Direction.UP, Direction.DOWN) else UPRIGHT


def heading(pose: Pose, axis: Vector, half: Scalars) -> Array:
    """Heading on the ground of a wheel whose knuckle has turned, to the left positive, rad."""
    spin = Swing.of(ACROSS, axis).turned(half)
    ahead, across, _ = pose.rows
    return np.asarray(np.arctan2(-ahead.dot(spin), across.dot(spin)))


def turn_to_straight(pose: Pose, axis: Vector) -> Array:
    """Turn of a knuckle at which its wheel heads straight ahead."""
    spin = Swing.of(ACROSS, axis)
    ahead, _, _ = pose.rows
    return half_tangent(ahead.dot(spin.across), ahead.dot(spin.aside), ahead.dot(ACROSS))
