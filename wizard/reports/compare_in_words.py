"""Before beside after, printed: whether the fix is shown, what changed, what the plan came to."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from rich.console import RenderableType
from rich.text import Text

from core.documents.document import Document, value_at
from core.fix.comparison import Comparison, altered
from core.fix.plan_record import Reached, planned_in
from core.verdict.verdict import Verdict
from wizard.flow.drafts import units_of
from wizard.phrases.cautions import CAUTION_IN_SHORT
from wizard.phrases.comparison import control_facts, outcome_facts, plan_facts
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.session_names import tag_of
from wizard.phrases.verdict_words import mark_and_word, tone_of
from wizard.reports.paper import print_parts, sheet, style_of
from wizard.views.changes_table import Changes, change_rows


def print_comparison(
    earlier: dict[str, Any],
    later: dict[str, Any],
    before: Verdict,
    after: Verdict,
    comparison: Comparison,
    moves: Sequence[Reached],
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
    moves: Sequence[Reached],
) -> Iterable[RenderableType]:
    """The parts of the report from the top."""
    unit, moved = units_of(later), altered(earlier, later)
    word = mark_and_word(comparison.outcome).upper()
    yield Text.assemble(
        (word, style_of(tone_of(comparison.outcome))), f"  {tag_of(later)}, before beside after"
    )
    outcome = outcome_facts(earlier, later, before, after, comparison)
    yield sheet("", (*outcome, *pair_facts(earlier, later)))
    yield Changes(change_rows(before, after, comparison, unit), style_of)
    if planned := planned_in(earlier):
        yield sheet("Planned and reached", plan_facts(planned, moves, after, unit))
    yield sheet(
        "What nobody moved",
        control_facts(comparison, None if moved is None else sorted(moved), unit),
    )
    yield Text(CAUTION_IN_SHORT, style_of("quiet"))


def pair_facts(earlier: Document, later: Document) -> Iterator[Fact]:
    """What speaks against laying these two records side by side."""
    if value_at(earlier, "vehicle.tag") != value_at(later, "vehicle.tag"):
        yield Fact("two vehicles", f"The earlier record is of {tag_of(earlier)}.", LOOK)
    elif value_at(later, "session.follows") != value_at(earlier, "session.id"):
        text = "The later record was not taken as a re-measure of the earlier one."
        yield Fact("not a pair", text, LOOK)
