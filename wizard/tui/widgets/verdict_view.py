"""A verdict in one view: the verdict first, then the numbers, then reasons and trust."""

from collections.abc import Iterable

from textual.app import ComposeResult
from textual.containers import Container, Vertical
from textual.widgets import Static

from core.documents.document import Document
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.phrases.cautions import caution_facts
from wizard.phrases.decisions import decision_facts
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.filed_plan import planned_facts
from wizard.phrases.headline import words_beside
from wizard.phrases.open_questions import open_question_facts
from wizard.phrases.readings import readings_facts, warning_facts
from wizard.phrases.reported import reported_facts
from wizard.phrases.seal import seal_facts
from wizard.phrases.verdict_meaning import verdict_facts
from wizard.phrases.verdict_reasons import axle_facts, binding_facts, road_facts, steer_reason_facts
from wizard.tui.pictures.articulation_map import ArticulationMap
from wizard.tui.pictures.curve import Curve
from wizard.tui.pictures.front_view import FrontView
from wizard.tui.pictures.rules_table import RulesTable
from wizard.tui.widgets.banner import Banner
from wizard.tui.widgets.facts import Facts
from wizard.tui.widgets.photographs_part import PhotographsPart
from wizard.tui.widgets.sectioned_view import SectionedView
from wizard.tui.widgets.sections import Sections
from wizard.views.verdict import curve_of, front_with_aims, map_of, rules_of

NO_VERDICT = "no verdict"


class VerdictView(SectionedView):
    """Shows a verdict; it computes nothing.

    The overall verdict and the rules come first; `complete` adds the rest after they were painted.
    """

    SECTIONS = {
        "result": "verdict",
        "front-view": "picture",
        "curve": "curve",
        "photographs": "photos",
        "why": "why",
        "road": "road",
        "flexing": "flex",
        "trust": "sure",
        "gaps": "gaps",
        "care": "care",
    }

    is_complete = False

    def compose_sections(self) -> ComposeResult:
        """Yield the verdict, its meaning, the warnings and the rules, and room for the pictures."""
        with Vertical(id="upper"):
            with Vertical(id="result"):
                yield Banner()
                yield Facts(id="means")
                yield Facts(id="look")
                yield Facts(id="next")
                yield Facts(id="signed")
                yield RulesTable()
            yield Container(id="pictures")

    async def complete(self) -> None:
        """Mount the pictures and everything below them, once."""
        if self.is_complete:
            return
        await self.query_one("#pictures").mount(FrontView(id="front-view"), Curve(id="curve"))
        title = Static("When the axle flexes", classes="title", markup=False)
        await self.query_one(Sections).mount(
            Facts(id="why"),
            Facts(id="road"),
            Vertical(title, ArticulationMap(), id="flexing"),
            Facts(id="trust"),
            Facts(id="gaps"),
            Facts(id="planned"),
            Facts(id="told"),
            Facts(id="care"),
        )
        self.is_complete = bool(self.query("#care"))  # False while the program closes

    async def show_photographs(self, part: PhotographsPart) -> None:
        """Mount the photographs above the reasons, once."""
        if self.is_complete and not self.query(PhotographsPart):
            await self.query_one(Sections).mount(part, before="#why")

    def show(self, verdict: Verdict, document: Document, unit: LengthUnit) -> None:
        """Show a verdict in every section that is mounted."""
        self.show_facts("signed", "", (*seal_facts(document), *decision_facts(document)))
        self.tell(verdict, unit)
        if self.is_complete:
            self.draw(verdict, unit)
            self.explain(verdict, document, unit)
            self.list_sections()

    def tell(self, verdict: Verdict, unit: LengthUnit) -> None:
        """Show the sections that depend on the method of the uncertainty: verdict, rules, trust."""
        self.query_one(Banner).show(verdict.overall, words_beside(verdict))
        self.show_facts("means", "", verdict_facts(verdict, unit))
        warnings = (*binding_facts(verdict.travel_limits, unit), *warning_facts(verdict, unit))
        self.show_facts("look", "", warnings)
        self.query_one(RulesTable).show(rules_of(verdict))
        for part in self.query(PhotographsPart):
            part.show(verdict, unit)
        if self.is_complete:
            self.show_facts("trust", "How far to trust the readings", readings_facts(verdict, unit))

    def say_next(self, words: str) -> None:
        """Say what to do next; nothing where the verdict is decided."""
        self.show_facts("next", "", (Fact("", words, LOOK),) if words else ())

    def draw(self, verdict: Verdict, unit: LengthUnit) -> None:
        """Draw the pictures."""
        self.query_one(FrontView).show(front_with_aims(verdict, unit))
        self.query_one(Curve).show(curve_of(verdict, unit))
        grid = map_of(verdict, unit)
        self.query_one("#flexing").display = grid is not None
        self.query_one(ArticulationMap).show(grid)

    def explain(self, verdict: Verdict, document: Document, unit: LengthUnit) -> None:
        """Show the reasons, the effects, the open questions and the cautions."""
        road = (*road_facts(verdict, unit), *axle_facts(verdict, unit))
        self.show_facts("why", "Why it steers", steer_reason_facts(verdict, unit))
        self.show_facts("road", "On the road, and how the axle moves", road)
        self.show_facts(
            "gaps", "Assumed, skipped, left open", open_question_facts(verdict, document, unit)
        )
        self.show_facts("planned", "What is planned", planned_facts(document, unit))
        self.show_facts("told", "What was said", reported_facts(document))
        self.show_facts("care", "Before any work", caution_facts())

    def cannot(self, reasons: Iterable[Fact]) -> None:
        """Show the reasons why there is no verdict."""
        self.query_one(Banner).show(NO_VERDICT)
        self.show_facts("means", "", [Fact("", "It cannot be worked out yet.")])
        self.show_facts("look", "", reasons)
        self.show_facts("signed", "", ())
