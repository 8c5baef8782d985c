"""The fix on one page: the plans side by side, and all about the one at hand below them."""

from __future__ import annotations

from collections.abc import Mapping

from textual.app import ComposeResult
from textual.containers import Container, Vertical
from textual.content import Content
from textual.widgets import Static

from core.profiles.adjuster import Adjuster
from core.text.quantity import LengthUnit
from wizard.flow.planning import Planning
from wizard.phrases.bar_lengths import bar_length_facts
from wizard.phrases.plan_cautions import caution_facts, clearance_facts
from wizard.phrases.plan_effects import plan_effect_facts
from wizard.phrases.plan_outcomes import outcome_rows
from wizard.phrases.plan_reasons import plan_reason_facts
from wizard.phrases.work_steps import move_facts, plan_move_words, re_measure_facts
from wizard.tui.pictures.curve import Curve
from wizard.tui.pictures.front_view import FrontView
from wizard.tui.widgets.facts import Facts
from wizard.tui.widgets.plans_table import Column, PlansTable
from wizard.tui.widgets.sectioned_view import SectionedView
from wizard.views.plans import curve_of_plan, front_of_plan


class PlansView(SectionedView):
    """Shows plans; it computes nothing."""

    PARTS = {
        "plans": "plans",
        "front-view": "picture",
        "curve": "curve",
        "plan-work": "work",
        "effects": "worse",
        "why": "why",
        "clearance": "check",
        "again": "again",
        "care": "care",
    }

    def sheet(self) -> ComposeResult:
        """Yield from the top: the result, the plans, and the details of the marked one."""
        with Vertical(id="plans"):
            yield Static(id="fix-answer")
            yield PlansTable()
        with Container(id="plan-pictures"):
            yield FrontView(id="front-view")
            yield Curve(id="curve")
        yield Facts(id="plan-work")
        yield Facts(id="effects")
        yield Facts(id="why")
        yield Facts(id="clearance")
        yield Facts(id="again")
        yield Facts(id="care")

    def say(self, answer: str) -> None:
        """The answer, or how far the search is."""
        self.query_one("#fix-answer", Static).update(Content(answer))

    def show_none(self) -> None:
        """Show that there is no plan."""
        self.set_class(True, "-no-plan")
        for part in self.PARTS:
            self.query_one(f"#{part}").display = part == "plans"
        self.query_one(PlansTable).columns = ()
        self.name_parts()

    def show(self, planning: Planning, adjusters: Mapping[str, Adjuster], unit: LengthUnit) -> None:
        """Show plans side by side, and all about the one at hand."""
        self.set_class(False, "-no-plan")
        verdict, plans = planning.verdict, planning.plans
        table = self.query_one(PlansTable)
        table.columns = [Column(title, plan_move_words(plan, unit)) for title, plan in plans]
        table.rows = outcome_rows(verdict, [plan for _, plan in plans], unit)
        table.at = planning.index
        title, plan = plans[planning.index]
        front, curve = self.query_one(FrontView), self.query_one(Curve)
        front.display = curve.display = True
        front.show(front_of_plan(verdict, plan, unit))
        curve.show(curve_of_plan(verdict, plan, unit))
        work = (*move_facts(verdict, plan, unit), *bar_length_facts(plan, adjusters, unit))
        self.facts("plan-work", f"The work of {title}", work)
        effects = plan_effect_facts(verdict, plan, unit)
        self.facts("effects", "What gets worse, and what changes besides", effects)
        self.facts(
            "why", "Why each rule ends where it does", plan_reason_facts(verdict, plan, unit)
        )
        self.facts("clearance", "Check for clearance, and with care", clearance_facts(plan))
        self.facts("again", "Measure again afterwards", re_measure_facts(plan))
        self.facts("care", "Before any work", caution_facts())
        self.name_parts()
