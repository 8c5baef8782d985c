"""Ways through a session: the short and the long one, and what is chosen under a text."""

from dataclasses import replace

from core.documents.document import Document, value_at, with_value
from wizard.flow.flow import Flow
from wizard.flow.short_way import REFINES, WAY
from wizard.questions.short_way import CHANGES_TOOLS, ENOUGH, INSTRUMENTS, TOOLS


def read_on(flow: Flow, choice: str) -> Flow:
    """Flow past a text that was read, with what was chosen under it."""
    question, document = flow.question, flow.document
    if question.path == TOOLS.path:
        changes = choice == "change"
        document = with_value(document, CHANGES_TOOLS, changes)
        if not changes:
            document = _with_usual_instruments(document)
    if question.path == ENOUGH.path:
        document = with_value(document, REFINES, choice == "refine")
    passed = replace(flow, document=document).skipped()
    passed = replace(passed, past=(*flow.past, flow))
    if question.path == ENOUGH.path and choice == "verdict":
        return passed.at("verdict")
    return passed


def enough(flow: Flow) -> Flow:
    """Flow at the verdict; the readings that are left are not asked for any more."""
    document = with_value(flow.document, REFINES, False)
    at_verdict = replace(flow, document=document).at(ENOUGH.path).skipped().at("verdict")
    return replace(at_verdict, past=(*flow.past, flow))


def on_the_other_way(flow: Flow) -> Flow:
    """Flow on the long way instead of the short one, or back, at the same question."""
    way = "long" if flow.is_short else "short"
    other = replace(flow, document=with_value(flow.document, WAY, way))
    path = flow.question.path
    is_asked = path in (question.path for question in other.asked)
    return other.at(path if is_asked else other.first_open.path)


def _with_usual_instruments(document: Document) -> Document:
    """Document with the instruments that the shop uses, where it has said so before."""
    for path in ("session.units", *INSTRUMENTS):
        usual = value_at(document, f"draft.usual.{path}")
        if usual is not None and value_at(document, path) is None:
            document = with_value(document, path, usual)
    return document
