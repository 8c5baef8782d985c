"""A verdict in words: the overall verdict, the rules, then the reasons and the uncertainty."""

from collections.abc import Iterable, Iterator

from rich.console import Group, RenderableType
from rich.text import Text

from core.documents.document import Document, value_at
from core.documents.entries import units_of
from core.text.plain_text import plain
from core.verdict.verdict import Verdict
from wizard.phrases.cautions import CAUTION_IN_SHORT
from wizard.phrases.decisions import decision_facts
from wizard.phrases.direct import direct_facts
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.filed_plan import planned_facts
from wizard.phrases.headline import headline_words
from wizard.phrases.open_questions import open_question_facts
from wizard.phrases.readings import readings_facts, warning_facts
from wizard.phrases.reported import reported_facts
from wizard.phrases.seal import seal_facts
from wizard.phrases.session_names import session_words
from wizard.phrases.verdict_meaning import verdict_facts
from wizard.phrases.verdict_reasons import axle_facts, binding_facts, road_facts, steer_reason_facts
from wizard.phrases.verdict_words import tone_of
from wizard.reports.console import fact_sheet, print_report, style_of
from wizard.views.rules_table import RulesGrid
from wizard.views.verdict import rules_of

LONGEST = 300
"""Characters of a text from a record."""


def print_verdict(document: Document, verdict: Verdict, path: str) -> None:
    """Print the verdict on a record, which was read from `path`."""
    print_report(verdict_parts(document, verdict, path))


def verdict_parts(document: Document, verdict: Verdict, path: str) -> Iterator[RenderableType]:
    """Parts of the report, from the top."""
    unit = units_of(document)
    warnings = (
        *seal_facts(document),
        *binding_facts(verdict.travel_limits, unit),
        *warning_facts(verdict, unit),
    )
    yield headline(document, verdict, path)
    first_facts = (verdict_facts(verdict, unit), warnings)
    yield Group(*(fact_sheet("", facts) for facts in first_facts if facts))
    yield RulesGrid(rules_of(verdict), style_of)
    if direct := tuple(direct_facts(verdict, unit)):
        yield fact_sheet("Measured while the axle travels", direct)
    yield fact_sheet("Why it steers", steer_reason_facts(verdict, unit))
    if verdict.courses:
        yield fact_sheet("On the road", road_facts(verdict, unit))
    yield fact_sheet("How the axle moves", without_warnings(axle_facts(verdict, unit)))
    readings = without_warnings(readings_facts(verdict, unit))
    yield fact_sheet("How far to trust the readings", readings)
    if open_questions := tuple(open_question_facts(verdict, document, unit)):
        yield fact_sheet("Assumed, skipped, left open", open_questions)
    if planned := tuple(planned_facts(document, unit)):
        yield fact_sheet("What is planned", planned)
    if reported := tuple(reported_facts(document)):
        yield fact_sheet("What was said", reported)
    if signatures := tuple(decision_facts(document)):
        yield fact_sheet("Signed", signatures)
    yield Text(CAUTION_IN_SHORT, style_of("quiet"))


def headline(document: Document, verdict: Verdict, path: str) -> Text:
    """The overall verdict, the session, the vehicle and the file."""
    lines = [f"  {session_words(document)}"]
    if description := value_at(document, "vehicle.description"):
        lines.append(plain(description, LONGEST))
    lines.append(plain(path, LONGEST))
    word = headline_words(verdict).upper()
    return Text.assemble((word, style_of(tone_of(verdict.overall))), "\n".join(lines))


def without_warnings(facts: Iterable[Fact]) -> tuple[Fact, ...]:
    """Facts without the warnings, which the report has said at the top."""
    return tuple(fact for fact in facts if fact.mark != LOOK)
