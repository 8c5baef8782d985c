"""Handling of a vehicle on the road, as a profile or a record has it."""

from collections.abc import Mapping
from typing import Any

from core.documents.entries import EntryError
from core.documents.tables import quantity_above_zero
from core.kinematics.road_events import Road
from core.text.quantity import parse_mass, parse_number, parse_stiffness

ROAD = ("mass", "front_share", "cornering_front", "cornering_rear")
"""Keys of the table [road]."""

HEAVIEST = 100_000.0
"""kg; no vehicle on the road is heavier."""

STIFFEST = 10e6
"""N/rad; no axle's tyres are stiffer."""


def road_at(tables: Mapping[str, Any]) -> Road:
    """Handling in the table [road].

    Raises
    ------
    core.documents.entries.EntryError
        An entry is missing, or no vehicle can have it.
    """
    road = Road(
        mass=quantity_above_zero(tables, "road.mass", parse_mass, "2300 kg"),
        front_share=quantity_above_zero(tables, "road.front_share", parse_number, "0.55"),
        cornering_front=quantity_above_zero(
            tables, "road.cornering_front", parse_stiffness, "100 kN/rad"
        ),
        cornering_rear=quantity_above_zero(
            tables, "road.cornering_rear", parse_stiffness, "120 kN/rad"
        ),
    )
    if road.mass > HEAVIEST:
        raise EntryError("road.mass", 'should be at most 100,000 kg, such as "2300 kg"')
    if road.front_share >= 1:
        raise EntryError("road.front_share", "should be a share below 1, such as 0.55")
    for key in ("cornering_front", "cornering_rear"):
        if getattr(road, key) > STIFFEST:
            raise EntryError(f"road.{key}", 'should be at most 10,000 kN/rad, such as "100 kN/rad"')
    return road
