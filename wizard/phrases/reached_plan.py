"""Planned moves and figures beside those that the work reached."""

from collections.abc import Iterator, Mapping, Sequence
from math import degrees
from typing import Any

from core.documents.entries import EntryError
from core.fix.plan_record import FiledPlan, filed_plan
from core.fix.reached import ReachedMove
from core.text.quantity import LengthUnit, format_length
from core.verdict.verdict import Verdict, rulings_of
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.filed_plan import EXPECTED
from wizard.phrases.reading_names import name_of_pivot, name_of_reading


def reached_plan_facts(
    planned: FiledPlan | None, moves: Sequence[ReachedMove], after: Verdict, unit: LengthUnit
) -> Iterator[Fact]:
    """Planned and reached values of every pivot and every rule."""
    if planned is None:
        return
    for move in moves:
        yield reached_move_fact(move, unit)
    for name, length in planned.arms.items():
        now = after.session.dimensions[name].value
        yield Fact(
            name_of_reading(name),
            f"planned {format_length(length, unit)}, reached {format_length(now, unit)}",
        )
    for key, ruling in rulings_of(after).items():
        if key not in planned.expected:
            continue
        name, rule_unit, decimals = EXPECTED[key]
        scale = degrees(1.0) if rule_unit else 1.0
        values = planned.expected[key], ruling.value
        figures = [f"{abs(scale * value):.{decimals}f}" for value in values]
        yield Fact(name, f"planned {figures[0]} {rule_unit}".rstrip() + f", reached {figures[1]}")


def reached_move_fact(move: ReachedMove, unit: LengthUnit) -> Fact:
    """One pivot that was to move."""
    reached = (
        f"{height_change_words(move.reached, unit)}, give or take {format_length(2 * move.u, unit)}"
    )
    text = f"planned {height_change_words(move.planned, unit)}, reached {reached}"
    if move.fits:
        return Fact(name_of_pivot(move.pivot), f"{text}: as planned", "✓")
    short = format_length(abs(move.planned - move.reached), unit)
    ends = f"it fell short by {short}" if move.fell_short else f"it went {short} too far"
    return Fact(name_of_pivot(move.pivot), f"{text}: {ends}", LOOK)


def height_change_words(rise: float, unit: LengthUnit) -> str:
    """A rise with its way: "1 in up"."""
    return f"{format_length(abs(rise), unit)} {'down' if rise < 0 else 'up'}"


def plan_of_earlier(document: Mapping[str, Any]) -> FiledPlan | None:
    """The plan of an earlier record; one that cannot be read counts as none."""
    try:
        return filed_plan(document)
    except EntryError:
        return None
