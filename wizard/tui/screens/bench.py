"""The bench: pivots, the ride height and arms are moved and the outcome shown, unfiled."""

from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

from core.fix.bench import STEPS, Bench
from core.fix.plan import Plan
from core.kinematics.pivots import RIDE_HEIGHT
from core.text.quantity import LengthUnit, other_unit
from core.verdict.verdict import Verdict
from wizard.phrases.answer_words import UNIT_WORDS
from wizard.phrases.bench import bench_outcome_words, movables
from wizard.phrases.help_on_plans import help_on_bench
from wizard.phrases.plan_outcomes import SUMMED_UP, outcome_rows, plan_outcome_words
from wizard.phrases.rises import format_setting
from wizard.tui.pictures.curve import Curve
from wizard.tui.pictures.front_view import FrontView
from wizard.tui.screens.change_move import parse_rise
from wizard.tui.screens.help import HelpScreen
from wizard.tui.screens.prompt import PromptScreen
from wizard.tui.widgets.bench_list import BenchList
from wizard.tui.widgets.heading import Heading
from wizard.tui.widgets.keys import Key, Keys
from wizard.tui.widgets.plans_table import Column, PlansTable
from wizard.views.heights import heights_of_plan
from wizard.views.plans import curve_of_plan, front_of_plan

TRIED = "tried"
"""Name of the moved linkage in figures and pictures."""

LEAST_LINES = 9
"""Lines of the figures at least."""

MOST_NUMBERED = 9
"""Most parts that a number key selects; the arrows reach every part."""

FIRST_STEP = 2
"""Index of the step to begin with: 1/4 in, or 5 mm."""


