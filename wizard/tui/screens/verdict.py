"""The verdict: the step of a session, and the base of the screen of a filed record."""

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

from textual.app import ComposeResult

from core.documents.document import Document
from core.documents.entries import EntryError, units_of
from core.fix.plan import Plan
from core.profiles.profile import Profile, ProfileError
from core.readings.photograph import PHOTOGRAPHS, is_mark
from core.verdict.assess import assess
from core.verdict.verdict import Verdict
from wizard.flow.answers import applicable_answers
from wizard.flow.flow import Flow
from wizard.flow.mending import mended
from wizard.flow.planning import with_filed_plan
from wizard.flow.retake import Retake
from wizard.phrases.answer_words import UNIT_WORDS
from wizard.phrases.bench import no_bench_words
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.help_on_verdict import help_on_verdict
from wizard.phrases.help_section import HelpSection
from wizard.phrases.next_reading import READ_AS
from wizard.phrases.session_names import session_words, vehicle_tag
from wizard.phrases.slips import slip_sentence
from wizard.phrases.what_next import next_after_verdict
from wizard.questions.short_way import HELPS_MOST
from wizard.tui.screens.bench import BenchScreen
from wizard.tui.screens.compare import CompareScreen
from wizard.tui.screens.direct import DirectScreen
from wizard.tui.screens.sectioned import Result, SectionedScreen
from wizard.tui.screens.step_screen import StepScreen
from wizard.tui.screens.travel import TravelScreen
from wizard.tui.screens.workers import Reporter, is_open, run_beside
from wizard.tui.widgets.keys import Key
from wizard.tui.widgets.photographs_part import PhotographsPart
from wizard.tui.widgets.verdict_view import VerdictView

DRAWING = "drawing the doubt …"


class VerdictScreen(SectionedScreen[Result]):
    """Shows a verdict at once, and again when the uncertainty of its peaks has been drawn.

    Parameters
    ----------
    document : mapping
    profile_of : callable
        Finds a profile by its name.

    Attributes
    ----------
    verdict : Verdict or None
        None if the session cannot be judged.
    drawing : str
        Line about draws that are not done yet; empty once they are done.
    """

    BINDINGS = [("t,T", "travel", "travel"), ("b,B", "bench", "bench")]
    MAY_KEEP = False
    """True if a plan made on the bench can be kept."""

    def __init__(self, document: Document, profile_of: Callable[[str], Profile]) -> None:
        super().__init__(units_of(document))
        self.document = document
        self.profile_of = profile_of
        self.verdict: Verdict | None = None
        self.drawing = ""

    def compose(self) -> ComposeResult:
        """Yield the view of the verdict."""
        yield VerdictView()

    def on_mount(self) -> None:
        """Judge the session."""
        self.judge()

    def judge(self) -> None:
        """Show the verdict by linear propagation at once: the draws take longer."""
        try:
            self.verdict = assess(self.document, self.profile_of, draws=0)
        except (EntryError, ProfileError) as error:
            reason = Fact("", self.reason_words(error), LOOK)
            self.query_one(VerdictView).cannot([reason])
        else:
            self.drawing = DRAWING
            self.call_after_refresh(self.complete_view)
        self.show()

    def reason_words(self, error: EntryError | ProfileError) -> str:
        """Reason for having no verdict."""
        return str(error)

    async def complete_view(self) -> None:
        """Complete the view after the verdict was painted, then draw the uncertainty."""
        view = self.query_one(VerdictView)
        await view.complete()
        photographs = self.verdict.session.photographs if self.verdict else ()
        if photographs and is_open(self):
            sharp = self.app.sharp_picture
            await view.show_photographs(PhotographsPart(photographs, self.folder, sharp))
        if is_open(self):  # the screen may have been left meanwhile
            self.show()
            run_beside(self, self.draw_uncertainty)

    def show(self) -> None:
        """Show the verdict in the unit at hand."""
        if self.verdict:
            self.query_one(VerdictView).show(self.verdict, self.document, self.unit)
        self.show_heading()

    def show_heading(self) -> None:
        """Show the session, the unit and the keys."""
        right = f"{self.drawing}  {UNIT_WORDS[self.unit]}".strip()
        self.query_one(VerdictView).show_heading(session_words(self.document), right)
        self.say_keys()

    def draw_uncertainty(self, reporter: Reporter) -> None:
        """Draw the uncertainty of the peaks in the thread of the worker."""
        reporter.call(self.show_drawn, assess(self.document, self.profile_of))

    def show_drawn(self, verdict: Verdict) -> None:
        """Show the drawn uncertainty in place of the linear one."""
        self.verdict, self.drawing = verdict, ""
        self.query_one(VerdictView).tell(verdict, self.unit)
        self.show_heading()

    @property
    def folder(self) -> Path:
        """The vehicle's folder, which holds its photographs."""
        return self.app.files / vehicle_tag(self.document)

    def keys(self) -> tuple[Key, ...]:
        """Keys to the travel and to the bench, if there is a verdict that allows it."""
        if not self.verdict:
            return super().keys()
        bench = () if no_bench_words(self.verdict) else (Key("B", "bench", "bench"),)
        return (Key("T", "travel", "travel"), *bench, *super().keys())

    def help(self) -> Sequence[HelpSection]:
        """Help on a verdict."""
        return help_on_verdict(is_filed=not self.MAY_KEEP)

    def action_travel(self) -> None:
        """Show the axle through its travel."""
        if self.verdict:
            self.app.push_screen(TravelScreen(self.verdict, self.unit, vehicle_tag(self.document)))

    def action_bench(self) -> None:
        """Try other places of the pivots, unless they cannot be trusted."""
        if self.verdict and (words := no_bench_words(self.verdict)):
            self.app.warn(words)
        elif self.verdict:
            tag = vehicle_tag(self.document)
            bench = BenchScreen(self.verdict, tag, self.unit, may_keep=self.MAY_KEEP)
            self.app.push_screen(bench, self.keep_plan)

    def keep_plan(self, plan: Plan | None) -> None:
        """Keep a plan from the bench; a filed session keeps none."""


