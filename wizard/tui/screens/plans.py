"""The fix: plans side by side, one of them to be chosen, changed or tried out further."""

from collections.abc import Sequence
from dataclasses import replace
from functools import partial
from time import monotonic

from textual.app import ComposeResult

from core.documents.document import Document, with_value
from core.documents.entries import EntryError, units_of
from core.fix.plan import Plan
from core.fix.ranking import By, known_orders
from core.fix.search import SearchResult, search
from core.profiles.conversions import Change
from core.profiles.profile import Profile
from core.verdict.assess import assess
from core.verdict.verdict import Overall, Verdict
from wizard.flow.answers import applicable_answers
from wizard.flow.flow import Flow
from wizard.flow.planning import (
    BENCH,
    CHANGED,
    Planning,
    adjusters_in,
    kept_plan,
    offered_corrections,
    switched_on,
    with_plan,
    with_switched_on,
)
from wizard.phrases.answer_words import UNIT_WORDS
from wizard.phrases.bench import no_bench_words
from wizard.phrases.help_on_plans import help_on_plans
from wizard.phrases.help_section import HelpSection
from wizard.phrases.plan_outcomes import plan_outcome_words
from wizard.phrases.search_result import progress_words, search_result_words
from wizard.phrases.session_names import opening_time, vehicle_tag
from wizard.phrases.what_next import next_after_search
from wizard.tui.screens.bench import BenchScreen
from wizard.tui.screens.change_move import ask_move
from wizard.tui.screens.plans_state import CannotPlan, Planned, PlansState, Searching
from wizard.tui.screens.shop_corrections import ask_adjuster, corrections_question
from wizard.tui.screens.step_screen import StepScreen
from wizard.tui.screens.workers import Reporter, run_beside
from wizard.tui.widgets.keys import Key
from wizard.tui.widgets.plans_view import PlansView

PROGRESS_INTERVAL = 0.1
"""Least time between two reports on the progress of the search, s."""


