"""A comparison in words: whether the fix is shown, the changes, and the plan that was reached."""

from collections.abc import Iterator

from rich.console import RenderableType
from rich.text import Text

from core.documents.document import Document, value_at
from core.documents.entries import units_of
from wizard.phrases.cautions import CAUTION_IN_SHORT
from wizard.phrases.comparison import control_facts, fix_outcome_facts
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.reached_plan import reached_plan_facts
from wizard.phrases.seal import seal_facts
from wizard.phrases.session_names import vehicle_tag, wrong_order_words
from wizard.phrases.verdict_words import mark_and_word, tone_of
from wizard.reports.console import fact_sheet, print_report, style_of
from wizard.views.changes_table import ChangesGrid, change_rows
from wizard.views.two_sessions import TwoSessions


def print_comparison(both: TwoSessions) -> None:
    """Print the changes from one session to another."""
    print_report(comparison_parts(both))


def comparison_parts(both: TwoSessions) -> Iterator[RenderableType]:
    """Parts of the report, from the top."""
    unit, comparison = units_of(both.later), both.comparison
    word = mark_and_word(comparison.outcome).upper()
    if wrong_order := wrong_order_words(both.earlier, both.later):
        yield Text(f"! {wrong_order}", style_of("look"))
    yield Text.assemble(
        (word, style_of(tone_of(comparison.outcome))),
        f"  {vehicle_tag(both.later)}, before beside after",
    )
    outcome = fix_outcome_facts(both.earlier, both.later, both.before, both.after, comparison)
    seals = (*seal_facts(both.earlier, "The earlier"), *seal_facts(both.later, "The later"))
    yield fact_sheet("", (*outcome, *pair_warnings(both.earlier, both.later), *seals))
    yield ChangesGrid(change_rows(both.before, both.after, comparison, unit), style_of)
    if both.planned:
        reached = reached_plan_facts(both.planned, both.moves, both.after, unit)
        yield fact_sheet("Planned and reached", reached)
    altered = None if both.altered is None else sorted(both.altered)
    yield fact_sheet("What nobody moved", control_facts(comparison, altered, unit))
    yield Text(CAUTION_IN_SHORT, style_of("quiet"))


def pair_warnings(earlier: Document, later: Document) -> Iterator[Fact]:
    """Warnings about two records that are not a session and its re-measure."""
    if value_at(earlier, "vehicle.tag") != value_at(later, "vehicle.tag"):
        yield Fact("two vehicles", f"The earlier record is of {vehicle_tag(earlier)}.", LOOK)
    elif value_at(later, "session.follows") != value_at(earlier, "session.id"):
        text = "The later record was not taken as a re-measure of the earlier one."
        yield Fact("not a pair", text, LOOK)
