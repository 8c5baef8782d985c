"""A comparison in words: the outcome, the control points, planned and reached values."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from math import degrees, nan
from typing import Any

from core.documents.entries import EntryError
from core.fix.comparison import Comparison, Control, FixOutcome
from core.fix.plan_record import FiledPlan, ReachedMove, filed_plan
from core.text.quantity import LengthUnit, format_length
from core.verdict.verdict import Verdict
from wizard.phrases.amounts import listed
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.reading_names import name_of_pivot, name_of_reading
from wizard.phrases.session_names import opening_time
from wizard.phrases.verdict_words import mark_and_word, mark_of

EXPECTED = {
    "parallel": ("parallel", "deg", 1),
    "peak_steer": ("peak steer", "deg", 2),
    "peak_toe_change": ("toe change", "deg", 2),
    "track_bar_slope": ("track bar slope", "deg", 1),
    "drag_link_slope": ("drag link slope", "deg", 1),
    "length_ratio": ("near in length", "", 2),
}
"""Name, unit and decimals of each value that a plan expects."""


def fix_outcome_facts(
    earlier: Mapping[str, Any],
    later: Mapping[str, Any],
    before: Verdict,
    after: Verdict,
    comparison: Comparison,
) -> Iterator[Fact]:
    """The outcome in a sentence, and the verdicts it rests on."""
    yield Fact("", fix_outcome_words(after, comparison), mark_of(comparison.outcome))
    yield Fact("", f"before: {mark_and_word(before.overall)}, {opening_time(earlier)}")
    yield Fact("", f"after:  {mark_and_word(after.overall)}, {opening_time(later)}")


def fix_outcome_words(after: Verdict, comparison: Comparison) -> str:
    """Outcome of the fix, with the reason for it."""
    parallel, peak = comparison.change("parallel"), comparison.change("peak_steer")
    changed = [
        f"{name} went from {_deg(change.before, digits)} to {_deg(change.after, digits)}"
        for name, change, digits in (
            ("the angle between the links", parallel, 1),
            ("the peak steer", peak, 2),
        )
        if change.changed
    ]
    if comparison.outcome == FixOutcome.SHOWN:
        return f"shown: {listed(changed)}, more than the doubt explains, and it steers true."
    if comparison.outcome == FixOutcome.NOT_SHOWN:
        return "not shown: the vehicle has bump steer after the work."
    if not changed:
        return (
            f"not settled: {after.overall}, and neither the angle between the links nor the peak "
            "steer has changed by more than its doubt."
        )
    return f"not settled: {after.overall} after the work, so the numbers do not show it yet."


def _deg(rad: float, digits: int) -> str:
    return f"{abs(degrees(rad)):.{digits}f} deg"


def control_facts(
    comparison: Comparison, moved: Collection[str] | None, unit: LengthUnit
) -> Iterator[Fact]:
    """Control points: pairs of pivots that nobody moved, compared with before."""
    if moved is None:
        yield Fact("control points", "It is not known what was moved, so none can serve as one.")
    elif not comparison.controls:
        yield Fact("control points", "Every pair of ends had one that was moved; none is left.")
    for control in comparison.controls:
        yield control_fact(control, unit)


def control_fact(control: Control, unit: LengthUnit) -> Fact:
    """One pair of pivots that nobody moved."""
    pair = " and the ".join(map(name_of_pivot, control.pivots))
    if control.unchanged:
        return Fact("control points", f"The {pair} stand to each other as they did before.", "✓")
    off = [
        f"{format_length(abs(by), unit)} {way}"
        for by, u, way in (
            (control.across, control.u_across, "across"),
            (control.up, control.u_up, "up or down"),
        )
        if abs(by) > 3 * u
    ]
    return Fact(
        "control points",
        f"The {pair}, which nobody moved, differ by {listed(off)} from before: something else "
        "moved, or the datum line was laid elsewhere.",
        LOOK,
    )


def reached_plan_facts(
    planned: FiledPlan | None, moves: Sequence[ReachedMove], after: Verdict, unit: LengthUnit
) -> Iterator[Fact]:
    """Planned and reached values of every pivot and every rule."""
    if planned is None:
        return
    for move in moves:
        yield reached_move_fact(move, unit)
    for name, length in planned.arms.items():
        now = next((r.value for r in after.session.lengths.values() if r.name == name), nan)
        yield Fact(
            name_of_reading(name),
            f"planned {format_length(length, unit)}, reached {format_length(now, unit)}",
        )
    reached = {
        "parallel": after.rules.parallel.value,
        "peak_steer": after.steer.ruling.value,
        "peak_toe_change": after.toe.ruling.value,
        "track_bar_slope": after.rules.flat_track_bar.value,
        "drag_link_slope": after.rules.flat_drag_link.value,
        "length_ratio": after.rules.length.value,
    }
    for key, expected in planned.expected.items():
        name, rule_unit, decimals = EXPECTED[key]
        scale = degrees(1.0) if rule_unit else 1.0
        figures = [f"{abs(scale * value):.{decimals}f}" for value in (expected, reached[key])]
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
