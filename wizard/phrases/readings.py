"""Trust in the readings: closure, advice, sources of the doubt, and the method."""

from collections.abc import Iterator

from core.text.quantity import LengthUnit
from core.verdict.verdict import DRAWS, Verdict
from wizard.phrases.closure import (
    closing_facts,
    scatter_facts,
)
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.next_reading import advice_facts
from wizard.phrases.reading_names import name_of_reading

SHARES_SHOWN = 5
BAR = 20
"""Columns of a share of 1."""


def readings_facts(verdict: Verdict, unit: LengthUnit) -> tuple[Fact, ...]:
    """All facts about the trust in the readings."""
    return (
        *closing_facts(verdict.adjustment, verdict.suspect_groups, unit),
        *scatter_facts(verdict.adjustment, unit),
        *advice_facts(verdict.advice),
        *budget_facts(verdict),
        method_fact(verdict),
    )


def warning_facts(verdict: Verdict, unit: LengthUnit) -> tuple[Fact, ...]:
    """Facts that need a look with the verdict: readings that do not close, readings to repeat."""
    facts = (
        *closing_facts(verdict.adjustment, verdict.suspect_groups, unit),
        *scatter_facts(verdict.adjustment, unit),
        *advice_facts(verdict.advice),
    )
    return tuple(fact for fact in facts if fact.mark == LOOK)


def budget_facts(verdict: Verdict) -> Iterator[Fact]:
    """Shares of the readings in the doubt of the parallel angle, the largest first."""
    shares = verdict.budget[:SHARES_SHOWN]
    if shares:
        yield Fact("whose doubt", "shares in the doubt of the parallel angle:")
    bars = ["█" * max(round(share.share * BAR), 1) for share in shares]
    for share, bar in zip(shares, bars, strict=True):
        yield Fact("", f"{share.share:4.0%} {bar:<{len(bars[0])}} {name_of_reading(share.of)}")


def method_fact(verdict: Verdict) -> Fact:
    """Method that gave the doubt of the peak steer."""
    if verdict.steer.method == "linear":
        return Fact("peak's doubt", "in proportion to that of the readings (linear)")
    return Fact(
        "peak's doubt",
        f"from {DRAWS:,} linkages that the readings allow, drawn by chance (Monte Carlo)",
    )