class BenchScreen(Screen[Plan | None]):
    """Moves pivots by keys. Its result is a plan to be kept, or None.

    Parameters
    ----------
    verdict : Verdict
        On the vehicle as it was measured.
    tag : str
        Tag of the vehicle.
    unit : "in" or "mm"
    plan : Plan, optional
        Plan to begin with.
    may_keep : bool
        True if the moves can be kept as a plan.

    Attributes
    ----------
    bench : Bench
        The moves so far.
    selected : int
        Index of the selected dimension among the names of the bench.
    step : int
        Index in STEPS of the step of one key press.
    by_height : bool
        True if the curve is that of the peak steer against the ride height.
    """

    BINDINGS = [
        ("escape", "close", "back"),
        ("enter", "keep", "keep"),
        ("up", "nudge(1)", "up"),
        ("down", "nudge(-1)", "down"),
        ("right,tab", "choose(1)", "next"),
        ("left,shift+tab", "choose(-1)", "before"),
        ("plus,equals_sign", "step(1)", "larger step"),
        ("minus", "step(-1)", "smaller step"),
        ("backspace,f8,ctrl+z", "undo", "undo"),
        ("0", "reset", "put back"),
        ("l,L", "lift", "lift by"),
        ("h,H", "heights", "by ride height"),
        ("f1", "help", "help"),
        ("f2", "units", "units"),
        *[(str(number + 1), f"select({number})", "select") for number in range(MOST_NUMBERED)],
    ]

    def __init__(
        self,
        verdict: Verdict,
        tag: str,
        unit: LengthUnit,
        plan: Plan | None = None,
        may_keep: bool = False,
    ) -> None:
        super().__init__()
        self.bench = Bench.of(verdict, plan)
        self.tag, self.unit, self.may_keep = tag, unit, may_keep
        self.selected, self.step = 0, FIRST_STEP
        self.by_height = False

    def compose(self) -> ComposeResult:
        """Yield the dimensions beside the figures, then the pictures."""
        yield Heading()
        yield Static(id="bench-words")
        with Horizontal(id="bench-figures"):
            yield BenchList()
            yield PlansTable()
        with Horizontal(id="bench-pictures"):
            yield FrontView()
            yield Curve()
        yield Keys()

    def on_mount(self) -> None:
        """Show the vehicle as it was measured, with room for all its parts."""
        figures = self.query_one("#bench-figures")
        figures.styles.height = max(LEAST_LINES, len(self.bench.names) + 1)
        self.show()

    def show(self) -> None:
        """Show the outcome of the moves so far."""
        bench, unit = self.bench, self.unit
        verdict, plan = bench.verdict, bench.plan()
        heading = self.query_one(Heading)
        filed = "nothing is filed unless it is kept" if self.may_keep else "nothing here is filed"
        heading.left = f"{self.tag}, the bench: {filed}"
        heading.right = UNIT_WORDS[unit]
        self.query_one("#bench-words", Static).update(Content(bench_outcome_words(bench, plan)))
        bench_list = self.query_one(BenchList)
        bench_list.movables, bench_list.at = tuple(movables(bench, plan, unit)), self.selected
        bench_list.step = format_setting(STEPS[unit][self.step], unit)
        table = self.query_one(PlansTable)
        table.columns = [Column(TRIED, ())]
        rows = outcome_rows(verdict, [plan], unit)
        table.rows = [row for row in rows if row.name not in SUMMED_UP]
        self.query_one(FrontView).show(
            front_of_plan(verdict, plan, unit, TRIED, bench.names[self.selected])
        )
        curve_of = heights_of_plan if self.by_height else curve_of_plan
        self.query_one(Curve).show(curve_of(verdict, plan, unit, TRIED))
        self.query_one(Keys).keys = self.keys()

    def keys(self) -> tuple[Key, ...]:
        """Keys that do something now."""
        is_moved = bool(self.bench.nudges)
        return (
            *([Key("Enter", "keep as a plan", "keep")] if self.may_keep and is_moved else []),
            Key("Esc", "back", "close"),
            Key("↑", "up", "nudge(1)"),
            Key("↓", "down", "nudge(-1)"),
            Key("← →", "another", "choose(1)"),
            Key("+ -", "step", "step(1)"),
            *([Key("F8", "undo", "undo"), Key("0", "put back", "reset")] if is_moved else []),
            Key("L", "lift by", "lift"),
            Key("H", "by travel" if self.by_height else "by ride height", "heights"),
            Key("F2", other_unit(self.unit), "units"),
            Key("F1", "help", "help"),
        )

    def try_out(self, bench: Bench) -> None:
        """Show other moves."""
        self.bench = bench
        self.show()

    def action_nudge(self, direction: int) -> None:
        """Move the selected dimension by a step."""
        rise = direction * STEPS[self.unit][self.step]
        self.try_out(self.bench.nudged(self.bench.names[self.selected], rise))

    def action_select(self, index: int) -> None:
        """Select a dimension by its index; nothing where the vehicle has fewer."""
        if index < len(self.bench.names):
            self.selected = index
            self.show()

    def action_choose(self, by: int) -> None:
        """Select the next dimension, or the one before."""
        self.action_select((self.selected + by) % len(self.bench.names))

    def action_step(self, by: int) -> None:
        """Choose a larger or smaller step; the smallest follows the largest."""
        self.step = (self.step + by) % len(STEPS[self.unit])
        self.show()

    def action_undo(self) -> None:
        """Undo the last move."""
        self.try_out(self.bench.undone())

    def action_reset(self) -> None:
        """Put everything back."""
        self.try_out(self.bench.reset())

    def action_lift(self) -> None:
        """Ask how far the vehicle is lifted."""

        def read_lift(text: str) -> tuple[Bench, str]:
            lifted = self.bench.nudged(RIDE_HEIGHT, parse_rise(text, self.unit))
            return lifted, plan_outcome_words(lifted.verdict, lifted.plan())

        def show_lifted(bench: Bench | None) -> None:
            if bench is not None:
                self.try_out(bench)

        ask = "Lift it by how much?"
        do = "The whole frame goes up; a minus lowers it. The bars are set to fit."
        self.app.push_screen(PromptScreen(ask, do, "", read_lift), show_lifted)

    def action_heights(self) -> None:
        """Show the curve against the ride height, or against the travel again."""
        self.by_height = not self.by_height
        self.show()

    def action_units(self) -> None:
        """Show lengths and steps in the other unit."""
        self.unit = other_unit(self.unit)
        self.show()

    def action_keep(self) -> None:
        """Leave with the moves as a plan."""
        if self.may_keep and self.bench.nudges:
            self.dismiss(self.bench.plan())

    def action_help(self) -> None:
        """Show help on the bench."""
        self.app.push_screen(HelpScreen(help_on_bench()))

    def action_close(self) -> None:
        """Leave and keep nothing."""
        self.dismiss(None)
