"""Readings of the guide and the kingpins: nothing checks one against another.

The guide is measured in the side view: the station of a pivot ahead of the axle's middle, and its
height from the floor. Castor at two heights gives the pitch gain by itself.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from math import sqrt
from typing import Any

from core.documents.entries import EntryError, quantity_at, units_of
from core.documents.tables import tables_at
from core.kinematics.pivots import GUIDE_PIVOTS, GuideKind
from core.readings.reading import Instruments, Kind
from core.text import quantity

CASTOR_LIST = "readings.guide.castor"

KINGPIN: dict[str, Kind] = {"kingpin.castor": "angle", "kingpin.inclination": "angle"}

GUIDE: dict[str, Kind] = {
    "guide.span": "length",
    "guide.pitch_gain": "gain",
    **{
        f"{pivot}.{kind}": kind
        for kind_of_guide in GuideKind
        for pivot in GUIDE_PIVOTS[kind_of_guide]
        for kind in ("height", "station")
    },
}
"""Kind of every reading of the guide, by name."""

SMALLEST_RISE = 5.0
"""mm; two heights of the axle that differ by less give no pitch gain."""


@dataclass(frozen=True)
class CastorReading:
    """An angle finder on one machined face of the axle, with the axle at some height.

    Attributes
    ----------
    heave : float
        Height of the axle above ride height, mm.
    castor : float
        rad; positive where the face's top leans back.
    """

    heave: float
    castor: float


@dataclass(frozen=True)
class PitchGain:
    """Pitch of the axle for its heave, with its standard uncertainty; rad/mm."""

    value: float
    u: float


def castor_readings(document: Mapping[str, Any]) -> tuple[CastorReading, ...]:
    """Castor readings of a document; () where none were taken.

    Raises
    ------
    core.documents.entries.EntryError
        A row is faulty.
    """
    parse = partial(quantity.parse_length, unit=units_of(document))
    return tuple(
        CastorReading(
            _entry(row, place, "heave", parse, "2 in"),
            _entry(row, place, "castor", quantity.parse_angle, "5.5 deg"),
        )
        for place, row in tables_at(document, CASTOR_LIST)
    )


def _entry(
    row: Mapping[str, Any], place: str, key: str, parse: Callable[[str], float], example: str
) -> float:
    """Quantity of one row; `place` names the row in messages."""
    try:
        value = quantity_at(row, key, parse, example)
    except EntryError as error:
        raise EntryError(f"{place}.{key}", str(error).partition(": ")[2]) from None
    if value is None:
        raise EntryError(f"{place}.{key}", f'is missing; it should be such as "{example}"')
    return value


def pitch_gain_of(rows: tuple[CastorReading, ...], instruments: Instruments) -> PitchGain | None:
    """Pitch gain by a straight line through castor readings; None unless two heights differ.

    Castor falls by the pitch. The angle finder stands on the same face each time, so its seating
    does not count: the reading's uncertainty is that of its graduation (GUM 4.3.7).
    """
    if not rows:
        return None
    mean_heave = sum(row.heave for row in rows) / len(rows)
    mean_castor = sum(row.castor for row in rows) / len(rows)
    spread = sum((row.heave - mean_heave) ** 2 for row in rows)
    if max(row.heave for row in rows) - min(row.heave for row in rows) < SMALLEST_RISE:
        return None
    product = sum((row.heave - mean_heave) * (row.castor - mean_castor) for row in rows)
    u_castor = instruments.angle_finder / 2 / sqrt(3)
    return PitchGain(-product / spread, u_castor / sqrt(spread))
