"""The verdict: the step of a session that is measured, and what a filed record's screen shares."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from contextlib import suppress
from typing import Any

from textual import work
from textual.app import ComposeResult
from textual.css.query import NoMatches
from textual.worker import get_current_worker

from core.documents.document import Document
from core.documents.entries import EntryError, units_of
from core.documents.record import RecordError
from core.fix.plan import Plan
from core.profiles.profile import Profile, ProfileError
from core.verdict.assess import assess
from core.verdict.verdict import Verdict
from wizard.flow.flow import Flow, applicable_answers, step_of
from wizard.flow.planning import with_filed_plan
from wizard.flow.retake import Retake
from wizard.phrases.answer_words import UNIT_WORDS
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.help_on_verdict import help_on_verdict
from wizard.phrases.help_section import HelpSection
from wizard.phrases.session_names import session_words, vehicle_tag
from wizard.tui.screens.bench import BenchScreen
from wizard.tui.screens.compare import CompareScreen
from wizard.tui.screens.sectioned import Left, SectionedScreen
from wizard.tui.screens.step_screen import StepScreen
from wizard.tui.screens.travel import TravelScreen
from wizard.tui.widgets.keys import Key
from wizard.tui.widgets.verdict_view import VerdictView

DRAWING = "drawing the doubt …"


class VerdictScreen(SectionedScreen[Left]):
    """Shows a verdict as soon as there is one, and once more when its doubt has been drawn.

    Parameters
    ----------
    document : mapping
    profile_of : callable
        Finds a profile by its name.
    """

    BINDINGS = [("t,T", "travel", "travel"), ("b,B", "bench", "bench")]
    MAY_KEEP = False
    """Whether what is tried out on the bench can be kept as a plan."""

    def __init__(self, document: Document, profile_of: Callable[[str], Profile]) -> None:
        super().__init__(units_of(document))
        self.document = document
        self.profile_of = profile_of
        self.verdict: Verdict | None = None
        self.drawing = ""

    def compose(self) -> ComposeResult:
        """The page is all there is."""
        yield VerdictView()

    def on_mount(self) -> None:
        """Show the verdict by linear propagation at once; the draws take longer."""
        try:
            self.verdict = assess(self.document, self.profile_of, draws=0)
        except (EntryError, ProfileError) as error:
            self.query_one(VerdictView).cannot([Fact("", self.why_not(error), LOOK)])
        else:
            self.drawing = DRAWING
            self.call_after_refresh(self.go_on_showing)
        self.show()

    def why_not(self, error: EntryError | ProfileError) -> str:
        """Why there is no verdict."""
        return str(error)

    async def go_on_showing(self) -> None:
        """The rest of the page, and the doubt, once the verdict itself has been painted."""
        await self.query_one(VerdictView).complete()
        self.show()
        self.draw_doubt()

    def show(self) -> None:
        """Show the verdict in the units at hand."""
        if self.verdict:
            self.query_one(VerdictView).show(self.verdict, self.document, self.unit)
        self.say_what()

    def say_what(self) -> None:
        """Name the session, the units and the keys."""
        right = f"{self.drawing}  {UNIT_WORDS[self.unit]}".strip()
        self.query_one(VerdictView).entitle(session_words(self.document), right)
        self.say_keys()

    @work(thread=True, exclusive=True)
    def draw_doubt(self) -> None:
        """Draw the doubt of the peaks while the screen is looked at."""
        verdict = assess(self.document, self.profile_of)
        if not get_current_worker().is_cancelled:
            self.app.call_from_thread(self.settle, verdict)

    def settle(self, verdict: Verdict) -> None:
        """Put the drawn doubt in the place of the linear one."""
        self.verdict, self.drawing = verdict, ""
        with suppress(NoMatches):  # the screen may be on its way out
            self.query_one(VerdictView).tell(verdict, self.unit)
            self.say_what()

    def keys(self) -> tuple[Key, ...]:
        """The travel and the bench can be gone to once there is a verdict."""
        shown = (Key("T", "travel", "travel"), Key("B", "bench", "bench")) if self.verdict else ()
        return (*shown, *super().keys())

    def help(self) -> Sequence[HelpSection]:
        """Help on a verdict."""
        return help_on_verdict(is_filed=not self.MAY_KEEP)

    def action_travel(self) -> None:
        """Move the axle through its travel."""
        if self.verdict:
            self.app.push_screen(TravelScreen(self.verdict, self.unit, vehicle_tag(self.document)))

    def action_bench(self) -> None:
        """Try out what other pivots would bring."""
        if self.verdict:
            tag = vehicle_tag(self.document)
            bench = BenchScreen(self.verdict, tag, self.unit, may_keep=self.MAY_KEEP)
            self.app.push_screen(bench, self.keep)

    def keep(self, plan: Plan | None) -> None:
        """A filed session is not changed."""


class VerdictStep(StepScreen, VerdictScreen[Any]):
    """The verdict on the session that is measured; left as `wizard.tui.screens.step_screens` says.

    Parameters
    ----------
    flow : Flow
        At the verdict's step.
    earlier : mapping or None
        The session that is measured again.
    """

    BINDINGS = [
        ("enter", "go_on", "go on"),
        ("a,A", "again", "again"),
        ("s,S", "suspect", "suspect"),
        ("c,C", "compare", "compare"),
    ]

    MAY_KEEP = True

    def __init__(self, flow: Flow, earlier: Document | None) -> None:
        self.flow, self.earlier = flow, earlier
        profile = flow.profile
        assert profile is not None  # a session has one before any reading is asked for
        super().__init__(applicable_answers(flow.document, profile), lambda _: profile)

    def keys(self) -> tuple[Key, ...]:
        """Going on comes first, then what the verdict asks for."""
        verdict = self.verdict
        return (
            Key("Enter", "go on", "go_on"),
            *([Key("A", "take it again", "again")] if verdict and self.advised else []),
            *(
                [Key("S", "suspect reading", "suspect")]
                if verdict and verdict.suspect_groups
                else []
            ),
            *([Key("C", "before and after", "compare")] if verdict and self.earlier else []),
            *super().keys(),
            Key("Esc", "back", "back"),
            Key("F3", "steps", "steps"),
            Key("F9", "leave", "leave"),
        )

    def why_not(self, error: EntryError | ProfileError) -> str:
        """Which questions have to be answered first, where that is all."""
        missing = self.flow.missing
        if not missing:
            return super().why_not(error)
        more = f", and {len(missing) - 1} more" if len(missing) > 1 else ""
        where = step_of(missing[0]).name
        return f"still to be answered: {missing[0].name} (step {where}){more}; Enter goes there"

    def keep(self, plan: Plan | None) -> None:
        """What was tried out goes into the session as its plan; the next step shows it."""
        if plan is not None:
            self.flow = self.flow.with_document(with_filed_plan(self.flow.document, plan))
            try:
                self.app.draft_store.keep(self.flow.document)
            except RecordError as error:
                self.notify(str(error), markup=False)
            else:
                self.notify("kept as the plan of this session; the step Fix shows it")

    @property
    def advised(self) -> tuple[str, ...]:
        """Readings that the verdict asks for again."""
        return self.verdict.advice.readings if self.verdict and self.verdict.advice else ()

    def action_go_on(self) -> None:
        """To the next step, past before and after; to what is missing where there is no verdict."""
        missing = self.flow.missing
        if self.verdict is None and missing:
            self.dismiss(self.flow.going_to(missing[0].path))
        elif self.verdict is None or self.earlier is None:
            self.dismiss(self.flow.skipped())
        else:
            self.action_compare()

    def action_again(self) -> None:
        """To the reading that would settle it, for a repeat."""
        if self.advised:
            self.retake(self.advised[0], adds=True)

    def action_suspect(self) -> None:
        """To the reading that fits the others least, to be read anew."""
        if self.verdict and self.verdict.suspect_groups:
            self.retake(self.verdict.suspect_groups[0].readings[0], adds=False)

    def retake(self, reading: str, adds: bool) -> None:
        """Leave to take a reading again."""
        self.dismiss(Retake(self.flow.going_to(f"readings.{reading}"), adds))

    def action_compare(self) -> None:
        """Before beside after; the next step comes after it."""
        if self.verdict is None or self.earlier is None:
            return

        def left(goes_on: bool | None) -> None:
            if goes_on:
                self.dismiss(self.flow.skipped())

        try:
            screen = CompareScreen(self.earlier, self.document, self.app.profile_of, True)
        except (EntryError, ProfileError) as error:
            self.notify(f"the earlier session cannot be judged: {error}", markup=False)
            self.dismiss(self.flow.skipped())
        else:
            self.app.push_screen(screen, left)
