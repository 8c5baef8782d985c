"""Owner's page: the verdict, two drawings, the rules, the plan and the cautions."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np
from markupsafe import Markup

from core.documents.document import Document, value_at
from core.fix.plan import Plan
from core.profiles.shop import Shop
from core.text.plain_text import plain
from core.text.quantity import LengthUnit
from core.verdict.verdict import READINGS, Verdict
from wizard import __version__
from wizard.phrases.ball_path import frame_end_fact
from wizard.phrases.cautions import caution_facts
from wizard.phrases.costs import hours_words, price_words
from wizard.phrases.decisions import decision_facts
from wizard.phrases.fact import Fact
from wizard.phrases.filed_plan import planned_facts
from wizard.phrases.headline import headline_words
from wizard.phrases.plain_sentence import plain_words
from wizard.phrases.readings import warning_facts
from wizard.phrases.reported import reported_facts
from wizard.phrases.seal import seal_facts
from wizard.phrases.session_names import session_words
from wizard.phrases.verdict_meaning import verdict_facts
from wizard.phrases.verdict_reasons import binding_facts
from wizard.phrases.verdict_words import limit_words, mark_and_word
from wizard.printed.curve_svg import curve_svg
from wizard.printed.front_svg import front_svg
from wizard.printed.paper import Paper, usual_paper
from wizard.printed.photograph_svg import photograph_drawings
from wizard.printed.rendering import render
from wizard.printed.sources import Beside
from wizard.views.picture_data import CurvePicture, FrontPicture, RuleRow, Trace
from wizard.views.plans import front_of_plan
from wizard.views.rules_table import reading
from wizard.views.verdict import (
    curve_of,
    front_of,
    front_of_both,
    front_with_aims,
    rules_of,
    trace_of,
)

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

ADVISED = {
    "within": "as advised",
    "out": "not as advised",
    "too close to call": "about as advised",
}
"""Verdict on a rule that only advises: no mark, because it decides nothing."""

FRONT_CAPTION = (
    "From the front, to scale. The vehicle's left is on the right. Squares are the frame ends, "
    "rings are the axle ends."
)
CURVE_CAPTION = (
    "How far the front wheels steer by themselves as the suspension moves, with the steering wheel "
    "held still. Light grey is allowed. The band around the line is the doubt of the readings."
)

POINTS_CAPTION = " Circles are the steer that was read at the wheels."

NOTHING = Beside()
"""Beside a record whose files are not at hand."""

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
    shop : Shop
    plain_sentence : str
        The verdict for the driver.
    session : str
        The vehicle, the kind of the session and its date.
    vehicle_facts, verdict_facts, warnings : tuple of Fact
        The vehicle and the technician; the verdict; what to look at first.
    front_drawing, curve_drawing : Markup
        SVG.
    front_caption, curve_caption : str
    photographs : tuple of Markup
        SVG of each photograph with the lines through the joint centres.
    rules : tuple of RuleLine
    reported_facts, planned_facts, cost_facts, cautions, decision_facts : tuple of Fact
        The driver's report; the plan and what it costs; the cautions; the shop lead's decisions.
    needs_approval : bool
        True if work is planned and not done.
    program_version : str
    """

    title: str
    paper: Paper
    heading: str
    shop: Shop
    plain_sentence: str
    session: str
    vehicle_facts: tuple[Fact, ...]
    verdict_facts: tuple[Fact, ...]
    warnings: tuple[Fact, ...]
    front_drawing: Markup
    curve_drawing: Markup
    front_caption: str
    curve_caption: str
    photographs: tuple[Markup, ...]
    rules: tuple[RuleLine, ...]
    reported_facts: tuple[Fact, ...]
    planned_facts: tuple[Fact, ...]
    cost_facts: tuple[Fact, ...]
    cautions: tuple[Fact, ...]
    decision_facts: tuple[Fact, ...]
    needs_approval: bool
    program_version: str = __version__


def page_html(
    document: Document,
    verdict: Verdict,
    unit: LengthUnit,
    beside: Beside = NOTHING,
    paper: Paper | None = None,
) -> str:
    """HTML text of the owner's page.

    Parameters
    ----------
    document : mapping
        The record.
    verdict : Verdict
        The verdict on the record.
    unit : str
        Unit of length on the page, "in" or "mm".
    beside : Beside
        Shop, plan and session before.
    paper : "letter", "a4" or None
        None for the usual paper of the unit.
    """
    page = owners_page(document, verdict, unit, beside, paper or usual_paper(unit))
    return render(TEMPLATE, page)


