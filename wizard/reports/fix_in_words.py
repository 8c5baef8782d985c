"""Plans in words: a table of all plans, then a work order for each."""

from collections.abc import Iterator, Mapping

from rich.console import Group, RenderableType
from rich.table import Table
from rich.text import Text

from core.documents.document import Document
from core.documents.entries import units_of
from core.fix.plan import Plan
from core.fix.ranking import By
from core.fix.search import SearchResult
from core.profiles.adjuster import Adjuster
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.phrases.bar_lengths import bar_length_facts
from wizard.phrases.cautions import CAUTION_IN_SHORT
from wizard.phrases.costs import part_facts
from wizard.phrases.plan_cautions import clearance_facts
from wizard.phrases.plan_effects import plan_effect_facts
from wizard.phrases.plan_outcomes import Cell, outcome_rows
from wizard.phrases.plan_reasons import plan_reason_facts
from wizard.phrases.seal import seal_facts
from wizard.phrases.search_result import search_result_words
from wizard.phrases.session_names import opening_time, vehicle_tag
from wizard.phrases.verdict_words import tone_of
from wizard.phrases.work_steps import move_facts, plan_move_words, re_measure_facts
from wizard.reports.console import fact_sheet, print_report, style_of

NAME_WIDTH, PLAN_WIDTH = 15, 12
"""Columns of a row's name, and of a plan; five plans, the most there are, fit in 80 columns."""


def print_fix(
    document: Document,
    verdict: Verdict,
    result: SearchResult,
    adjusters: Mapping[str, Adjuster],
    clearance: float,
    by: By = "parts",
) -> None:
    """Print the plans for a record.

    The adjusters are given by link. The clearance is the distance of both links that the profile
    asks for, mm.
    """
    print_report(fix_parts(document, verdict, result, adjusters, clearance, by))


def fix_parts(
    document: Document,
    verdict: Verdict,
    result: SearchResult,
    adjusters: Mapping[str, Adjuster],
    clearance: float,
    by: By = "parts",
) -> Iterator[RenderableType]:
    """Parts of the report, from the top."""
    unit = units_of(document)
    title = f"{vehicle_tag(document)}, what to move, {opening_time(document)}"
    yield Text.assemble((title, style_of("title")), "\n", search_result_words(verdict, result, by))
    if seals := tuple(seal_facts(document)):
        yield fact_sheet("", seals)
    if result.plans:
        yield plans_table(verdict, result.plans, unit)
    for number, plan in enumerate(result.plans, 1):
        yield work_order(verdict, plan, number, adjusters, clearance, unit)
    yield Text(CAUTION_IN_SHORT, style_of("quiet"))


def plans_table(verdict: Verdict, plans: tuple[Plan, ...], unit: LengthUnit) -> Table:
    """Table of the results now and with each plan."""
    table = Table(box=None, pad_edge=False, padding=(0, 1, 0, 0), show_header=True)
    table.add_column("", width=NAME_WIDTH)
    for head in ("now", *(f"plan {number}" for number in range(1, len(plans) + 1))):
        table.add_column(Text(head, style_of("head")), width=PLAN_WIDTH - 1)
    for row in outcome_rows(verdict, plans, unit):
        table.add_row(Text(row.name), *(cell_text(cell) for cell in (row.now, *row.plans)))
    return table


def cell_text(cell: Cell) -> Text:
    """Text of a cell in the style of its verdict; its mark says the verdict too."""
    return Text(cell.words, style_of(tone_of(cell.verdict)) if cell.verdict else "")


def work_order(
    verdict: Verdict,
    plan: Plan,
    number: int,
    adjusters: Mapping[str, Adjuster],
    clearance: float,
    unit: LengthUnit,
) -> Group:
    """Work order of one plan: the work, its reasons, its effects and the checks afterwards."""
    title = f"Plan {number}: {'; '.join(plan_move_words(plan, unit))}"
    effects = plan_effect_facts(verdict, plan, clearance, unit)
    work = (*move_facts(verdict, plan, unit), *bar_length_facts(plan, adjusters, unit))
    return Group(
        fact_sheet(title, work),
        *([fact_sheet("Parts", parts)] if (parts := tuple(part_facts(plan, unit))) else []),
        fact_sheet("Why each rule ends where it does", plan_reason_facts(verdict, plan, unit)),
        fact_sheet("What gets worse, and what changes besides", effects),
        fact_sheet("Check for clearance, and with care", clearance_facts(plan)),
        fact_sheet("Measure again afterwards", re_measure_facts(plan)),
    )
