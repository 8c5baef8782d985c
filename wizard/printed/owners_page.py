"""The page: the answer, two pictures, the rules, what is planned, and what to take care of."""

from collections.abc import Iterable
from html import escape
from pathlib import Path

from core.documents.document import Document, value_at
from core.text.plain_text import plain
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard import __version__
from wizard.phrases.cautions import CAUTIONS
from wizard.phrases.decisions import decision_facts
from wizard.phrases.fact import Fact
from wizard.phrases.filed_plan import planned_facts
from wizard.phrases.readings import warning_facts
from wizard.phrases.reported import reported_facts
from wizard.phrases.session_names import session_words
from wizard.phrases.verdict_meaning import verdict_facts
from wizard.phrases.verdict_reasons import binding_facts
from wizard.phrases.verdict_words import limit_words, mark_and_word
from wizard.printed.curve_svg import curve_svg
from wizard.printed.front_svg import front_svg
from wizard.views.rules_table import reading
from wizard.views.verdict import curve_of, front_of, rules_of

STYLE = Path(__file__).parent / "page.css"

RULES = {
    "parallel": "Angle between track bar and drag link",
    "peak_steer": "Largest steer with the steering wheel held",
    "peak_toe_change": "Largest change of toe-in",
    "track_bar_slope": "Slope of the track bar",
    "drag_link_slope": "Slope of the drag link",
    "length_ratio": "Shorter link to longer link",
}
"""The rules in words that need no trade."""

TOP = ("vehicle.description", "vehicle.odometer", "session.technician")
SAID = ("complaint.reported", "complaint.note", "session.altered")
"""What is told the owner again; the note is for the workshop."""

FRONT = (
    "From the front, to scale: the vehicle's left is on the right. Squares are the ends on the "
    "frame, rings those on the axle; dotted, the way each axle end takes as the suspension moves."
)
CURVE = (
    "How far the front wheels steer by themselves as the suspension moves, with the steering wheel "
    "held still. Light grey is allowed; the band about the line is what the readings leave open."
)


def page_html(document: Document, verdict: Verdict, unit: LengthUnit) -> str:
    """The page as one HTML text; everything from the record is shown as text.

    Parameters
    ----------
    document : mapping
        The record.
    verdict : Verdict
        On it.
    unit : str
        "in" or "mm".
    """
    title = f"{plain(value_at(document, 'vehicle.tag', ''))}: {verdict.overall}"
    looks = (*binding_facts(verdict.travel_limits, unit), *warning_facts(verdict, unit))
    body = [
        f"<h1>{escape(_capital(mark_and_word(verdict.overall)))}</h1>",
        *(f'<p class="which">{escape(line)}</p>' for line in _which(document)),
        *(f'<p class="answer">{escape(fact.text)}</p>' for fact in verdict_facts(verdict, unit)),
        _list("To look at first", looks),
        f"<figure>{front_svg(front_of(verdict))}<figcaption>{FRONT}</figcaption></figure>",
        f"<figure>{curve_svg(curve_of(verdict, unit))}<figcaption>{CURVE}</figcaption></figure>",
        _rules(verdict),
        _list("What was said", reported_facts(document, SAID)),
        _list("What is planned", planned_facts(document, unit)),
        _list("Before any work, and before driving", (Fact("", text) for text in CAUTIONS)),
        _list("Decided by the shop lead", decision_facts(document)),
        f'<p class="foot">Worked out by Evenarc {__version__} from readings of tape and angle '
        "finder: the geometry alone.</p>",
    ]
    return (
        '<!DOCTYPE html>\n<html lang="en">\n<meta charset="utf-8">\n'
        f"<title>{escape(title)}</title>\n<style>\n{STYLE.read_text('utf-8')}</style>\n"
        f"{chr(10).join(filter(None, body))}\n</html>\n"
    )


def _which(document: Document) -> Iterable[str]:
    yield session_words(document)
    if told := [f"{fact.name}: {fact.text}" for fact in reported_facts(document, TOP)]:
        yield "; ".join(told)


def _rules(verdict: Verdict) -> str:
    rows = "".join(
        f"<tr><td>{RULES[row.rule]}{'' if row.decides else ' (advice)'}<td>{escape(reading(row))}"
        f"<td>{escape(limit_words(row.limit, row.unit, row.at_least))}"
        f"<td>{escape(mark_and_word(row.verdict))}"
        for row in rules_of(verdict)
    )
    return f"<table><tr><th>measured<th>reading<th>limit<th>verdict{rows}</table>"


def _list(title: str, facts: Iterable[Fact]) -> str:
    lines = "".join(
        f"<li>{escape(': '.join(filter(None, (fact.name, fact.text))))}" for fact in facts
    )
    return f"<h2>{title}</h2>\n<ul>{lines}</ul>" if lines else ""


def _capital(words: str) -> str:
    """The same with the first letter of its word a capital one."""
    mark, _, word = words.partition(" ")
    return f"{mark} {word.capitalize()}"
