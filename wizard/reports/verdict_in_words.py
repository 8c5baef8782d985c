"""A verdict printed: the answer first, then the rules, then why and how sure it is."""

from collections.abc import Iterable
from typing import Any

from rich.console import Group, RenderableType
from rich.text import Text

from core.documents.document import Document, value_at
from core.documents.entries import units_of
from core.text.plain_text import plain
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.phrases.cautions import CAUTION_IN_SHORT
from wizard.phrases.decisions import decision_facts
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.filed_plan import planned_facts
from wizard.phrases.open_questions import open_question_facts
from wizard.phrases.readings import readings_facts, warning_facts
from wizard.phrases.reported import reported_facts
from wizard.phrases.session_names import session_words
from wizard.phrases.verdict_meaning import verdict_facts
from wizard.phrases.verdict_reasons import axle_facts, binding_facts, road_facts, steer_reason_facts
from wizard.phrases.verdict_words import mark_and_word, tone_of
from wizard.reports.paper import print_parts, sheet, style_of
from wizard.views.rules_table import RulesGrid
from wizard.views.verdict import rules_of

LONGEST = 300
"""Characters of a text from a record."""


def print_verdict(document: dict[str, Any], verdict: Verdict, path: str) -> None:
    """Print the verdict on a record.

    Parameters
    ----------
    document : mapping
        The record.
    verdict : Verdict
        On it.
    path : str
        Where it was read from, as it was typed.
    """
    print_parts(parts(document, verdict, path, units_of(document)))


def parts(
    document: Document, verdict: Verdict, path: str, unit: LengthUnit
) -> Iterable[RenderableType]:
    """The parts of the report from the top."""
    looks = (*binding_facts(verdict.travel_limits, unit), *warning_facts(verdict, unit))
    yield headline(document, verdict, path)
    yield Group(*(sheet("", facts) for facts in (verdict_facts(verdict, unit), looks) if facts))
    yield RulesGrid(rules_of(verdict), style_of)
    yield sheet("Why it steers", steer_reason_facts(verdict, unit))
    if verdict.courses:
        yield sheet("On the road", road_facts(verdict, unit))
    yield sheet("How the axle moves", calm(axle_facts(verdict, unit)))
    yield sheet("How far to trust the readings", calm(readings_facts(verdict, unit)))
    if gaps := tuple(open_question_facts(verdict, document, unit)):
        yield sheet("Assumed, skipped, left open", gaps)
    if planned := tuple(planned_facts(document, unit)):
        yield sheet("What is planned", planned)
    if told := tuple(reported_facts(document)):
        yield sheet("What was said", told)
    if signatures := tuple(decision_facts(document)):
        yield sheet("Signed", signatures)
    yield Text(CAUTION_IN_SHORT, style_of("quiet"))


def headline(document: Document, verdict: Verdict, path: str) -> Text:
    """The verdict, and which session it is on."""
    lines = [f"  {session_words(document)}"]
    if description := value_at(document, "vehicle.description"):
        lines.append(plain(description, LONGEST))
    lines.append(plain(path, LONGEST))
    word = mark_and_word(verdict.overall).upper()
    return Text.assemble((word, style_of(tone_of(verdict.overall))), "\n".join(lines))


def calm(facts: Iterable[Fact]) -> tuple[Fact, ...]:
    """Facts without those that have been said at the top already."""
    return tuple(fact for fact in facts if fact.mark != LOOK)
