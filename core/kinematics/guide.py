"""Guides: what arms or leaf springs let one side of the axle do lengthwise.

A guide is measured in the side view on one side of the vehicle and counts as mirrored on the
other side. Stations are mm ahead of the axle's middle, heights mm above the floor. It turns the
heave of its side into the axle's movement ahead and its pitch (positive carries the top of the
axle ahead, ISO 8855:2011, so that castor falls by the pitch).
"""

from dataclasses import dataclass, fields, replace
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from core.kinematics.pivots import GuideKind
from core.kinematics.vectors import Array, Scalars

STEPS_TOGETHER, STEPS_OF_THE_REST = 4, 8
"""Newton steps of two arms: from ride height four reach the last bit of nearly all."""

SMALL_STEP = 1e-7
"""Newton step, rad, after which the error is some 1e-14: it falls with the square."""


class Path(NamedTuple):
    """Movement of one side of the axle at some heaves.

    Attributes
    ----------
    ahead : array (...)
        mm
    pitch : array (...)
        rad
    """

    ahead: Scalars
    pitch: Scalars


@dataclass(frozen=True, eq=False)
class Gains:
    """A guide that was not measured: pitch and movement ahead in proportion to heave.

    Attributes
    ----------
    pitch_gain : array (...)
        rad/mm
    fore_aft_gain : array (...)
        mm/mm
    """

    pitch_gain: Scalars = 0.0
    fore_aft_gain: Scalars = 0.0
    kind = GuideKind.UNMEASURED

    def path(self, hub_height: Scalars, heave: Scalars) -> Path:
        """Movement at a heave of its side, mm."""
        return Path(self.fore_aft_gain * heave, self.pitch_gain * heave)


@dataclass(frozen=True, eq=False)
class RadiusArms:
    """Arms that are one with the axle, which turns about their frame pivot."""

    frame_height: Scalars
    frame_station: Scalars
    kind = GuideKind.RADIUS_ARMS

    def path(self, hub_height: Scalars, heave: Scalars) -> Path:
        """Movement at a heave of its side, mm; nan where the arm cannot reach."""
        # From the pivot to the axle's middle; the turn raises the middle by the heave.
        along, up = -self.frame_station, hub_height - self.frame_height
        pitch = 2 * np.arctan(half_tangent(up, -along, -heave))
        sine, versine = np.sin(pitch), 1 - np.cos(pitch)
        return Path(up * sine - along * versine, pitch)


@dataclass(frozen=True, eq=False)
class TwoArms:
    """A lower and an upper arm, each between a frame pivot and a pivot on the axle."""

    lower_frame_height: Scalars
    lower_frame_station: Scalars
    lower_axle_height: Scalars
    lower_axle_station: Scalars
    upper_frame_height: Scalars
    upper_frame_station: Scalars
    upper_axle_height: Scalars
    upper_axle_station: Scalars
    kind = GuideKind.TWO_ARMS

    def path(self, hub_height: Scalars, heave: Scalars) -> Path:
        """Movement at a heave of its side, mm; nan where an arm cannot reach.

        Both arms keep their lengths: two equations for the movement and the pitch, by Newton's
        method from ride height, for all heaves at once.
        """
        lower = _Arm.of(
            self.lower_frame_height,
            self.lower_frame_station,
            self.lower_axle_height,
            self.lower_axle_station,
            hub_height,
        )
        upper = _Arm.of(
            self.upper_frame_height,
            self.upper_frame_station,
            self.upper_axle_height,
            self.upper_axle_station,
            hub_height,
        )
        shape = np.broadcast_shapes(*(np.shape(value) for value in (*lower, *upper, heave)))
        start = np.zeros(shape)
        ahead, pitch, is_small = _newton(lower, upper, heave, start, start, STEPS_TOGETHER)
        rest = ~is_small & np.isfinite(pitch)
        if rest.any():
            lower, upper = (
                _Arm(*(np.broadcast_to(value, shape)[rest] for value in arm))
                for arm in (lower, upper)
            )
            ahead[rest], pitch[rest], is_small[rest] = _newton(
                lower,
                upper,
                np.broadcast_to(heave, shape)[rest],
                ahead[rest],
                pitch[rest],
                STEPS_OF_THE_REST,
            )
        reached = is_small & (np.abs(pitch) < np.pi / 2)
        return Path(np.where(reached, ahead, np.nan), np.where(reached, pitch, np.nan))


def _newton(
    lower: "_Arm", upper: "_Arm", heave: Scalars, ahead: Array, pitch: Array, steps: int
) -> tuple[Array, Array, NDArray[np.bool_]]:
    """Movement ahead, mm, and pitch, rad, after Newton steps, and where the last one was small."""
    with np.errstate(all="ignore"):
        for _ in range(steps):
            sine, cosine = np.sin(pitch), np.cos(pitch)
            error_l, by_ahead_l, by_pitch_l = lower.error(ahead, sine, cosine, heave)
            error_u, by_ahead_u, by_pitch_u = upper.error(ahead, sine, cosine, heave)
            determinant = by_ahead_l * by_pitch_u - by_ahead_u * by_pitch_l
            step_ahead = (error_u * by_pitch_l - error_l * by_pitch_u) / determinant
            step_pitch = (error_l * by_ahead_u - error_u * by_ahead_l) / determinant
            ahead, pitch = ahead + step_ahead, pitch + step_pitch
            is_small = np.abs(step_pitch) < SMALL_STEP
            if is_small.all():
                break
    return np.asarray(ahead), np.asarray(pitch), np.asarray(is_small)


