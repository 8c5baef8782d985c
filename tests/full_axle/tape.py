"""What a tape, a plumb line and an angle finder read of a true vehicle, with their errors.

Every error is rectangular. Of the error of sighting half the variance stays when a reading is
repeated, because the eye takes the same place for the centre again. A height stands on the same
unevenness of the floor each time.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Literal

import numpy as np

from tests.full_axle.rotations import Array
from tests.full_axle.steering import INCH
from tests.full_axle.vehicle import GUIDE_POINTS, Vehicle, on_kingpin

TAPE = INCH / 16
SIGHTING = INCH / 8
FLOOR = INCH / 16
ANGLE_FINDER = np.radians(0.5)
SEATING = np.radians(0.5)
"""Graduations and half-widths of the instruments, mm and rad."""

DATUM = 900.0
"""Distance of the datum line to the left of the vehicle's middle, mm."""

Kind = Literal["height", "offset", "station", "length", "angle"]

KINDS: dict[str, Kind] = {
    "hub_height": "height",
    "left_offset": "offset",
    "right_offset": "offset",
    "slope": "angle",
    "castor": "angle",
    "inclination": "angle",
}
"""Kinds of the readings whose last name is not a kind; any other is a length."""

PIVOTS = ("track_bar.frame", "track_bar.axle", "drag_link.frame", "drag_link.axle")
BRACES = {
    "frame_ends": ("track_bar.frame", "drag_link.frame"),
    "axle_ends": ("track_bar.axle", "drag_link.axle"),
    "frame_to_axle": ("track_bar.frame", "drag_link.axle"),
}

Survey = Callable[[str], bool]
"""True for the name of every reading that is taken."""


@dataclass(frozen=True)
class Workshop:
    """What is wrong in a workshop that the instruments do not claim.

    Attributes
    ----------
    errors : float
        Errors as a multiple of those that the instruments claim.
    floor : float
        Slope of the floor on which the vehicle stands, upward to its left, rad.
    finder : float
        Zero error of the angle finder, rad.
    """

    errors: float = 1.0
    floor: float = 0.0
    finder: float = 0.0


AS_CLAIMED = Workshop()


def everything(_: str) -> bool:
    """All readings."""
    return True


def heights_and_offsets(name: str) -> bool:
    """Heights, offsets and stations of all pivots, arms and kingpin; nothing that checks them."""
    return not name.startswith("braces.") and name.rpartition(".")[2] not in ("length", "slope")


def without_arm_and_stations(name: str) -> bool:
    """Neither the steering arm nor where the pivots of the links stand along the vehicle."""
    of_links = name.startswith(("track_bar.", "drag_link."))
    return name != "steering.arm" and not (of_links and name.endswith(".station"))


def without_guide_and_kingpin(name: str) -> bool:
    """Neither the guide's pivots nor the kingpin: only the kind of guide is known."""
    return not name.startswith(("guide.", "kingpin."))


def kind_of(name: str) -> Kind:
    """Kind of a reading by its name."""
    last = name.rpartition(".")[2]
    if last in ("height", "offset", "station"):
        return last
    return KINDS.get(last, "length")


