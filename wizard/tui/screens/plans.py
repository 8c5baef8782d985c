"""The fix: plans side by side, one of them to be chosen, changed or tried out further."""

from __future__ import annotations

from collections.abc import Sequence
from time import monotonic

from textual import work
from textual.app import ComposeResult
from textual.worker import get_current_worker

from core.documents.document import Document, with_value
from core.documents.entries import EntryError, units_of
from core.documents.record import RecordError
from core.fix.plan import Plan
from core.fix.search import SearchResult, search
from core.profiles.corrections import Correction
from core.profiles.profile import Profile
from core.verdict.assess import assess
from core.verdict.verdict import Overall, Verdict
from wizard.flow.flow import Flow, applicable_answers
from wizard.flow.planning import (
    BENCH,
    CHANGED,
    Planning,
    TitledPlan,
    adjusters_in,
    kept_plan,
    offered_corrections,
    switched_on,
    with_plan,
    with_switched_on,
)
from wizard.phrases.answer_words import UNIT_WORDS
from wizard.phrases.help_on_plans import help_on_plans
from wizard.phrases.help_section import HelpSection
from wizard.phrases.plan_outcomes import outcome_words
from wizard.phrases.search_result import progress_words, search_result_words
from wizard.phrases.session_names import opening_time, vehicle_tag
from wizard.tui.screens.bench import BenchScreen
from wizard.tui.screens.change_move import ask_move
from wizard.tui.screens.shop_corrections import ask_adjuster, what_it_has
from wizard.tui.screens.step_screen import StepScreen
from wizard.tui.widgets.keys import Key
from wizard.tui.widgets.plans_view import PlansView

OFTEN = 0.1
"""s between two words on how far the search is."""


class Stopped(Exception):
    """The search is not wanted any more."""