class PlansScreen(StepScreen):
    """The step Fix of a session that is measured. Its result is the flow to continue with.

    Parameters
    ----------
    flow : Flow
        At the step.
    earlier : mapping or None
        The session that is measured again; the plans do not use it.

    Attributes
    ----------
    profile : Profile
    corrections : tuple of Correction
        Corrections of the profile and of the parts shelf.
    shelf_fault : str
        Fault of the parts shelf, in words; empty if there is none.
    state : PlansState
    by_height : bool
        True if the curve is that of the peak steer against the ride height.
    by : "parts", "price" or "hours"
        What decides which plans come first.
    """

    BINDINGS = [
        ("enter", "choose", "choose"),
        ("left", "step(-1)", "left"),
        ("right", "step(1)", "right"),
        ("s,S", "shop", "shop"),
        ("m,M", "move", "move"),
        ("b,B", "bench", "bench"),
        ("h,H", "heights", "by ride height"),
        ("a,A", "adjuster", "adjuster"),
        ("p,P", "sort", "another order"),
        ("f4", "without", "no plan"),
    ]

    def __init__(self, flow: Flow, earlier: Document | None = None) -> None:
        super().__init__(units_of(flow.document))
        assert flow.profile is not None  # a session has one before any reading is asked for
        self.flow = flow
        self.profile: Profile = flow.profile
        self.corrections: tuple[Change, ...] = ()
        self.shelf_fault = ""
        self.state: PlansState = Searching()
        self.by_height = False
        self.by: By = "parts"

    def compose(self) -> ComposeResult:
        """Yield the view of the plans."""
        yield PlansView()

    @property
    def view(self) -> PlansView:
        """View of the plans."""
        return self.query_one(PlansView)

    @property
    def planning(self) -> Planning | None:
        """The plans, once the search has ended."""
        return self.state.planning if isinstance(self.state, Planned) else None

    @property
    def plan(self) -> Plan | None:
        """The plan at hand."""
        return self.planning.plan if self.planning else None

    def on_mount(self) -> None:
        """Search with all corrections that the shop can make."""
        self.corrections, self.shelf_fault = offered_corrections(
            self.flow.document,
            self.profile,
            self.app.surroundings.parts_shelf,
            self.app.profile_folders,
        )
        self.start_search(Searching())

    def start_search(self, state: Searching) -> None:
        """Search in a thread; the screen stays alive."""
        self.state = state
        self.view.show_none()
        self.view.say(progress_words(0.0))
        self.show()
        corrections = switched_on(self.flow.document, self.corrections)
        run_beside(self, partial(self.search_plans, state.verdict, corrections))

    def search_plans(
        self, verdict: Verdict | None, corrections: tuple[Change, ...], reporter: Reporter
    ) -> None:
        """Search in the thread of the worker, and report progress and result.

        Parameters
        ----------
        verdict : Verdict or None
            None if the session is still to be judged.
        corrections : tuple of Correction
        reporter : Reporter
        """
        reported_at = monotonic()

        def report_progress(share: float) -> None:
            nonlocal reported_at
            reporter.stop_if_unwanted()
            if monotonic() - reported_at > PROGRESS_INTERVAL:
                reported_at = monotonic()
                reporter.call(self.show_progress, share)

        try:
            verdict = verdict or self.assess_session()
            result = search(verdict, corrections, report_progress, self.by)
        except EntryError as error:
            reporter.call(self.show_fault, str(error))
        else:
            reporter.call(self.show_result, verdict, result)

    def assess_session(self) -> Verdict:
        """Return the verdict on the session. Raises EntryError."""
        return assess(applicable_answers(self.flow.document, self.profile), lambda _: self.profile)

    def show_progress(self, share: float) -> None:
        """Show the progress of the search, a share of 1."""
        self.view.say(progress_words(share))

    def show_fault(self, fault: str) -> None:
        """Show why there is no verdict to plan on."""
        self.state = CannotPlan(fault)
        leads_on = "; Enter goes there" if self.flow.missing else "; Esc goes back"
        self.view.say(f"— no plan without a verdict: {fault}{leads_on}")
        self.say_keys()

    def show_result(self, verdict: Verdict, result: SearchResult) -> None:
        """Show the plans, at the plan that was chosen before."""
        assert isinstance(self.state, Searching)
        continues = self.state.continues
        kept = kept_plan(self.flow.document, verdict, self.corrections)
        self.state = self.state.planned(verdict, result, kept)
        if continues and self.plan is None and self.app.screen is self:
            self.action_choose()
        else:
            self.show()

    def show(self) -> None:
        """Show the plans in the unit at hand."""
        document, planning = self.flow.document, self.planning
        self.view.show_heading(
            f"{vehicle_tag(document)}, what to move, {opening_time(document)}",
            UNIT_WORDS[self.unit],
        )
        if planning is not None:
            result_words = search_result_words(planning.verdict, planning.search_result, self.by)
            following = next_after_search(planning.verdict, planning.search_result)
            words = (result_words, self.shelf_fault, following)
            self.view.say(" ".join(filter(None, words)))
            if planning.plans:
                adjusters = adjusters_in(document, self.profile)
                clearance = self.profile.clearance
                self.view.show(planning, adjusters, clearance, self.unit, self.by_height)
            else:
                self.view.show_none()
        self.say_keys()

    def keys(self) -> tuple[Key, ...]:
        """Keys that do something now, those for the plan at hand first."""
        planning, plan = self.planning, self.plan
        may_try = planning is not None and not no_bench_words(planning.verdict)
        can_continue = planning or (isinstance(self.state, CannotPlan) and self.flow.missing)
        return (
            *([Key("Enter", "choose it" if plan else "go on", "choose")] if can_continue else []),
            Key("Esc", "back", "back"),
            *([Key("← →", "plan", "step(1)")] if plan else []),
            *([Key("M", "change a move", "move")] if plan and plan.moves else []),
            *([Key("B", "bench", "bench")] if may_try else []),
            *(
                [Key("H", "by travel" if self.by_height else "by ride height", "heights")]
                if plan
                else []
            ),
            *([Key("S", "shop", "shop")] if self.has_bump_steer else []),
            *([Key("A", "adjusters", "adjuster")] if plan else []),
            *([Key("P", f"by {self.next_order}", "sort")] if self.can_be_ordered else []),
            *([Key("F4", "no plan", "without")] if plan or not planning else []),
            *super().keys(),
            Key("F3", "steps", "steps"),
            Key("F9", "leave", "leave"),
        )

    @property
    def has_bump_steer(self) -> bool:
        """True if a search has ended on a vehicle with bump steer."""
        return self.planning is not None and self.planning.verdict.overall == Overall.BUMP_STEER

    @property
    def orders(self) -> tuple[By, ...]:
        """Orders in which the plans can differ."""
        return known_orders([change.part for change in self.corrections])

    @property
    def next_order(self) -> By:
        """The order after the present one."""
        orders = self.orders
        return orders[(orders.index(self.by) + 1) % len(orders)]

    @property
    def can_be_ordered(self) -> bool:
        """True if there are plans, and a price or hours are known."""
        return self.has_bump_steer and len(self.orders) > 1

    def help(self) -> Sequence[HelpSection]:
        """Help on the plans."""
        return help_on_plans(is_filed=False)

    def show_planning(self, planning: Planning) -> None:
        """Show other plans, or another plan at hand."""
        self.state = Planned(planning)
        self.show()

    def action_step(self, by: int) -> None:
        """Go to another plan, by its distance in the table."""
        if self.planning:
            self.show_planning(self.planning.stepped(by))

    def action_plan(self, index: int) -> None:
        """Go to a plan by its place in the table."""
        if self.planning:
            self.show_planning(self.planning.at_plan(index))

    def action_choose(self) -> None:
        """Choose the plan at hand; without a plan go to the next step or to a missing answer."""
        state, plan, missing = self.state, self.plan, self.flow.missing
        if isinstance(state, Searching):
            self.state = replace(state, continues=True)
        elif isinstance(state, CannotPlan):
            if missing:
                self.dismiss(self.flow.going_to(missing[0].path))
        elif plan and not plan.steers_true and state.warned_of is not plan:
            self.state = replace(state, warned_of=plan)
            outcome = plan_outcome_words(state.planning.verdict, plan)
            self.notify(f"{outcome}. Enter once more chooses it.", markup=False)
        else:
            self.dismiss(with_plan(self.flow, plan))

    def action_without(self) -> None:
        """Go to the next step without a plan."""
        self.dismiss(with_plan(self.flow, None))

    def add_own(self, title: str, plan: Plan | None) -> None:
        """Show a plan made by hand, if one was made."""
        if plan is not None and self.planning:
            self.show_planning(self.planning.with_plan_by_hand(title, plan))

    def action_move(self) -> None:
        """Change a move of the plan at hand."""
        if self.planning and self.plan:
            changed = partial(self.add_own, CHANGED)
            ask_move(self.app, self.planning.verdict, self.plan, self.unit, changed)

    def action_bench(self) -> None:
        """Try the plan at hand out further."""
        if self.planning and (words := no_bench_words(self.planning.verdict)):
            self.app.warn(words)
        elif self.planning:
            tag = vehicle_tag(self.flow.document)
            bench = BenchScreen(self.planning.verdict, tag, self.unit, self.plan, may_keep=True)
            self.app.push_screen(bench, partial(self.add_own, BENCH))

    def action_heights(self) -> None:
        """Show the curve against the ride height, or against the travel again."""
        if self.plan:
            self.by_height = not self.by_height
            self.show()

    def action_sort(self) -> None:
        """Search again for the plans that come first in the next order."""
        if self.can_be_ordered and isinstance(self.state, Planned):
            self.by = self.next_order
            self.start_search(self.state.searching())

    def action_shop(self) -> None:
        """Ask which corrections the shop can make, and search again."""

        def search_again(names: list[str] | None) -> None:
            if names is not None and isinstance(self.state, Planned):
                self.keep_document(with_switched_on(self.flow.document, self.corrections, names))
                self.start_search(self.state.searching())

        if self.has_bump_steer:
            chosen = switched_on(self.flow.document, self.corrections)
            question = corrections_question(self.corrections, chosen, self.unit)
            self.app.push_screen(question, search_again)

    def action_adjuster(self) -> None:
        """Ask how a bar is set in length."""

        def show_adjuster(link: str, table: dict[str, str]) -> None:
            self.keep_document(with_value(self.flow.document, f"adjusters.{link}", table))
            self.show()

        if self.plan:
            adjusters = adjusters_in(self.flow.document, self.profile)
            ask_adjuster(self.app, adjusters, self.unit, show_adjuster)

    def keep_document(self, document: Document) -> None:
        """Write a changed document to the draft."""
        self.flow, _ = self.app.keep_or_warn(self.flow.with_document(document), self.flow)
