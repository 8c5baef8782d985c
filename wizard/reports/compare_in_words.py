"""Before beside after, printed: whether the fix is shown, what changed, what the plan came to."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from rich.console import RenderableType
from rich.text import Text

from core.documents.document import Document, value_at
from core.documents.entries import units_of
from core.fix.comparison import Comparison, altered_pivots
from core.fix.plan_record import filed_plan
from core.fix.reached import ReachedMove
from core.verdict.verdict import Verdict
from wizard.phrases.cautions import CAUTION_IN_SHORT
from wizard.phrases.comparison import control_facts, outcome_facts, plan_facts
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.session_names import vehicle_tag
from wizard.phrases.verdict_words import mark_and_word, tone_of
from wizard.reports.paper import print_parts, sheet, style_of
from wizard.views.changes_table import ChangesGrid, change_rows


def print_comparison(
    earlier: dict[str, Any],
    later: dict[str, Any],
    before: Verdict,
    after: Verdict,
    comparison: Comparison,
    moves: Sequence[ReachedMove],
) -> None:
    """Print what changed from one session to another.

    Parameters
    ----------
    earlier, later : mapping
        The records.
    before, after : Verdict
        On them.
    comparison : Comparison
    moves : sequence of Reached
        Of the earlier session's plan.
    """
    print_parts(parts(earlier, later, before, after, comparison, moves))


def parts(
    earlier: Document,
    later: Document,
    before: Verdict,
    after: Verdict,
    comparison: Comparison,
    moves: Sequence[ReachedMove],
) -> Iterable[RenderableType]:
    """The parts of the report from the top."""
    unit, moved = units_of(later), altered_pivots(earlier, later)
    word = mark_and_word(comparison.outcome).upper()
    yield Text.assemble(
        (word, style_of(tone_of(comparison.outcome))),
        f"  {vehicle_tag(later)}, before beside after",
    )
    outcome = outcome_facts(earlier, later, before, after, comparison)
    yield sheet("", (*outcome, *pair_facts(earlier, later)))
    yield ChangesGrid(change_rows(before, after, comparison, unit), style_of)
    if planned := filed_plan(earlier):
        yield sheet("Planned and reached", plan_facts(planned, moves, after, unit))
    yield sheet(
        "What nobody moved",
        control_facts(comparison, None if moved is None else sorted(moved), unit),
    )
    yield Text(CAUTION_IN_SHORT, style_of("quiet"))


def pair_facts(earlier: Document, later: Document) -> Iterator[Fact]:
    """What speaks against laying these two records side by side."""
    if value_at(earlier, "vehicle.tag") != value_at(later, "vehicle.tag"):
        yield Fact("two vehicles", f"The earlier record is of {vehicle_tag(earlier)}.", LOOK)
    elif value_at(later, "session.follows") != value_at(earlier, "session.id"):
        text = "The later record was not taken as a re-measure of the earlier one."
        yield Fact("not a pair", text, LOOK)