class PlansScreen(StepScreen):
    """The step Fix of a session that is measured; left with the flow to go on with.

    Parameters
    ----------
    flow : Flow
        At the step.
    earlier : mapping or None
        The session that is measured again; a plan does without it.
    """

    BINDINGS = [
        ("enter", "choose", "choose"),
        ("left", "step(-1)", "left"),
        ("right", "step(1)", "right"),
        ("s,S", "shop", "shop"),
        ("m,M", "move", "move"),
        ("b,B", "bench", "bench"),
        ("a,A", "adjuster", "adjuster"),
        ("f4", "without", "no plan"),
    ]

    def __init__(self, flow: Flow, earlier: Document | None = None) -> None:
        super().__init__(units_of(flow.document))
        assert flow.profile is not None  # a session has one before any reading is asked for
        self.flow = flow
        self.profile: Profile = flow.profile
        self.corrections: tuple[Correction, ...] = ()
        self.trouble, self.fault = "", ""
        self.verdict: Verdict | None = None
        self.planning: Planning | None = None
        self.own: tuple[TitledPlan, ...] = ()
        self.doubted: Plan | None = None  # chosen once, and it does not steer true
        self.hurries = False  # Enter was pressed before it was known what there is to choose

    def compose(self) -> ComposeResult:
        """The page is all there is."""
        yield PlansView()

    @property
    def page(self) -> PlansView:
        """The page."""
        return self.query_one(PlansView)

    def on_mount(self) -> None:
        """Search, with all that the shop has."""
        self.corrections, self.trouble = offered_corrections(
            self.profile, self.app.surroundings.parts_shelf, self.app.profile_folders
        )
        self.begin()

    def begin(self) -> None:
        """Search afresh."""
        self.planning = None
        self.page.show_none()
        self.page.say(progress_words(0.0))
        self.show()
        self.look_for_plans(switched_on(self.flow.document, self.corrections))

    @work(thread=True, exclusive=True)
    def look_for_plans(self, corrections: tuple[Correction, ...]) -> None:
        """Search while the screen stays alive."""
        worker, said = get_current_worker(), monotonic()

        def progress(share: float) -> None:
            nonlocal said
            if worker.is_cancelled:
                raise Stopped
            if monotonic() - said > OFTEN:
                said = monotonic()
                self.app.call_from_thread(self.page.say, progress_words(share))

        try:
            verdict = self.verdict or self.judged()
            fix = search(verdict, corrections, progress)
        except EntryError as error:
            self.app.call_from_thread(self.cannot, str(error))
        except Stopped:
            return
        else:
            if not worker.is_cancelled:
                self.app.call_from_thread(self.found, verdict, fix)

    def judged(self) -> Verdict:
        """The verdict on the session as it is. Raises EntryError."""
        return assess(applicable_answers(self.flow.document, self.profile), lambda _: self.profile)

    def cannot(self, fault: str) -> None:
        """There is no verdict to plan on."""
        self.fault = fault
        self.page.say(f"— no plan without a verdict: {fault}")
        self.say_keys()

    def found(self, verdict: Verdict, fix: SearchResult) -> None:
        """Show what was found, at the plan that was chosen before."""
        self.verdict = verdict
        kept = kept_plan(self.flow.document, verdict, self.corrections)
        self.planning = Planning(verdict, fix, self.own).with_kept(kept)
        if self.hurries and not self.planning.plans:
            self.action_choose()
        else:
            self.show()

    def show(self) -> None:
        """Show the plans in the units at hand."""
        document, planning = self.flow.document, self.planning
        self.page.entitle(
            f"{vehicle_tag(document)}, what to move, {opening_time(document)}",
            UNIT_WORDS[self.unit],
        )
        if planning is not None:
            answer = search_result_words(planning.verdict, planning.search_result)
            self.page.say(f"{answer} {self.trouble}".strip())
            if planning.plans:
                adjusters = adjusters_in(document, self.profile)
                self.page.show(planning, adjusters, self.unit)
            else:
                self.page.show_none()
        self.say_keys()

    def keys(self) -> tuple[Key, ...]:
        """What can be done with the plan at hand comes first."""
        planning, plan = self.planning, self.planning and self.planning.plan
        ready = planning or (self.fault and self.flow.missing)
        return (
            *([Key("Enter", "choose it" if plan else "go on", "choose")] if ready else []),
            Key("Esc", "back", "back"),
            *([Key("← →", "plan", "step(1)")] if plan else []),
            *([Key("M", "change a move", "move")] if plan and plan.moves else []),
            *([Key("B", "bench", "bench")] if planning else []),
            *([Key("S", "shop", "shop")] if self.searches else []),
            *([Key("A", "adjusters", "adjuster")] if plan else []),
            *([Key("F4", "no plan", "without")] if plan or not planning else []),
            *super().keys(),
            Key("F3", "steps", "steps"),
            Key("F9", "leave", "leave"),
        )

    @property
    def searches(self) -> bool:
        """Whether there is anything to look for."""
        return self.planning is not None and self.planning.verdict.overall == Overall.BUMP_STEER

    def help(self) -> Sequence[HelpSection]:
        """Help on the plans."""
        return help_on_plans()

    def plan_again(self, planning: Planning) -> None:
        """Show other plans, or another one at hand."""
        self.planning, self.own, self.doubted = planning, planning.made_by_hand, None
        self.show()

    def action_step(self, by: int) -> None:
        """To another plan."""
        if self.planning:
            self.plan_again(self.planning.stepped(by))

    def action_plan(self, index: int) -> None:
        """To a plan that was pressed."""
        if self.planning:
            self.plan_again(self.planning.at_plan(index))

    def action_choose(self) -> None:
        """Take the plan at hand, or go on; to what is missing where there is no verdict."""
        missing, plan = self.flow.missing, self.planning and self.planning.plan
        if self.planning and plan and not plan.steers_true and self.doubted is not plan:
            self.doubted = plan
            outcome = outcome_words(self.planning.verdict, plan)
            self.notify(f"{outcome}. Enter once more chooses it.", markup=False)
        elif self.planning:
            self.dismiss(with_plan(self.flow, self.planning.plan))
        elif self.fault and missing:
            self.dismiss(self.flow.going_to(missing[0].path))
        else:
            self.hurries = True

    def action_without(self) -> None:
        """Go on without a plan."""
        self.dismiss(with_plan(self.flow, None))

    def action_move(self) -> None:
        """Change a move of the plan at hand."""

        def changed(plan: Plan) -> None:
            if self.planning:
                self.plan_again(self.planning.with_plan_by_hand(CHANGED, plan))

        if self.planning and self.planning.plan:
            ask_move(self.app, self.planning.verdict, self.planning.plan, self.unit, changed)

    def action_bench(self) -> None:
        """Try the plan at hand out further."""
        if self.verdict is None or self.planning is None:
            return

        def tried(plan: Plan | None) -> None:
            if plan is not None and self.planning:
                self.plan_again(self.planning.with_plan_by_hand(BENCH, plan))

        plan = self.planning.plan
        tag = vehicle_tag(self.flow.document)
        self.app.push_screen(BenchScreen(self.verdict, tag, self.unit, plan, True), tried)

    def action_shop(self) -> None:
        """Say what the shop can make, and search again."""

        def said(names: list[str] | None) -> None:
            if names is not None:
                self.note(with_switched_on(self.flow.document, self.corrections, names))
                self.begin()

        if self.searches:
            on = switched_on(self.flow.document, self.corrections)
            self.app.push_screen(what_it_has(self.corrections, on, self.unit), said)

    def action_adjuster(self) -> None:
        """Say how a bar is set in length."""

        def said(link: str, table: dict[str, str]) -> None:
            self.note(with_value(self.flow.document, f"adjusters.{link}", table))
            self.show()

        if self.planning and self.planning.plan:
            adjusters = adjusters_in(self.flow.document, self.profile)
            ask_adjuster(self.app, adjusters, self.unit, said)

    def note(self, document: Document) -> None:
        """Put into the draft what was said here."""
        self.flow = self.flow.with_document(document)
        try:
            self.app.draft_store.keep(document)
        except RecordError as error:
            self.notify(str(error), markup=False)
