"""Handling on the road."""

from collections.abc import Mapping
from typing import Any

from core.kinematics.road_events import Road


def road_at(tables: Mapping[str, Any]) -> Road:
    """Shim."""
    return Road(2300.0, 0.55, 95e3, 110e3)
