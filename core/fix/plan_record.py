"""The [plan] table of a record: the chosen moves and the values that are expected of them."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from math import degrees, isfinite, nan
from typing import Any, NamedTuple

from core.documents.document import value_at, with_value
from core.documents.entries import EntryError, choice_at, quantity_at, text_at, units_of
from core.documents.tables import tables_at
from core.fix.moves import ARMS, Move
from core.fix.plan import Plan, plan_of
from core.fix.possible import conversion_of
from core.kinematics.pivots import pivots_raised
from core.profiles.conversions import Change, Conversion, conversion_at
from core.profiles.correction_tables import LARGEST_RISE
from core.profiles.corrections import MOVABLE, Correction, PivotStep
from core.profiles.defaults import bounds_of
from core.readings.survey import LINKS
from core.text import quantity
from core.verdict.verdict import Verdict

EXPECTED_ANGLES = (
    "parallel",
    "effective",
    "peak_steer",
    "peak_toe_change",
    "track_bar_slope",
    "drag_link_slope",
)
"""Angles that the table expects after the moves."""


class FiledMove(NamedTuple):
    """One move of a filed plan.

    Attributes
    ----------
    correction : str
        Name of the correction; empty where the record has none.
    pivot : str
        One of core.profiles.corrections.MOVABLE.
    rise : float
        mm
    """

    correction: str
    pivot: str
    rise: float


@dataclass(frozen=True)
class FiledPlan:
    """The plan in a record.

    Attributes
    ----------
    moves : tuple of FiledMove
    expected : dict of float
        Expected values by name, where the record has them: EXPECTED_ANGLES in rad, and
        "length_ratio".
    arms : dict of float
        Arms of another length, by the name of their reading (core.fix.moves.ARMS), mm.
    conversions : dict of Conversion
        The conversions among the moves, by name. Each of their steps is a move as well.
    """

    moves: tuple[FiledMove, ...]
    expected: dict[str, float]
    arms: dict[str, float] = field(default_factory=dict)
    conversions: dict[str, Conversion] = field(default_factory=dict)

    @property
    def moved(self) -> frozenset[str]:
        """Names of the pivots that the plan moves; "ride_height" may be among them."""
        return frozenset(move.pivot for move in self.moves)

    def rise(self, pivot: str) -> float:
        """Planned rise of a pivot, mm; the ride height counts for both frame ends."""
        return sum(move.rise for move in self.moves if pivot in pivots_raised(move.pivot))


def plan_table(plan: Plan, unit: quantity.LengthUnit) -> dict[str, Any]:
    """The [plan] table of a record, without a peak during which a link binds.

    Parameters
    ----------
    plan : Plan
    unit : "in" or "mm"
        The units of the session.
    """
    length_text = partial(quantity.format_length, unit=unit, decimals=1)
    after = plan.after
    angles = {
        "parallel": nan if after.parallel is None else after.parallel,
        "effective": after.effective,
        "peak_steer": after.peak_steer,
        "peak_toe_change": after.peak_toe_change,
        "track_bar_slope": after.slopes[0],
        "drag_link_slope": after.slopes[1],
    }
    table: dict[str, Any] = {
        "moves": [
            {
                "correction": move.correction.name,
                "pivot": step.pivot,
                "rise": length_text(step.rise),
            }
            for move in plan.moves
            for step in move.steps
        ],
        "set_length": {
            link: length_text(length)
            for link, length in zip(LINKS, after.lengths, strict=True)
            if isfinite(length)
        },
        "expected": {
            **{
                key: f"{degrees(angle):.4f} deg" for key, angle in angles.items() if isfinite(angle)
            },
            **(
                {"length_ratio": round(after.length_ratio, 4)}
                if isfinite(after.length_ratio)
                else {}
            ),
            "p_true": round(after.p_true, 3),
        },
    }
    for name, length in plan.arms.items():
        table = with_value(table, f"arms.{name}", length_text(length))
    conversions = [
        _conversion_table(move.correction, length_text)
        for move in plan.moves
        if isinstance(move.correction, Conversion)
    ]
    return {**table, "conversions": conversions} if conversions else table


def _conversion_table(
    conversion: Conversion, length_text: Callable[[float], str]
) -> dict[str, Any]:
    """A conversion as a file has it, so that the record needs no parts shelf."""
    table: dict[str, Any] = {
        "name": conversion.name,
        "caution": conversion.caution,
        "moves": [_step_table(step, length_text) for step in conversion.moves],
    }
    layout = {
        "steering": conversion.steering,
        "arm": conversion.arm,
        "pitman": conversion.pitman,
    }
    if present := {key: str(value) for key, value in layout.items() if value is not None}:
        table["layout"] = present
    for name, value in conversion.readings.items():
        text = length_text(value)
        if name == "kingpin.castor":
            text = f"{degrees(value):.4f} deg"
        elif name == "steering.ratio":
            text = f"{value:g}"
        table = with_value(table, f"readings.{name}", text)
    return table


def _step_table(step: PivotStep, length_text: Callable[[float], str]) -> dict[str, str]:
    """One step of a conversion, without the coordinates that stay."""
    lengths = {
        "rise": step.rise or None,
        "to_station": step.to_station,
        "to_offset": step.to_offset,
    }
    return {
        "pivot": step.pivot,
        **{key: length_text(value) for key, value in lengths.items() if value is not None},
    }


def plan_of_document(
    document: Mapping[str, Any], verdict: Verdict, corrections: Sequence[Change]
) -> Plan | None:
    """The plan of a document, predicted afresh from its moves, or None where it has none.

    Parameters
    ----------
    document : mapping
    verdict : Verdict
        The verdict on the same document.
    corrections : sequence of Correction and Conversion
        Known changes. Any other correction keeps its name, its pivot and its rise alone. A
        conversion is made as the document has it.

    Raises
    ------
    core.documents.entries.EntryError
        The plan is invalid.
    """
    planned = filed_plan(document)
    if planned is None:
        return None
    by_name = {correction.name: correction for correction in corrections}
    moves: list[Move] = []
    for name, conversion in planned.conversions.items():
        part = by_name[name].part if name in by_name else conversion.part
        moves.append(Move(conversion_of(verdict.session, replace(conversion, part=part))))
    for name, pivot, rise in planned.moves:
        if name in planned.conversions:
            continue
        change = by_name.get(name)
        if not isinstance(change, Correction) or change.pivot != pivot:
            change = Correction(name, pivot, (rise,))
        moves.append(Move(change, rise))
    return plan_of(verdict, tuple(moves), planned.arms)


def filed_plan(document: Mapping[str, Any]) -> FiledPlan | None:
    """The plan of a record, or None where it has none.

    Raises
    ------
    core.documents.entries.EntryError
        The plan is invalid.
    """
    if value_at(document, "plan") is None:
        return None
    moves = value_at(document, "plan.moves", [])
    if not isinstance(moves, list):
        raise EntryError("plan.moves", "should be a list of moves")
    unit = units_of(document)
    expected = {
        key: quantity_at(document, f"plan.expected.{key}", parse, "1.5 deg")
        for key, parse in {
            **dict.fromkeys(EXPECTED_ANGLES, quantity.parse_angle),
            "length_ratio": quantity.parse_number,
        }.items()
    }
    length = partial(quantity.parse_length, unit=unit)
    arms = {name: quantity_at(document, f"plan.arms.{name}", length, "6 1/2 in") for name in ARMS}
    for name, arm in arms.items():
        if arm is not None and not bounds_of(name).holds(arm):
            raise EntryError(f"plan.arms.{name}", bounds_of(name).expected)
    return FiledPlan(
        tuple(_move(move, f"moves {i}", unit) for i, move in enumerate(moves, 1)),
        _present(expected),
        _present(arms),
        _conversions(document),
    )


def _conversions(document: Mapping[str, Any]) -> dict[str, Conversion]:
    """The conversions of a plan, by name."""
    plan = value_at(document, "plan")
    placed = {f"plan, {place}": table for place, table in tables_at(plan, "conversions")}
    conversions = [conversion_at(placed, place) for place in placed]
    return {conversion.name: conversion for conversion in conversions}


def _present(values: Mapping[str, float | None]) -> dict[str, float]:
    """The values that the record has."""
    return {key: value for key, value in values.items() if value is not None}


def _move(move: Any, place: str, unit: quantity.LengthUnit) -> FiledMove:
    """One entry of plan.moves; `place` is its key in messages."""
    placed = {"plan": {place: move}}
    pivot = choice_at(placed, f"plan.{place}.pivot", MOVABLE)
    rise = quantity_at(
        placed, f"plan.{place}.rise", partial(quantity.parse_length, unit=unit), "1 1/2 in"
    )
    if rise is None:
        raise EntryError(f"plan.{place}.rise", 'is missing; it should be such as "1 1/2 in"')
    if abs(rise) > LARGEST_RISE:
        raise EntryError(f"plan.{place}.rise", 'should be at most 1 m, such as "1 1/2 in"')
    return FiledMove(text_at(placed, f"plan.{place}.correction", ""), pivot, rise)