class VerdictStep(StepScreen, VerdictScreen[Any]):
    """The verdict on a session that is measured. Its result: `wizard.tui.screens.step_screens`.

    Parameters
    ----------
    flow : Flow
        At the step of the verdict.
    earlier : mapping or None
        The session that is measured again.
    """

    BINDINGS = [
        ("enter", "next_step", "go on"),
        ("a,A", "again", "again"),
        ("s,S", "suspect", "suspect"),
        ("m,M", "mend", "mend"),
        ("c,C", "compare", "compare"),
        ("d,D", "direct", "direct"),
    ]

    MAY_KEEP = True

    def __init__(self, flow: Flow, earlier: Document | None) -> None:
        self.flow, self.earlier = flow, earlier
        profile = flow.profile
        assert profile is not None  # a session has one before any reading is asked for
        super().__init__(applicable_answers(flow.document, profile), lambda _: profile)

    def keys(self) -> tuple[Key, ...]:
        """Keys: to the next step first, then to the readings that the verdict asks for."""
        verdict = self.verdict
        return (
            Key("Enter", "go on", "next_step"),
            *([Key("A", "take it again", "again")] if verdict and self.advised else []),
            *([Key("A", "add a photograph", "again")] if self.is_photograph_advised else []),
            *([Key("M", "mend the slip", "mend")] if verdict and verdict.slips else []),
            *(
                [Key("S", "suspect reading", "suspect")]
                if verdict and verdict.suspect_groups
                else []
            ),
            *([Key("C", "before and after", "compare")] if verdict and self.earlier else []),
            *super().keys(),
            *([Key("D", "direct check", "direct")] if verdict else []),
            Key("Esc", "back", "back"),
            Key("F3", "steps", "steps"),
            Key("F9", "leave", "leave"),
        )

    def show_heading(self) -> None:
        """Show the session, the unit and the keys, and what to do next."""
        super().show_heading()
        words = ""
        if self.verdict is not None:
            refines_at = HELPS_MOST.name if self.flow.is_short else "Cross-checks"
            follows = self.earlier is not None
            words = next_after_verdict(self.verdict, self.advised, refines_at, follows)
        self.query_one(VerdictView).say_next(words)

    def reason_words(self, error: EntryError | ProfileError) -> str:
        """Questions still to be answered, or the fault of the session."""
        missing = self.flow.missing
        if not missing:
            return super().reason_words(error)
        more = f", and {len(missing) - 1} more" if len(missing) > 1 else ""
        where = self.flow.step_of(missing[0]).name
        return f"still to be answered: {missing[0].name} (step {where}){more}; Enter goes there"

    def keep_plan(self, plan: Plan | None) -> None:
        """Keep a plan from the bench in the session; the step Fix shows it."""
        if plan is not None:
            flow = self.flow.with_document(with_filed_plan(self.flow.document, plan))
            self.flow, is_kept = self.app.keep_or_warn(flow, self.flow)
            if is_kept:
                self.document = applicable_answers(self.flow.document, self.flow.profile)
                self.show()
                self.notify("kept as the plan of this session; the step Fix shows it")

    @property
    def advised(self) -> tuple[str, ...]:
        """Readings that the verdict asks for: to be repeated, or to be taken at all."""
        advice = self.verdict.advice if self.verdict else None
        if advice is None:
            return ()
        return advice.readings or tuple(READ_AS.get(name, name) for name in advice.skipped)

    @property
    def is_photograph_advised(self) -> bool:
        """True if one more photograph would take most doubt away."""
        advice = self.verdict.advice if self.verdict else None
        return advice is not None and advice.photograph is not None

    def action_next_step(self) -> None:
        """Go to the comparison or the next step; without a verdict go to a missing answer."""
        missing = self.flow.missing
        if self.verdict is None and missing:
            self.dismiss(self.flow.going_to(missing[0].path))
        elif self.verdict is None or self.earlier is None:
            self.dismiss(self.flow.skipped())
        else:
            self.action_compare()

    def action_again(self) -> None:
        """Go to the reading that would settle the verdict, or to the photographs."""
        if self.is_photograph_advised:
            self.dismiss(self.flow.going_to(PHOTOGRAPHS))
        elif self.advised:
            advice = self.verdict.advice if self.verdict else None
            self.retake(self.advised[0], adds=bool(advice and advice.readings))

    def action_mend(self) -> None:
        """Undo the likeliest slip and judge the session again; what was typed first is kept."""
        if not self.verdict or not self.verdict.slips:
            return
        slip = self.verdict.slips[0]
        flow = self.flow.with_document(mended(self.flow.document, slip))
        self.flow, is_kept = self.app.keep_or_warn(flow, self.flow)
        if not is_kept:
            return
        self.document = applicable_answers(flow.document, flow.profile)
        self.notify(f"mended: {slip_sentence(slip, self.unit)}", markup=False)
        self.judge()

    def action_direct(self) -> None:
        """Measure the steer while the axle travels, then judge the session again."""

        def judge_again(flow: Flow | None) -> None:
            if flow is not None and flow is not self.flow:
                self.flow = flow
                self.document = applicable_answers(flow.document, flow.profile)
                self.judge()

        if self.verdict:
            self.app.push_screen(DirectScreen(self.flow), judge_again)

    def action_suspect(self) -> None:
        """Go to the reading that fits the others least, to type it over."""
        if self.verdict and self.verdict.suspect_groups:
            self.retake(self.verdict.suspect_groups[0].readings[0], adds=False)

    def retake(self, reading: str, adds: bool) -> None:
        """Leave to take a reading again."""
        if is_mark(reading):
            self.dismiss(self.flow.going_to(PHOTOGRAPHS))
        else:
            self.dismiss(Retake(self.flow.going_to(f"readings.{reading}"), adds))

    def action_compare(self) -> None:
        """Compare with the session before; the next step follows."""
        if self.verdict is None or self.earlier is None:
            return

        def continue_with(has_next_step: bool | None) -> None:
            if has_next_step:
                self.dismiss(self.flow.skipped())

        try:
            screen = CompareScreen(
                self.earlier, self.document, self.app.profile_of, has_next_step=True
            )
        except (EntryError, ProfileError) as error:
            self.notify(f"the earlier session cannot be judged: {error}", markup=False)
            self.dismiss(self.flow.skipped())
        else:
            self.app.push_screen(screen, continue_with)
