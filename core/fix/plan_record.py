"""The [plan] table of a record: the chosen moves and the values that are expected of them."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from math import degrees, isfinite, nan
from typing import Any, NamedTuple

from core.documents.document import value_at, with_value
from core.documents.entries import EntryError, choice_at, quantity_at, text_at, units_of
from core.fix.moves import ARMS, Move
from core.fix.plan import Plan, plan_of
from core.kinematics.pivots import pivots_raised
from core.profiles.corrections import MOVABLE, Correction
from core.profiles.defaults import bounds_of
from core.profiles.profile_tables import LARGEST_RISE
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
    """

    moves: tuple[FiledMove, ...]
    expected: dict[str, float]
    arms: dict[str, float] = field(default_factory=dict)

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
                "pivot": move.correction.pivot,
                "rise": length_text(move.rise),
            }
            for move in plan.moves
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
    return table


def plan_of_document(
    document: Mapping[str, Any], verdict: Verdict, corrections: Sequence[Correction]
) -> Plan | None:
    """The plan of a document, predicted afresh from its moves, or None where it has none.

    Parameters
    ----------
    document : mapping
    verdict : Verdict
        The verdict on the same document.
    corrections : sequence of Correction
        Known corrections. Any other correction keeps its name, its pivot and its rise alone.

    Raises
    ------
    core.documents.entries.EntryError
        The plan is invalid.
    """
    planned = filed_plan(document)
    if planned is None:
        return None
    by_name = {correction.name: correction for correction in corrections}
    moves = tuple(
        Move(by_name.get(name, Correction(name, pivot, (rise,))), rise)
        for name, pivot, rise in planned.moves
    )
    return plan_of(verdict, moves, planned.arms)


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
    )


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
