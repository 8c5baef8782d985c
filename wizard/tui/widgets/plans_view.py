"""The fix in one view: the plans side by side, and the details of the plan at hand."""

from collections.abc import Mapping

from textual.app import ComposeResult
from textual.containers import Container, Vertical
from textual.content import Content
from textual.widgets import Static

from core.profiles.adjuster import Adjuster
from core.text.quantity import LengthUnit
from wizard.flow.planning import Planning
from wizard.phrases.bar_lengths import bar_length_facts
from wizard.phrases.cautions import caution_facts
from wizard.phrases.costs import part_facts
from wizard.phrases.plan_cautions import clearance_facts
from wizard.phrases.plan_effects import plan_effect_facts
from wizard.phrases.plan_outcomes import outcome_rows
from wizard.phrases.plan_reasons import plan_reason_facts
from wizard.phrases.work_steps import move_facts, plan_move_words, re_measure_facts
from wizard.tui.pictures.curve import Curve
from wizard.tui.pictures.front_view import FrontView
from wizard.tui.widgets.facts import Facts
from wizard.tui.widgets.plans_table import Column, PlansTable
from wizard.tui.widgets.sectioned_view import SectionedView
from wizard.views.heights import heights_of_plan
from wizard.views.plans import PLANNED, curve_of_plan, front_of_plan
from wizard.views.work_order import order_facts


class PlansView(SectionedView):
    """Shows plans; it computes nothing."""

    SECTIONS = {
        "plans": "plans",
        "front-view": "picture",
        "curve": "curve",
        "plan-work": "work",
        "order": "order",
        "effects": "worse",
        "why": "why",
        "clearance": "check",
        "again": "again",
        "care": "care",
    }

    def compose_sections(self) -> ComposeResult:
        """Yield the result of the search, the plans, and the details of one plan."""
        with Vertical(id="plans"):
            yield Static(id="search-result")
            yield PlansTable()
        with Container(id="plan-pictures"):
            yield FrontView(id="front-view")
            yield Curve(id="curve")
        yield Facts(id="plan-work")
        yield Facts(id="order")
        yield Facts(id="effects")
        yield Facts(id="why")
        yield Facts(id="clearance")
        yield Facts(id="again")
        yield Facts(id="care")

    def say(self, result: str) -> None:
        """Show the result of the search, or its progress, in words."""
        self.query_one("#search-result", Static).update(Content(result))

    def show_none(self) -> None:
        """Show that there is no plan."""
        for section in self.SECTIONS:
            self.query_one(f"#{section}").display = section == "plans"
        self.query_one(PlansTable).columns = ()
        self.list_sections()

    def show(
        self,
        planning: Planning,
        adjusters: Mapping[str, Adjuster],
        clearance: float,
        unit: LengthUnit,
        by_height: bool = False,
    ) -> None:
        """Show plans side by side, and the details of the plan at hand.

        Parameters
        ----------
        planning : Planning
        adjusters : mapping of Adjuster
            By link.
        clearance : float
            Distance of both links that the profile asks for, mm.
        unit : "in" or "mm"
        by_height : bool
            Show the peak steer against the ride height instead of the steer against the travel.
        """
        verdict, plans = planning.verdict, planning.plans
        table = self.query_one(PlansTable)
        table.columns = [Column(title, plan_move_words(plan, unit)) for title, plan in plans]
        table.rows = outcome_rows(verdict, [plan for _, plan in plans], unit)
        table.at = planning.index
        title, plan = plans[planning.index]
        front, curve = self.query_one(FrontView), self.query_one(Curve)
        front.display = curve.display = True
        front.show(front_of_plan(verdict, plan, unit))
        curve_of = heights_of_plan if by_height else curve_of_plan
        curve.show(curve_of(verdict, plan, unit, PLANNED))
        work = (*move_facts(verdict, plan, unit), *bar_length_facts(plan, adjusters, unit))
        self.show_facts("plan-work", f"The work of {title}", work)
        order = (*part_facts(plan, unit), *order_facts(verdict, plan, adjusters, unit))
        self.show_facts("order", "Parts, and the work in order, each step to be ticked off", order)
        effects = plan_effect_facts(verdict, plan, clearance, unit)
        self.show_facts("effects", "What gets worse, and what changes besides", effects)
        self.show_facts(
            "why", "Why each rule ends where it does", plan_reason_facts(verdict, plan, unit)
        )
        self.show_facts("clearance", "Check for clearance, and with care", clearance_facts(plan))
        self.show_facts("again", "Measure again afterwards", re_measure_facts(plan))
        self.show_facts("care", "Before any work", caution_facts())
        self.list_sections()
