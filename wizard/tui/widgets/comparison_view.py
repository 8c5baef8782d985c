"""Two sessions of a vehicle in one view: outcome, changes, and both on each picture."""

from textual.app import ComposeResult
from textual.containers import Container, Vertical

from core.text.quantity import LengthUnit
from wizard.phrases.answer_words import UNIT_WORDS
from wizard.phrases.comparison import control_facts, fix_outcome_facts
from wizard.phrases.reached_plan import reached_plan_facts
from wizard.phrases.seal import seal_facts
from wizard.phrases.session_names import vehicle_tag
from wizard.tui.pictures.curve import Curve
from wizard.tui.pictures.front_view import FrontView
from wizard.tui.widgets.banner import Banner
from wizard.tui.widgets.changes_table import ChangesTable
from wizard.tui.widgets.facts import Facts
from wizard.tui.widgets.sectioned_view import SectionedView
from wizard.views.changes_table import change_rows
from wizard.views.two_sessions import TwoSessions
from wizard.views.verdict import curves_of, front_of_both


class ComparisonView(SectionedView):
    """Shows a comparison; it computes nothing."""

    SECTIONS = {
        "result": "outcome",
        "front-view": "picture",
        "curve": "curve",
        "controls": "what nobody moved",
        "planned": "planned and reached",
    }

    def compose_sections(self) -> ComposeResult:
        """Yield the outcome, the changes, the pictures and the rest."""
        with Vertical(id="upper"):
            with Vertical(id="result"):
                yield Banner()
                yield Facts(id="outcome")
                yield ChangesTable()
            with Container(id="pictures"):
                yield FrontView(id="front-view")
                yield Curve(id="curve")
        yield Facts(id="controls")
        yield Facts(id="planned")

    def show(self, both: TwoSessions, unit: LengthUnit) -> None:
        """Show two sessions side by side."""
        before, after, comparison = both.before, both.after, both.comparison
        self.show_heading(f"{vehicle_tag(both.later)}, before beside after", UNIT_WORDS[unit])
        self.query_one(Banner).verdict = comparison.outcome
        outcome = fix_outcome_facts(both.earlier, both.later, before, after, comparison)
        seals = (*seal_facts(both.earlier, "The earlier"), *seal_facts(both.later, "The later"))
        self.show_facts("outcome", "", (*outcome, *seals))
        self.query_one(ChangesTable).show(change_rows(before, after, comparison, unit))
        self.query_one(FrontView).show(front_of_both(before, after, unit))
        self.query_one(Curve).show(curves_of(before, after, unit))
        self.show_facts(
            "controls", "What nobody moved", control_facts(comparison, both.altered, unit)
        )
        self.show_facts(
            "planned",
            "Planned and reached",
            reached_plan_facts(both.planned, both.moves, after, unit),
        )
        self.list_sections()
