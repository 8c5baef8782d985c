"""Owner's page: the verdict, two drawings, the rules, the plan and the cautions."""

from dataclasses import dataclass

from markupsafe import Markup

from core.documents.document import Document, value_at
from core.text.plain_text import plain
from core.text.quantity import LengthUnit
from core.verdict.verdict import READINGS, Verdict
from wizard import __version__
from wizard.phrases.ball_path import frame_end_fact
from wizard.phrases.cautions import caution_facts
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
from wizard.printed.paper import Paper, usual_paper
from wizard.printed.rendering import render
from wizard.views.aims import front_with_aims
from wizard.views.picture_data import RuleRow
from wizard.views.rules_table import reading
from wizard.views.verdict import curve_of, rules_of

TEMPLATE = "owners_page.html"

RULE_NAMES = {
    "effective": "Drag link out of square as the axle moves",
    "peak_steer": "Largest steer with the steering wheel held",
    "peak_toe_change": "Largest change of toe-in",
    "track_bar_slope": "Slope of the track bar",
    "drag_link_slope": "Slope of the drag link",
    "length_ratio": "Shorter link to longer link",
}
"""Names of the rules without terms of the trade."""

VEHICLE_PATHS = ("vehicle.description", "vehicle.odometer", "session.technician")

REPORTED_PATHS = ("complaint.reported", "complaint.note", "session.altered")
"""Answers that the page repeats to the owner. The technician's note is for the workshop."""


@dataclass(frozen=True)
class RuleLine:
    """A row of the table of rules, in words."""

    name: str
    reading: str
    limit: str
    verdict: str


@dataclass(frozen=True)
class OwnersPage:
    """Data of the owner's page, which the template lays out.

    Attributes
    ----------
    title : str
        The title of the document: tag and verdict.
    paper : "letter" or "a4"
    heading : str
        The verdict with its mark.
    session : str
        The vehicle, the kind of the session and its date.
    vehicle_facts, verdict_facts, warnings : tuple of Fact
        The vehicle and the technician; the verdict; what to look at first.
    front_drawing, curve_drawing : Markup
        SVG.
    frame_end : str
        Height that the drag link's frame end wants to be at; "" where nothing is decided.
    rules : tuple of RuleLine
    reported_facts, planned_facts, cautions, decision_facts : tuple of Fact
        The driver's report; the plan; the cautions; the shop lead's decisions.
    program_version : str
    """

    title: str
    paper: Paper
    heading: str
    session: str
    vehicle_facts: tuple[Fact, ...]
    verdict_facts: tuple[Fact, ...]
    warnings: tuple[Fact, ...]
    front_drawing: Markup
    curve_drawing: Markup
    frame_end: str
    rules: tuple[RuleLine, ...]
    reported_facts: tuple[Fact, ...]
    planned_facts: tuple[Fact, ...]
    cautions: tuple[Fact, ...]
    decision_facts: tuple[Fact, ...]
    program_version: str = __version__


def page_html(document: Document, verdict: Verdict, unit: LengthUnit) -> str:
    """HTML text of the owner's page.

    Parameters
    ----------
    document : mapping
        The record.
    verdict : Verdict
        The verdict on the record.
    unit : str
        Unit of length on the page, "in" or "mm".
    """
    return render(TEMPLATE, owners_page(document, verdict, unit))


def owners_page(document: Document, verdict: Verdict, unit: LengthUnit) -> OwnersPage:
    """Data of the owner's page; parameters as for `page_html`."""
    tag = plain(value_at(document, "vehicle.tag", ""))
    return OwnersPage(
        title=f"{tag}: {verdict.overall}",
        paper=usual_paper(unit),
        heading=_capitalized(mark_and_word(verdict.overall)),
        session=session_words(document),
        vehicle_facts=tuple(reported_facts(document, VEHICLE_PATHS)),
        verdict_facts=tuple(verdict_facts(verdict, unit)),
        warnings=(*binding_facts(verdict.travel_limits, unit), *warning_facts(verdict, unit)),
        # The program draws both, and escapes the text in them itself.
        front_drawing=Markup(front_svg(front_with_aims(verdict, unit))),
        curve_drawing=Markup(curve_svg(curve_of(verdict, unit))),
        frame_end=("" if READINGS in verdict.held_back_by else frame_end_fact(verdict, unit).text),
        rules=tuple(map(_rule_line, rules_of(verdict))),
        reported_facts=tuple(reported_facts(document, REPORTED_PATHS)),
        planned_facts=tuple(planned_facts(document, unit)),
        cautions=tuple(caution_facts()),
        decision_facts=tuple(decision_facts(document)),
    )


def _rule_line(row: RuleRow) -> RuleLine:
    """Row of the table of rules; a rule that does not decide is marked as advice."""
    return RuleLine(
        name=RULE_NAMES[row.rule] + ("" if row.decides else " (advice)"),
        reading=reading(row),
        limit=limit_words(row.limit, row.unit, row.at_least),
        verdict=mark_and_word(row.verdict),
    )


def _capitalized(words: str) -> str:
    """Mark and word with a capital first letter of the word."""
    mark, _, word = words.partition(" ")
    return f"{mark} {word.capitalize()}"
