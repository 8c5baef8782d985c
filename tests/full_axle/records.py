"""Records of true vehicles as their TOML would load, with the readings of a tape."""

from collections.abc import Mapping
from typing import Any

import numpy as np

from tests.full_axle.rotations import Array
from tests.full_axle.steering import INCH, WORKING_TRAVEL
from tests.full_axle.tape import (
    AS_CLAIMED,
    Survey,
    Workshop,
    everything,
    kind_of,
    read,
    true_values,
)
from tests.full_axle.vehicle import LayoutName, Vehicle

PROFILES: dict[LayoutName, str] = {"knuckle": "coil-crossover", "tie-rod": "coil-tie-rod"}

STEER_LIMIT = np.radians(0.5)


def documents(
    vehicle: Vehicle,
    rng: np.random.Generator,
    survey: Survey = everything,
    guide: str | None = None,
    workshop: Workshop = AS_CLAIMED,
) -> list[dict[str, Any]]:
    """One document for each of N vehicles, with readings as their errors were drawn.

    Parameters
    ----------
    vehicle : Vehicle
    rng : Generator
    survey : callable
        The readings that are taken.
    guide : str
        Kind of guide in the record, where it is not the true one: "unmeasured".
    workshop : Workshop
        What is wrong where the readings are taken.
    """
    readings = read(true_values(vehicle), rng, survey, workshop)
    return [
        _document(vehicle, i, {name: values[i] for name, values in readings.items()}, guide)
        for i in range(vehicle.count)
    ]


def _document(
    vehicle: Vehicle, index: int, readings: Mapping[str, Array], guide: str | None
) -> dict[str, Any]:
    document: dict[str, Any] = {
        "format": "evenarc session",
        "format_version": 1,
        "session": {
            "id": f"drawn-{index}",
            "kind": "first",
            "technician": "nobody (invented)",
            "units": "mm",
            "profile": PROFILES[vehicle.layout],
        },
        "vehicle": {"tag": f"DRAWN-{index}", "wheelbase": "110 in"},
        "walk_round": {
            "steering_wheel_diameter": "16 in",
            "rim_play": "1 in",
            "linkage_play": "1/16 in",
            "joints": dict.fromkeys(
                ("track_bar_frame", "track_bar_axle", "drag_link_frame", "drag_link_axle"), "tight"
            ),
        },
        "stance": {
            **dict.fromkeys(
                (
                    "level_floor",
                    "tyres_set",
                    "usual_load",
                    "settled",
                    "wheels_on_ground",
                    "straight_ahead",
                ),
                True,
            ),
            "ride_height": {"left": "21 in", "right": "21 in"},
        },
        "layout": {
            "steering": vehicle.layout,
            "arm": "ahead" if vehicle.arm_side[index] > 0 else "behind",
            "pitman": "ahead" if vehicle.pitman_side[index] > 0 else "behind",
            "guide": guide or vehicle.guide,
            "track_bar": True,
        },
        "instruments": {
            "tape": "1/16 in",
            "sighting": "1/8 in",
            "floor": "1/16 in",
            "angle_finder": "0.5 deg",
            "seating": "0.5 deg",
        },
        "limits": {
            "parallel": "1.5 deg",
            "flat": "10 deg",
            "length_ratio": 0.85,
            "steer": f"{np.degrees(STEER_LIMIT)} deg",
            "toe_change": "0.25 deg",
            "working_travel": dict.fromkeys(("bump", "droop"), f"{WORKING_TRAVEL / INCH} in"),
        },
        "readings": {
            "track_bar": {"bent": False},
            "drag_link": {"bent": False},
            "steering": {"ratio": "16"},
            "travel": {"bump": "4 in", "droop": "4 in"},
        },
    }
    for name, repeats in readings.items():
        *tables, key = name.split(".")
        table = document["readings"]
        for part in tables:
            table = table.setdefault(part, {})
        table[key] = [_typed(name, float(value)) for value in repeats]
    return document


def _typed(name: str, value: float) -> str:
    if kind_of(name) == "angle":
        return f"{np.degrees(value):.1f} deg"
    return f"{value / INCH:.4f} in"  # a sixteenth has four decimals
