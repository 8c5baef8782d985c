"""The [plan] table of a record, and the moves reached after the work."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from math import degrees, hypot, isfinite
from typing import Any

import numpy as np

from core.documents.document import value_at, with_value
from core.documents.entries import EntryError, quantity_at, text_at, units_of
from core.fix.moves import ARMS, Move
from core.fix.plan import Plan, plan_of
from core.kinematics.pivots import PIVOTS, RIDE_HEIGHT
from core.profiles.corrections import MOVABLE, Correction
from core.readings.survey import LINKS
from core.text import quantity
from core.verdict.verdict import Verdict

SHORT = 2.0
"""Standard uncertainties up to which a move counts as planned."""


@dataclass(frozen=True)
class FiledPlan:
    """The plan of a record; mm and rad.

    Attributes
    ----------
    moves : tuple of (str, str, float)
        Correction, pivot ("ride_height" among them) and rise.
    expected : dict of float
        "parallel", "peak_steer", "peak_toe_change", "track_bar_slope", "drag_link_slope" and
        "length_ratio" expected after the work, where the record has them.
    arms : dict of float
        Arms of another length, by the name of their reading.
    """

    moves: tuple[tuple[str, str, float], ...]
    expected: dict[str, float]
    arms: dict[str, float] = field(default_factory=dict)

    @property
    def moved(self) -> frozenset[str]:
        """Every pivot that the plan moves, "ride_height" among them."""
        return frozenset(pivot for _, pivot, _ in self.moves)

    def rise(self, pivot: str) -> float:
        """Planned rise of a pivot, mm."""
        return sum(
            rise
            for _, moved, rise in self.moves
            if moved == pivot or (moved == RIDE_HEIGHT and pivot.endswith(".frame"))
        )


@dataclass(frozen=True)
class ReachedMove:
    """Planned and reached rise of a pivot, mm."""

    pivot: str
    planned: float
    reached: float
    u: float

    @property
    def fits(self) -> bool:
        """True if the difference is within its uncertainty."""
        return abs(self.reached - self.planned) <= SHORT * self.u

    @property
    def fell_short(self) -> bool:
        """True if the pivot rose less far than planned, or the other way."""
        return not self.fits and (self.reached - self.planned) * self.planned < 0


def plan_table(plan: Plan, unit: quantity.LengthUnit) -> dict[str, Any]:
    """The [plan] table of a record, in the session's unit; a peak that is nan is left out."""
    show = partial(quantity.format_length, unit=unit, decimals=1)
    after = plan.after
    angles = {
        "parallel": after.parallel,
        "peak_steer": after.peak_steer,
        "peak_toe_change": after.peak_toe_change,
        "track_bar_slope": after.slopes[0],
        "drag_link_slope": after.slopes[1],
    }
    table: dict[str, Any] = {
        "moves": [
            {
                "correction": move.correction.name,
                "pivot": move.correction.pivot,
                "rise": show(move.rise),
            }
            for move in plan.moves
        ],
        "set_length": dict(zip(LINKS, map(show, after.lengths), strict=True)),
        "expected": {
            **{
                key: f"{degrees(angle):.4f} deg" for key, angle in angles.items() if isfinite(angle)
            },
            "length_ratio": round(after.length_ratio, 4),
            "p_true": round(after.p_true, 3),
        },
    }
    for name, length in plan.arms.items():
        table = with_value(table, f"arms.{name}", show(length))
    return table


def plan_of_document(
    document: Mapping[str, Any], verdict: Verdict, corrections: Sequence[Correction]
) -> Plan | None:
    """The plan of a document, computed afresh from its moves; None where it has none.

    Parameters
    ----------
    document : mapping
    verdict : Verdict
        On the same document.
    corrections : sequence of Correction
        Known corrections; a correction that is not among them has only its name.

    Raises
    ------
    core.documents.entries.EntryError
    """
    planned = filed_plan(document)
    if planned is None:
        return None
    known = {correction.name: correction for correction in corrections}
    moves = tuple(
        Move(known.get(name, Correction(name, pivot, (rise,))), rise)
        for name, pivot, rise in planned.moves
    )
    return plan_of(verdict, moves, planned.arms)


def filed_plan(document: Mapping[str, Any]) -> FiledPlan | None:
    """The plan of a record, or None where it has none. Raises core.documents.entries.EntryError."""
    if value_at(document, "plan") is None:
        return None
    moves = value_at(document, "plan.moves", [])
    if not isinstance(moves, list):
        raise EntryError("plan.moves", "should be a list of moves")
    unit = units_of(document)
    expected = {
        key: quantity_at(document, f"plan.expected.{key}", parse, "1.5 deg")
        for key, parse in {
            **dict.fromkeys(
                ("parallel", "peak_steer", "peak_toe_change", "track_bar_slope", "drag_link_slope"),
                quantity.parse_angle,
            ),
            "length_ratio": quantity.parse_number,
        }.items()
    }
    length = partial(quantity.parse_length, unit=unit)
    arms = {name: quantity_at(document, f"plan.arms.{name}", length, "6 1/2 in") for name in ARMS}
    return FiledPlan(
        tuple(_move(move, f"moves {i}", unit) for i, move in enumerate(moves, 1)),
        _known(expected),
        _known(arms),
    )


def _known(values: Mapping[str, float | None]) -> dict[str, float]:
    return {key: value for key, value in values.items() if value is not None}


def _move(move: Any, place: str, unit: quantity.LengthUnit) -> tuple[str, str, float]:
    placed = {"plan": {place: move}}
    pivot = text_at(placed, f"plan.{place}.pivot")
    if pivot not in MOVABLE:
        raise EntryError(f"plan.{place}.pivot", f"should be one of {', '.join(MOVABLE)}")
    rise = quantity_at(
        placed, f"plan.{place}.rise", partial(quantity.parse_length, unit=unit), "1 1/2 in"
    )
    if rise is None:
        raise EntryError(f"plan.{place}.rise", 'is missing; it should be such as "1 1/2 in"')
    return text_at(placed, f"plan.{place}.correction", ""), pivot, rise


def reached_moves(planned: FiledPlan, before: Verdict, after: Verdict) -> tuple[ReachedMove, ...]:
    """Planned and reached rise of every pivot with a planned move."""
    found = []
    for pivot in PIVOTS:
        rise = planned.rise(pivot)
        if rise:
            (old, old_u), (new, new_u) = _height(before, pivot), _height(after, pivot)
            found.append(ReachedMove(pivot, rise, new - old, hypot(old_u, new_u)))
    return tuple(found)


def _height(verdict: Verdict, pivot: str) -> tuple[float, float]:
    """Adjusted height of a pivot from the floor and its standard uncertainty, mm."""
    row = 3 * verdict.adjustment.pivots.index(pivot) + 2
    height = verdict.adjustment.points.ravel()[row]
    return float(height), float(np.sqrt(verdict.adjustment.covariance[row, row]))