def owners_page(
    document: Document, verdict: Verdict, unit: LengthUnit, beside: Beside, paper: Paper
) -> OwnersPage:
    """Data of the owner's page; parameters as for `page_html`."""
    plan, before = beside.plan, beside.before
    is_planned = before is None and plan is not None
    tag = plain(value_at(document, "vehicle.tag", ""))
    return OwnersPage(
        title=f"{tag}: {verdict.overall}",
        paper=paper,
        heading=_capitalized(headline_words(verdict)),
        shop=beside.shop,
        plain_sentence=plain_words(verdict, plan, before),
        session=session_words(document),
        vehicle_facts=tuple(reported_facts(document, VEHICLE_PATHS)),
        verdict_facts=tuple(verdict_facts(verdict, unit)),
        warnings=(
            *seal_facts(document),
            *binding_facts(verdict.travel_limits, unit),
            *warning_facts(verdict, unit),
        ),
        # The program draws both, and escapes the text in them itself.
        front_drawing=Markup(front_svg(_front(verdict, unit, plan, before))),
        curve_drawing=Markup(curve_svg(_curve(verdict, unit, plan, before))),
        front_caption=f"{FRONT_CAPTION} {_front_words(verdict, unit, plan, before)}".strip(),
        curve_caption=CURVE_CAPTION + (POINTS_CAPTION if verdict.direct else ""),
        photographs=tuple(map(Markup, photograph_drawings(verdict, beside.folder))),
        rules=tuple(map(_rule_line, rules_of(verdict))),
        reported_facts=tuple(reported_facts(document, REPORTED_PATHS)),
        planned_facts=tuple(planned_facts(document, unit)),
        cost_facts=tuple(_cost_facts(plan)) if is_planned and plan is not None else (),
        cautions=tuple(caution_facts()),
        decision_facts=tuple(decision_facts(document)),
        needs_approval=is_planned,
    )


def _front(
    verdict: Verdict, unit: LengthUnit, plan: Plan | None, before: Verdict | None
) -> FrontPicture:
    """The front view; with an earlier or a planned geometry, both of them."""
    if before is not None:
        return replace(front_of_both(before, verdict, unit), notes=front_of(verdict).notes)
    if plan is not None:
        return front_of_plan(verdict, plan, unit)
    return front_with_aims(verdict, unit)


def _front_words(
    verdict: Verdict, unit: LengthUnit, plan: Plan | None, before: Verdict | None
) -> str:
    """The meaning of the lines of the front view."""
    if before is not None:
        return "Dashed: before the work. Solid: now."
    if plan is not None:
        return "Dashed: now. Solid: as planned."
    frame_end = "" if READINGS in verdict.held_back_by else frame_end_fact(verdict, unit).text
    return f"Dotted lines are the paths of the axle ends as the suspension moves. {frame_end}"


def _curve(
    verdict: Verdict, unit: LengthUnit, plan: Plan | None, before: Verdict | None
) -> CurvePicture:
    """The curve; with an earlier session and a plan, those curves too."""
    picture = curve_of(verdict, unit)
    planned = None
    if plan is not None:
        heave = (before or verdict).sweep.heave.tolist()
        planned = Trace("planned", heave, np.degrees(plan.after.motion.steer).tolist())
    if before is not None:
        trace = replace(picture.trace, name="after")
        return replace(picture, trace=trace, compared=trace_of(before, "before"), planned=planned)
    if planned is not None:
        return replace(picture, trace=replace(picture.trace, name="now"), planned=planned)
    return picture


def _cost_facts(plan: Plan) -> Iterator[Fact]:
    """Price and hours of the planned work, as far as the parts shelf says them."""
    cost = plan.cost
    if cost.prices:
        without = "" if cost.all_priced else " (not every part has a price)"
        prices = " and ".join(price_words(price) for price in cost.prices)
        yield Fact("parts", f"{prices}{without}")
    if cost.hours is not None:
        yield Fact("work", hours_words(cost.hours))


def _rule_line(row: RuleRow) -> RuleLine:
    """Row of the table of rules; a rule that does not decide is marked as advice."""
    return RuleLine(
        name=RULE_NAMES[row.rule] + ("" if row.decides else " (advice)"),
        reading=reading(row),
        limit=limit_words(row.limit, row.unit, row.at_least),
        verdict=mark_and_word(row.verdict) if row.decides else ADVISED.get(row.verdict, ""),
    )


def _capitalized(words: str) -> str:
    """Mark and word with a capital first letter of the word."""
    mark, _, word = words.partition(" ")
    return f"{mark} {word[:1].upper()}{word[1:]}"
