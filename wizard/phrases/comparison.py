"""Comparison of two sessions in words: the outcome, and the control points."""

from collections.abc import Collection, Iterator, Mapping
from math import degrees
from typing import Any

from core.fix.comparison import Comparison, Control, FixOutcome
from core.text.quantity import LengthUnit, format_length
from core.verdict.verdict import Overall, Verdict
from wizard.phrases.amounts import listed
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.headline import headline_words
from wizard.phrases.reading_names import name_of_pivot
from wizard.phrases.session_names import opening_time
from wizard.phrases.verdict_words import mark_of


def fix_outcome_facts(
    earlier: Mapping[str, Any],
    later: Mapping[str, Any],
    before: Verdict,
    after: Verdict,
    comparison: Comparison,
) -> Iterator[Fact]:
    """The outcome in a sentence, and the verdicts it rests on."""
    yield Fact("", fix_outcome_words(after, comparison), mark_of(comparison.outcome))
    yield Fact("", f"before: {headline_words(before)}, {opening_time(earlier)}")
    yield Fact("", f"after:  {headline_words(after)}, {opening_time(later)}")


def fix_outcome_words(after: Verdict, comparison: Comparison) -> str:
    """Outcome of the fix, with the reason for it."""
    parallel, peak = comparison.change("effective"), comparison.change("peak_steer")
    changed = [
        f"{name} went from {_deg(change.before, digits)} to {_deg(change.after, digits)}"
        for name, change, digits in (
            ("the drag link's angle out of square", parallel, 1),
            ("the peak steer", peak, 2),
        )
        if change.changed
    ]
    if comparison.outcome == FixOutcome.SHOWN:
        if after.overall != Overall.STEERS_TRUE:
            return f"shown: {listed(changed)}, measured at the road wheels before and after."
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
        f"The {pair}, which nobody moved, differ by {listed(off)} from before. Another part "
        "moved, or the datum line lies elsewhere.",
        LOOK,
    )