def true_values(vehicle: Vehicle) -> dict[str, Array]:
    """True values of all readings by name, arrays (N,), mm and rad.

    The guide is read on the left and the kingpin on the side of the steering-arm ball.
    """
    points = vehicle.points
    left_of_guide = {
        f"guide.{name}": points[f"guide.{name}.left"] for name in GUIDE_POINTS[vehicle.guide]
    }
    true = {}
    for name in PIVOTS:
        ahead, left, up = points[name].T
        true |= {f"{name}.height": up, f"{name}.offset": DATUM - left, f"{name}.station": ahead}
    for name, pivot in left_of_guide.items():
        true |= {f"{name}.height": pivot[:, 2], f"{name}.station": pivot[:, 0]}
    for link in ("track_bar", "drag_link"):
        ahead, left, up = (points[f"{link}.frame"] - points[f"{link}.axle"]).T
        true[f"{link}.length"] = np.sqrt(ahead**2 + left**2 + up**2)
        true[f"{link}.slope"] = np.arctan2(up, np.hypot(ahead, left))
    for name, (first, second) in BRACES.items():
        true[f"braces.{name}"] = np.linalg.norm(points[first] - points[second], axis=-1)
    back, inboard, up = (vehicle.kingpins["far"] * [-1, 1, 1]).T
    return true | {
        "guide.span": _span(vehicle),
        "kingpin.castor": np.arctan(back / up),
        "kingpin.inclination": np.arctan(-vehicle.far_side * inboard / up),
        "steering.arm": steering_arm(vehicle),
        "steering.pitman_arm": vehicle.pitman_arm,
        "wheels.hub_height": vehicle.hub_height,
        "wheels.left_offset": DATUM - vehicle.tread / 2,
        "wheels.right_offset": DATUM + vehicle.tread / 2,
    }


def steering_arm(vehicle: Vehicle) -> Array:
    """Length of the far steering arm, or tie-rod arm, seen from above at its ball's height, mm."""
    ball = vehicle.points["drag_link.axle" if vehicle.layout == "knuckle" else "tie_rod.far"]
    return np.linalg.norm((ball - on_kingpin(vehicle, "far", ball[:, 2]))[:, :2], axis=-1)


def read(
    true: Mapping[str, Array],
    rng: np.random.Generator,
    survey: Survey = everything,
    workshop: Workshop = AS_CLAIMED,
) -> dict[str, Array]:
    """Readings of N vehicles, arrays (N, repeats), mm and rad; heights are taken twice."""
    return {
        name: _repeats(kind_of(name), value, rng, workshop.errors)
        for name, value in _in_workshop(true, workshop).items()
        if survey(name)
    }


def _in_workshop(true: Mapping[str, Array], workshop: Workshop) -> dict[str, Array]:
    """Values as the plumb line and the angle finder show them in a workshop.

    The vehicle stands on the floor and leans with it. A plumb line then comes down beside the place
    under a centre, and the angle finder reads a link against the vertical.
    """
    if workshop == AS_CLAIMED:
        return dict(true)
    shown = dict(true)
    for name in PIVOTS:
        aside = true[f"{name}.height"] * np.tan(workshop.floor)
        shown[f"{name}.offset"] = true[f"{name}.offset"] - aside
    for link in ("track_bar", "drag_link"):
        left = np.sign(true[f"{link}.axle.offset"] - true[f"{link}.frame.offset"])
        shown[f"{link}.slope"] = true[f"{link}.slope"] + left * workshop.floor
    return {
        name: value + workshop.finder * (kind_of(name) == "angle") for name, value in shown.items()
    }


def _span(vehicle: Vehicle) -> Array:
    """Distance across between the middles of the left and the right arms, mm."""
    across = [
        np.mean(
            [vehicle.points[f"guide.{name}.{side}"][:, 1] for name in GUIDE_POINTS[vehicle.guide]],
            axis=0,
        )
        for side in ("left", "right")
    ]
    return across[0] - across[1]


def _repeats(kind: Kind, value: Array, rng: np.random.Generator, multiple: float) -> Array:
    repeats = 2 if kind == "height" else 1

    def error(within: float, columns: int) -> Array:
        return multiple * rng.uniform(-within, within, (len(value), columns))

    def sighted(within: float) -> Array:
        half = within / np.sqrt(2)
        return error(half, 1) + error(half, repeats)

    if kind == "angle":
        mark, errors = ANGLE_FINDER, sighted(SEATING)
    elif kind == "station":
        mark, errors = TAPE, sighted(2 * SIGHTING)
    elif kind == "length":
        mark, errors = TAPE, sighted(SIGHTING) + sighted(SIGHTING)
    elif kind == "height":
        mark, errors = TAPE, sighted(SIGHTING) + error(FLOOR, 1)
    else:
        mark, errors = TAPE, sighted(SIGHTING)
    return np.round((value[:, None] + errors) / mark) * mark