class _Arm(NamedTuple):
    """An arm in the side view: its axle end from the axle's middle, and from its frame end."""

    station: Scalars
    height: Scalars
    along: Scalars
    up: Scalars

    @classmethod
    def of(
        cls,
        frame_height: Scalars,
        frame_station: Scalars,
        axle_height: Scalars,
        axle_station: Scalars,
        hub_height: Scalars,
    ) -> "_Arm":
        return cls(
            axle_station,
            axle_height - hub_height,
            axle_station - frame_station,
            axle_height - frame_height,
        )

    def error(
        self, ahead: Scalars, sine: Scalars, cosine: Scalars, heave: Scalars
    ) -> tuple[Scalars, Scalars, Scalars]:
        """Growth of the squared length, and its derivatives by movement ahead and by pitch."""
        aside = ahead + self.station * (cosine - 1) + self.height * sine
        raised = heave + self.height * (cosine - 1) - self.station * sine
        along, up = self.along + aside, self.up + raised
        growth = (self.along + along) * aside + (self.up + up) * raised
        by_pitch = along * (self.height * cosine - self.station * sine)
        by_pitch = by_pitch - up * (self.station * cosine + self.height * sine)
        return growth, 2 * along, 2 * by_pitch


@dataclass(frozen=True, eq=False)
class LeafSpring:
    """A leaf spring between its fixed eye and a shackle, with its seat clamped to the axle.

    The seat is a point of the axle. It goes on a circle about a centre on the line from the eye
    to the seat. The equivalent arm of a leaf spring is about three quarters of the distance from
    eye to seat, and its frame-side end lies a quarter of the way along (SAE leaf-spring manual,
    from memory).

    Attributes
    ----------
    eye_height, eye_station, seat_height, seat_station : array (...)
        mm
    pitch_gain : array (...)
        rad/mm
    effective_length : array (...)
        Length of the equivalent arm as a share of the distance from eye to seat.
    """

    eye_height: Scalars
    eye_station: Scalars
    seat_height: Scalars
    seat_station: Scalars
    pitch_gain: Scalars = 0.0
    effective_length: Scalars = 0.75
    kind = GuideKind.LEAF

    def path(self, hub_height: Scalars, heave: Scalars) -> Path:
        """Movement at a heave of its side, mm; nan where the spring cannot reach."""
        pitch = self.pitch_gain * heave
        station, height = self.seat_station, self.seat_height - hub_height
        along = self.effective_length * (self.seat_station - self.eye_station)
        up = self.effective_length * (self.seat_height - self.eye_height)
        sine, less = np.sin(pitch), np.cos(pitch) - 1
        raised = heave + height * less - station * sine
        reach = along * along + up * up - (up + raised) * (up + raised)
        moved = np.copysign(np.sqrt(reach), along) - along
        return Path(moved - station * less - height * sine, pitch)


Guide = Gains | RadiusArms | TwoArms | LeafSpring


def half_tangent(cosine_part: Scalars, sine_part: Scalars, at_rest: Scalars) -> Array:
    """Tangent of half the turn a nearest zero with A (cos a - 1) + B sin a + g = 0.

    With t = tan(a/2) it is (g - 2 A) t^2 + 2 B t + g = 0. The smaller root is written so that it
    does not cancel. It is nan where there is no such turn.

    Parameters
    ----------
    cosine_part, sine_part, at_rest : array (...)
        A, B and g, in one unit.
    """
    with np.errstate(invalid="ignore", divide="ignore"):
        root = np.sqrt(sine_part * sine_part - at_rest * (at_rest - 2 * cosine_part))
        return np.asarray(-at_rest / (sine_part + np.copysign(root, sine_part)))


def guide_values(guide: Guide) -> dict[str, Scalars]:
    """Values of a guide by the name of their reading: "guide.frame.height"."""
    return {reading_name(field.name): getattr(guide, field.name) for field in fields(guide)}


def with_guide_values(guide: Guide, values: dict[str, Scalars]) -> Guide:
    """The guide with other values, by the name of their reading."""
    changes: dict[str, Any] = {_attribute(name): value for name, value in values.items()}
    return replace(guide, **changes)


def guide_of(kind: GuideKind, values: dict[str, Scalars]) -> Guide:
    """A guide of a kind from its values, by the name of their reading."""
    return _CLASSES[kind](**{_attribute(name): value for name, value in values.items()})


def guide_readings(kind: GuideKind) -> tuple[str, ...]:
    """Names of the values that a kind of guide has: "guide.frame.height"."""
    return tuple(reading_name(field.name) for field in fields(_CLASSES[kind]))


_CLASSES: dict[GuideKind, type[Guide]] = {
    GuideKind.UNMEASURED: Gains,
    GuideKind.RADIUS_ARMS: RadiusArms,
    GuideKind.TWO_ARMS: TwoArms,
    GuideKind.LEAF: LeafSpring,
}


def reading_name(attribute: str) -> str:
    """Name of the reading of an attribute: "guide.frame.height" of "frame_height"."""
    pivot, _, kind = attribute.rpartition("_")
    return f"guide.{pivot}.{kind}" if kind in ("height", "station") else f"guide.{attribute}"


def _attribute(reading: str) -> str:
    return reading.removeprefix("guide.").replace(".", "_")
