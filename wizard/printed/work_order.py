"""The work order on paper: boxes to tick, and blanks for torque and initials."""

from dataclasses import dataclass, replace

from markupsafe import Markup

from core.documents.document import Document, value_at
from core.fix.plan import Plan
from core.profiles.shop import Shop
from core.text.plain_text import plain
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard import __version__
from wizard.phrases.cautions import CAUTION_IN_SHORT
from wizard.phrases.fact import Fact
from wizard.phrases.reported import reported_facts
from wizard.printed.front_svg import front_svg
from wizard.printed.paper import Paper
from wizard.printed.rendering import render
from wizard.views.plans import front_of_plan
from wizard.views.work_order import WorkOrder

TEMPLATE = "work_order.html"

VEHICLE_PATHS = ("vehicle.description", "vehicle.odometer", "session.technician")


@dataclass(frozen=True)
class OrderPage:
    """Data of the printed work order, which the template lays out."""

    title: str
    paper: Paper
    shop: Shop
    order: WorkOrder
    vehicle_facts: tuple[Fact, ...]
    front_drawing: Markup
    caution: str = CAUTION_IN_SHORT
    program_version: str = __version__


def order_html(
    document: Document,
    verdict: Verdict,
    plan: Plan,
    order: WorkOrder,
    unit: LengthUnit,
    shop: Shop,
    paper: Paper,
) -> str:
    """HTML text of a work order.

    Parameters
    ----------
    document : mapping
        The record.
    verdict : Verdict
    plan : Plan
    order : WorkOrder
        The order of the plan.
    unit : "in" or "mm"
    shop : Shop
    paper : "letter" or "a4"
    """
    tag = plain(value_at(document, "vehicle.tag", ""))
    # The order says where each pivot goes; a second wanted place beside it would be in the way.
    front = replace(front_of_plan(verdict, plan, unit), aims=())
    page = OrderPage(
        title=f"{tag}: work order",
        paper=paper,
        shop=shop,
        order=order,
        vehicle_facts=tuple(reported_facts(document, VEHICLE_PATHS)),
        front_drawing=Markup(front_svg(front)),
    )
    return render(TEMPLATE, page)
