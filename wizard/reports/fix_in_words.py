"""The fix printed: the plans side by side, then each as a work order."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from rich.console import Group, RenderableType
from rich.table import Table
from rich.text import Text

from core.documents.document import Document
from core.documents.entries import units_of
from core.fix.plan import Plan
from core.fix.search import SearchResult
from core.profiles.adjuster import Adjuster
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.phrases.cautions import CAUTION_IN_SHORT
from wizard.phrases.plan_cautions import clearance_facts
from wizard.phrases.plan_outcomes import Cell, outcome_rows
from wizard.phrases.plan_reasons import plan_effect_facts, plan_reason_facts
from wizard.phrases.search_result import search_result_words
from wizard.phrases.session_names import opening_time, vehicle_tag
from wizard.phrases.verdict_words import tone_of
from wizard.phrases.work_steps import (
    bar_length_facts,
    move_facts,
    plan_move_words,
    re_measure_facts,
)
from wizard.reports.paper import print_parts, sheet, style_of

ABREAST = 5
"""Plans that stand side by side in 80 columns; no more are ever shown."""

NAME, COLUMN = 15, 12
"""Columns of a row's name, and of a plan."""


def print_fix(
    document: dict[str, Any], verdict: Verdict, fix: SearchResult, adjusters: Mapping[str, Adjuster]
) -> None:
    """Print the plans for a record.

    Parameters
    ----------
    document : mapping
        The record.
    verdict : Verdict
        On it.
    fix : Fix
    adjusters : mapping of Adjuster
        By link.
    """
    print_parts(parts(document, verdict, fix, adjusters, units_of(document)))


def parts(
    document: Document,
    verdict: Verdict,
    fix: SearchResult,
    adjusters: Mapping[str, Adjuster],
    unit: LengthUnit,
) -> Iterator[RenderableType]:
    """The parts of the report from the top."""
    tag = f"{vehicle_tag(document)}, what to move, {opening_time(document)}"
    yield Text.assemble((tag, style_of("title")), "\n", search_result_words(verdict, fix))
    if fix.plans:
        yield side_by_side(verdict, fix.plans, unit)
    for number, plan in enumerate(fix.plans, 1):
        yield from work_order(verdict, plan, number, adjusters, unit)
    yield Text(CAUTION_IN_SHORT, style_of("quiet"))


def side_by_side(verdict: Verdict, plans: tuple[Plan, ...], unit: LengthUnit) -> Table:
    """What each plan brings, beside what is now."""
    table = Table(box=None, pad_edge=False, padding=(0, 1, 0, 0), show_header=True)
    table.add_column("", width=NAME)
    for head in ("now", *(f"plan {number}" for number in range(1, len(plans) + 1))):
        table.add_column(Text(head, style_of("head")), width=COLUMN - 1)
    for row in outcome_rows(verdict, plans, unit):
        table.add_row(Text(row.name), *(figure(cell) for cell in (row.now, *row.plans)))
    return table


def figure(cell: Cell) -> Text:
    """A cell in the tone of its verdict, which its mark says as well."""
    return Text(cell.words, style_of(tone_of(cell.verdict)) if cell.verdict else "")


def work_order(
    verdict: Verdict,
    plan: Plan,
    number: int,
    adjusters: Mapping[str, Adjuster],
    unit: LengthUnit,
) -> Iterator[RenderableType]:
    """All about one plan."""
    title = f"Plan {number}: {'; '.join(plan_move_words(plan, unit))}"
    work = (*move_facts(verdict, plan, unit), *bar_length_facts(plan, adjusters, unit))
    yield Group(
        sheet(title, work),
        sheet("Why each rule ends where it does", plan_reason_facts(verdict, plan, unit)),
        sheet("What gets worse, and what changes besides", plan_effect_facts(verdict, plan, unit)),
        sheet("Check for clearance, and with care", clearance_facts(plan)),
        sheet("Measure again afterwards", re_measure_facts(plan)),
    )
