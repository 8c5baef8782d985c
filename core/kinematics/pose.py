"""Pose of the axle: where its guide and its track bar let it stand at a heave and a roll.

The axle heaves (bump is positive) and rolls (left wheel up is positive). Its guide moves it ahead
and pitches it. Both sides of the guide share what does not fit, so the axle takes the mean of both
sides and yaws by their difference (kinematic estimate, from memory; exact without roll). The track
bar moves it sideways. A point P of the axle goes to O + (X, Y, h) + Rz(yaw) Ry(pitch) Rx(roll)
(P - O), with O the middle of the axle at hub height.
"""

from dataclasses import dataclass, replace

import numpy as np

from core.kinematics.linkage import Linkage, difference
from core.kinematics.vectors import Scalars, Vector


@dataclass(frozen=True, eq=False)
class Pose:
    """The axle as a rigid body at some heaves and rolls; arrays that broadcast, mm and rad.

    Attributes
    ----------
    middle : Vector
        Middle of the axle at ride height.
    shift : Vector
        Movement of the middle: ahead, across and up.
    pitch, yaw : array (...)
        Positive: top of the axle ahead, axle turned to the left.
    rows : three of Vector
        Rows of the matrix that turns the axle.
    """

    middle: Vector
    shift: Vector
    pitch: Scalars
    yaw: Scalars
    rows: tuple[Vector, Vector, Vector]

    def turned(self, vector: Vector) -> Vector:
        """A vector of the axle in the frame's axes."""
        first, second, third = self.rows
        return Vector(first.dot(vector), second.dot(vector), third.dot(vector))

    def turned_back(self, vector: Vector) -> Vector:
        """A vector of the frame in the axle's axes."""
        first, second, third = self.rows
        return (
            first.times(vector.ahead).plus(second.times(vector.across)).plus(third.times(vector.up))
        )

    def carried(self, point: Vector) -> Vector:
        """Place of a point of the axle."""
        return self.middle.plus(self.shift).plus(self.turned(point.less(self.middle)))

    def seen_from_axle(self, point: Vector) -> Vector:
        """Place that a point of the frame has for the axle at rest."""
        return self.middle.plus(self.turned_back(point.less(self.middle).less(self.shift)))


def pose_at(linkage: Linkage, heave: Scalars, roll: Scalars = 0.0, windup: Scalars = 0.0) -> Pose:
    """Pose of the axle; nan where the guide or the track bar cannot reach.

    Parameters
    ----------
    linkage : Linkage
        Its leading axes broadcast with the other arguments.
    heave : array (...)
        mm, bump positive.
    roll : array (...)
        rad, left wheel up positive.
    windup : array (...)
        Pitch that the brakes add, rad.
    """
    ahead, pitch, yaw = _guided(linkage, heave, roll)
    middle = Vector(0.0, 0.0, linkage.hub_height)
    pitch = pitch + windup
    guided = Pose(middle, Vector(ahead, 0.0, heave), pitch, yaw, rotation(pitch, roll, yaw))
    if linkage.track_bar_frame is None or linkage.track_bar_axle is None:
        return guided
    rest = difference(linkage.track_bar_frame, linkage.track_bar_axle)
    end = guided.carried(Vector.of(linkage.track_bar_axle))
    across = _held_sideways(Vector(*rest), Vector.of(linkage.track_bar_frame).less(end))
    return replace(guided, shift=Vector(ahead, across, heave))


def rotation(pitch: Scalars, roll: Scalars, yaw: Scalars) -> tuple[Vector, Vector, Vector]:
    """Rows of the matrix Rz(yaw) Ry(pitch) Rx(roll)."""
    sine_roll, cosine_roll = np.sin(roll), np.cos(roll)
    sine, cosine = np.sin(pitch), np.cos(pitch)
    sine_yaw, cosine_yaw = np.sin(yaw), np.cos(yaw)
    sine_both, cosine_both = sine * sine_roll, sine * cosine_roll
    return (
        Vector(
            cosine_yaw * cosine,
            cosine_yaw * sine_both - sine_yaw * cosine_roll,
            cosine_yaw * cosine_both + sine_yaw * sine_roll,
        ),
        Vector(
            sine_yaw * cosine,
            sine_yaw * sine_both + cosine_yaw * cosine_roll,
            sine_yaw * cosine_both - cosine_yaw * sine_roll,
        ),
        Vector(-sine, cosine * sine_roll, cosine * cosine_roll),
    )


def _guided(linkage: Linkage, heave: Scalars, roll: Scalars) -> tuple[Scalars, Scalars, Scalars]:
    """Movement ahead (mm), pitch and yaw (rad) that the guide gives the axle."""
    if np.ndim(roll) == 0 and roll == 0:  # both sides of the guide do the same
        both = linkage.guide.path(linkage.hub_height, heave)
        return both.ahead, both.pitch, 0.0
    half_span = linkage.span / 2
    by_roll = half_span * np.sin(roll)
    left = linkage.guide.path(linkage.hub_height, heave + by_roll)
    right = linkage.guide.path(linkage.hub_height, heave - by_roll)
    yaw = np.arctan2(right.ahead - left.ahead, 2 * half_span)
    return (left.ahead + right.ahead) / 2, (left.pitch + right.pitch) / 2, yaw


def _held_sideways(bar: Vector, bar_now: Vector) -> Scalars:
    """Movement across, mm, with which the track bar keeps its length.

    Parameters
    ----------
    bar, bar_now : Vector
        From the axle end to the frame end, at ride height and before the movement across, mm.
    """
    with np.errstate(invalid="ignore"):
        run = np.sqrt(bar.dot(bar) - bar_now.ahead**2 - bar_now.up**2)
    # The frame end stays on the side of the axle end where it is at ride height.
    return bar_now.across - np.copysign(run, bar.across)
