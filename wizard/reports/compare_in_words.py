"""A comparison in words: whether the fix is shown, the changes, and the plan that was reached."""

from collections.abc import Iterator, Sequence

from rich.console import RenderableType
from rich.text import Text

from core.documents.document import Document, value_at
from core.documents.entries import units_of
from core.fix.comparison import Comparison, altered_pivots
from core.fix.plan_record import filed_plan
from core.fix.reached import ReachedMove
from core.verdict.verdict import Verdict
from wizard.phrases.cautions import CAUTION_IN_SHORT
from wizard.phrases.comparison import control_facts, fix_outcome_facts
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.reached_plan import reached_plan_facts
from wizard.phrases.session_names import vehicle_tag
from wizard.phrases.verdict_words import mark_and_word, tone_of
from wizard.reports.console import fact_sheet, print_report, style_of
from wizard.views.changes_table import ChangesGrid, change_rows


def print_comparison(
    earlier: Document,
    later: Document,
    before: Verdict,
    after: Verdict,
    comparison: Comparison,
    moves: Sequence[ReachedMove],
) -> None:
    """Print the changes from one session to another.

    Parameters
    ----------
    earlier, later : mapping
        The records.
    before, after : Verdict
        The verdicts on them.
    comparison : Comparison
        The comparison of the verdicts.
    moves : sequence of ReachedMove
        The moves of the earlier session's plan, with the rises that were reached.
    """
    print_report(comparison_parts(earlier, later, before, after, comparison, moves))


def comparison_parts(
    earlier: Document,
    later: Document,
    before: Verdict,
    after: Verdict,
    comparison: Comparison,
    moves: Sequence[ReachedMove],
) -> Iterator[RenderableType]:
    """Parts of the report, from the top; parameters as for `print_comparison`."""
    unit, altered = units_of(later), altered_pivots(earlier, later)
    word = mark_and_word(comparison.outcome).upper()
    yield Text.assemble(
        (word, style_of(tone_of(comparison.outcome))),
        f"  {vehicle_tag(later)}, before beside after",
    )
    outcome = fix_outcome_facts(earlier, later, before, after, comparison)
    yield fact_sheet("", (*outcome, *pair_warnings(earlier, later)))
    yield ChangesGrid(change_rows(before, after, comparison, unit), style_of)
    if planned := filed_plan(earlier):
        yield fact_sheet("Planned and reached", reached_plan_facts(planned, moves, after, unit))
    altered_names = None if altered is None else sorted(altered)
    yield fact_sheet("What nobody moved", control_facts(comparison, altered_names, unit))
    yield Text(CAUTION_IN_SHORT, style_of("quiet"))


def pair_warnings(earlier: Document, later: Document) -> Iterator[Fact]:
    """Warnings about two records that are not a session and its re-measure."""
    if value_at(earlier, "vehicle.tag") != value_at(later, "vehicle.tag"):
        yield Fact("two vehicles", f"The earlier record is of {vehicle_tag(earlier)}.", LOOK)
    elif value_at(later, "session.follows") != value_at(earlier, "session.id"):
        text = "The later record was not taken as a re-measure of the earlier one."
        yield Fact("not a pair", text, LOOK)
