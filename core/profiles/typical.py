"""Typical geometry of a kind of axle, as its [typical] table has it: common practice, no source.

It serves to plan a lift without a vehicle. Its entries have the names of readings.
"""

from collections.abc import Mapping
from typing import Any

from core.documents.document import value_at, with_value
from core.documents.entries import EntryError, quantity_at
from core.documents.tables import Parse, angle_with_unit, length_with_unit
from core.kinematics.pivots import GUIDE_PIVOTS, GuideKind, Layout, pivots_of
from core.text.quantity import parse_angle_per_length, parse_number

_LENGTHS = (
    *("steering.arm", "steering.pitman_arm", "tie_rod.near_arm", "tie_rod.joint_from_far_ball"),
    *("wheels.hub_height", "wheels.left_offset", "wheels.right_offset", "guide.span"),
    *(
        f"{pivot}.{coordinate}"
        for pivot in pivots_of(Layout.INVERTED_Y)
        for coordinate in ("height", "offset", "station")
    ),
    *(
        f"{pivot}.{coordinate}"
        for kind in GuideKind
        for pivot in GUIDE_PIVOTS[kind]
        for coordinate in ("height", "station")
    ),
)

_PARSED: dict[str, tuple[Parse, str]] = {
    **dict.fromkeys(_LENGTHS, (length_with_unit, "20 1/2 in")),
    "steering.ratio": (parse_number, "16"),
    "kingpin.castor": (angle_with_unit, "5 deg"),
    "kingpin.inclination": (angle_with_unit, "9 deg"),
    "guide.pitch_gain": (parse_angle_per_length, "-0.7 deg/in"),
}

TYPICAL = tuple(_PARSED)
"""Readings that a [typical] table can have, by name."""


def refuse_faulty_typical(tables: Mapping[str, Any]) -> None:
    """Check the [typical] table of a profile, where there is one.

    Raises
    ------
    core.documents.entries.EntryError
        An entry is missing or is not what it should be.
    """
    if value_at(tables, "typical") is None:
        return
    for name, (parse, example) in _PARSED.items():
        quantity_at(tables, f"typical.{name}", parse, example)
    layout = Layout(str(value_at(tables, "layout.steering")))
    for name in _required(layout, value_at(tables, "layout.track_bar") is True):
        if value_at(tables, f"typical.{name}") is None:
            example = _PARSED[name][1]
            raise EntryError(f"typical.{name}", f'is missing; it should be such as "{example}"')


def _required(layout: Layout, has_track_bar: bool) -> tuple[str, ...]:
    """Readings without which there is no linkage, or no centre plane."""
    pivots = pivots_of(layout, has_track_bar)
    coordinates = ("height", "offset", "station")
    return (
        *(f"{pivot}.{coordinate}" for pivot in pivots for coordinate in coordinates),
        *("wheels.hub_height", "wheels.left_offset", "wheels.right_offset"),
    )


def typical_document(tables: Mapping[str, Any]) -> dict[str, Any] | None:
    """A document with the typical geometry of a profile as its readings; None without one.

    Parameters
    ----------
    tables : mapping
        The tables of the profile, which were checked when it was loaded.
    """
    typical = value_at(tables, "typical")
    if typical is None:
        return None
    in_mm = "mm" in str(value_at(typical, "wheels.hub_height"))
    document: dict[str, Any] = {
        "session": {
            "id": f"typical {tables['name']}",
            "profile": tables["name"],
            "units": "mm" if in_mm else "in",
        },
        "vehicle": {"tag": f"typical {tables['name']}"},
        "layout": {**tables["layout"], "steering_box": "left"},
    }
    for name in TYPICAL:
        value = value_at(typical, name)
        if value is not None:
            entry = value if name == "steering.ratio" else [value]
            document = with_value(document, f"readings.{name}", entry)
    return document
