"""Trust in the readings: closure, advice, sources of the doubt, and the method."""

from collections.abc import Iterator

from core.readings.photograph import PHOTOGRAPHS
from core.text.quantity import LengthUnit
from core.uncertainty.budget import THE_MODEL, Part, part_of
from core.uncertainty.next_reading import NOT_READ
from core.verdict.verdict import DRAWS, Verdict
from wizard.phrases.closure import (
    closing_facts,
    scatter_facts,
)
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.next_reading import READ_AS, advice_facts
from wizard.phrases.reading_names import name_of_reading
from wizard.phrases.slips import slip_facts
from wizard.phrases.verdict_reasons import contradicted_facts

SHARES_SHOWN = 5
BAR = 20
"""Columns of a share of 1."""

LEAST_WORTH = 0.1
"""Share of the doubt from which a skipped reading is named."""


def readings_facts(verdict: Verdict, unit: LengthUnit) -> tuple[Fact, ...]:
    """All facts about the trust in the readings."""
    doubt = (*doubt_facts(verdict), *budget_facts(verdict), method_fact(verdict))
    return (*closure_facts(verdict, unit), *contradicted_facts(verdict), *doubt)


def closure_facts(verdict: Verdict, unit: LengthUnit) -> tuple[Fact, ...]:
    """Closure of the readings, slips that would explain it, and advice."""
    return (
        *closing_facts(verdict.adjustment, verdict.suspect_groups, unit),
        *slip_facts(verdict.slips, unit),
        *scatter_facts(verdict.adjustment, unit),
        *joint_facts(verdict),
        *advice_facts(verdict.advice),
    )


def joint_facts(verdict: Verdict) -> Iterator[Fact]:
    """Joints that nobody could check, because a photograph does not show their play."""
    if verdict.session.has_unchecked_joints:
        yield Fact("joints", "Joints were not checked: a photograph shows no play.", LOOK)


def warning_facts(verdict: Verdict, unit: LengthUnit) -> tuple[Fact, ...]:
    """Facts that need a look with the verdict: readings that do not close, readings to repeat."""
    return tuple(fact for fact in closure_facts(verdict, unit) if fact.mark == LOOK)


def doubt_facts(verdict: Verdict) -> Iterator[Fact]:
    """Parts of the doubt of the peak steer, and the reading that would take most of it away."""
    shares = verdict.steer_budget
    assumed, readings, model = (
        f"{part_of(shares, part):.0%}" for part in (Part.ASSUMED, Part.READINGS, Part.MODEL)
    )
    yield Fact(
        "the doubt",
        f"Of the doubt of the peak steer {readings} comes from the readings, {assumed} from what "
        f"is assumed, and {model} from the model.",
    )
    skipped = [
        share
        for share in shares
        if share.part == Part.ASSUMED
        and share.of not in NOT_READ
        and not share.of.startswith(f"{PHOTOGRAPHS}.")
    ]
    if skipped and skipped[0].share >= LEAST_WORTH:
        name = name_of_reading(READ_AS.get(skipped[0].of, skipped[0].of))
        yield Fact("worth most", f"Taking the {name} would take away {skipped[0].share:.0%} of it.")


def budget_facts(verdict: Verdict) -> Iterator[Fact]:
    """Largest shares in the doubt of the peak steer."""
    shares = verdict.steer_budget[:SHARES_SHOWN]
    if shares:
        yield Fact("whose doubt", "shares in the doubt of the peak steer:")
    bars = ["█" * max(round(share.share * BAR), 1) for share in shares]
    for share, bar in zip(shares, bars, strict=True):
        name = share.of if share.of == THE_MODEL else name_of_reading(share.of)
        assumed = ", assumed" if share.part == Part.ASSUMED else ""
        yield Fact("", f"{share.share:4.0%} {bar:<{len(bars[0])}} {name}{assumed}")


def method_fact(verdict: Verdict) -> Fact:
    """Method that gave the doubt of the peak steer."""
    if verdict.steer.method == "linear":
        return Fact("peak's doubt", "in proportion to that of the readings (linear)")
    return Fact(
        "peak's doubt",
        f"from {DRAWS:,} linkages that the readings allow, drawn by chance (Monte Carlo)",
    )
