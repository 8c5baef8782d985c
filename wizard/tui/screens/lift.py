"""Lifts planned without a vehicle at hand: how far each works, and what has to go with it."""

from collections.abc import Sequence
from dataclasses import replace
from functools import partial

from textual.app import ComposeResult
from textual.containers import Container, VerticalScroll
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

from core.documents.entries import EntryError, units_of
from core.profiles.conversions import Conversion, fitting
from core.profiles.profile import ProfileError
from core.text.plain_text import plain
from core.text.quantity import LengthUnit, format_length, other_unit
from wizard.flow.filed_records import Unreadable
from wizard.flow.lifting import Lifted, LiftRequest, lifts_of, parsed_lift
from wizard.phrases.answer_words import UNIT_WORDS
from wizard.phrases.cautions import CAUTION_IN_SHORT
from wizard.phrases.help import help_on_lifts
from wizard.phrases.lift import (
    DOUBT_NOTE,
    TYPICAL_NOTE,
    is_typical,
    one_lift_facts,
    several_lift_facts,
)
from wizard.phrases.session_names import vehicle_tag
from wizard.questions.question import Choice
from wizard.tui.host import Host
from wizard.tui.pictures.curve import Curve
from wizard.tui.screens.help import HelpScreen
from wizard.tui.screens.pick import PickScreen
from wizard.tui.screens.prompt import PromptScreen
from wizard.tui.screens.workers import Reporter, run_beside
from wizard.tui.widgets.facts import Facts
from wizard.tui.widgets.heading import Heading
from wizard.tui.widgets.keys import Key, Keys
from wizard.views.heights import curves_of_lift, heights_of_lift

LIKE, TYPICAL = "like ", "typical "
"""Beginnings of the values by which a filed vehicle and a profile are chosen."""

NO_CHANGE = ""

NO_LIFT = "no lift: how far each works as it is"


class LiftScreen(Screen[None]):
    """Shows how far a lift works on the chosen vehicles.

    Parameters
    ----------
    choices : sequence of Choice
        Vehicles to choose from: "like FG-2" or "typical coil-crossover".
    chosen : sequence of str
        Values of the vehicles to begin with.
    """

    app: Host

    BINDINGS = [
        ("escape", "close", "back"),
        ("l,L", "lift", "lift by"),
        ("w,W", "change", "with a conversion"),
        ("v,V", "vehicles", "vehicles"),
        ("right", "turn(1)", "next curve"),
        ("left", "turn(-1)", "curve before"),
        ("f1", "help", "help"),
        ("f2", "units", "units"),
    ]

    def __init__(self, choices: Sequence[Choice], chosen: Sequence[str]) -> None:
        super().__init__()
        self.choices = tuple(choices)
        self.request = request_for(chosen)
        self.lifts: tuple[Lifted, ...] = ()
        self.at = 0
        self.unit: LengthUnit = "in"

    def compose(self) -> ComposeResult:
        """Yield the facts beside the curve."""
        yield Heading()
        yield Static(id="lift-words")
        with Container(id="lift-parts"):
            with VerticalScroll():
                yield Facts()
                yield Static(id="lift-note")
            yield Curve()
        yield Keys()

    def on_mount(self) -> None:
        """Plan the lift on the vehicles to begin with."""
        self.query_one(Facts).display = False
        self.query_one(VerticalScroll).focus()
        self.plan(self.request)

    def plan(self, request: LiftRequest) -> None:
        """Plan a lift beside the screen."""
        self.say("working …")
        self.say_keys()
        run_beside(self, partial(self.plan_beside, request))

    def plan_beside(self, request: LiftRequest, reporter: Reporter) -> None:
        """Plan a lift in the thread of the worker."""
        surroundings = self.app.surroundings
        try:
            lifts = lifts_of(
                request,
                surroundings.profile_folders,
                surroundings.files,
                surroundings.parts_shelf,
                lambda _share: reporter.stop_if_unwanted(),
            )
        except (Unreadable, ProfileError, EntryError) as error:
            reporter.call(self.say, str(error))
        else:
            reporter.call(self.show_planned, request, lifts)

    def show_planned(self, request: LiftRequest, lifts: Sequence[Lifted]) -> None:
        """Show planned lifts in place of the earlier ones."""
        if not self.lifts:
            self.unit = units_of(lifts[0].document)
        self.request, self.lifts, self.at = request, tuple(lifts), 0
        self.show()

    def show(self) -> None:
        """Show the lifts in the unit at hand, with the curve at hand."""
        self.say("")
        request, unit = self.request, self.unit
        self.query_one(Heading).right = UNIT_WORDS[unit]
        plans = {vehicle_tag(each.document): each.plan for each in self.lifts}
        if len(self.lifts) == 1:
            facts = one_lift_facts(self.lifts[0].plan, request.change, unit)
        else:
            facts = several_lift_facts(plans, request.change, unit)
        self.query_one(Facts).show("How far it works", facts)
        typical = TYPICAL_NOTE if any(map(is_typical, plans.values())) else ""
        note = f"{typical} {DOUBT_NOTE} {CAUTION_IN_SHORT}".strip()
        self.query_one("#lift-note", Static).update(Content(note))
        self.show_curve()
        self.say_keys()

    def show_curve(self) -> None:
        """Show the curve at hand."""
        lifted, number = self.curves[self.at]
        self.query_one(Curve).show(heights_of_lift(lifted.plan, self.unit, number))
        self.query_one(Heading).left = f"A lift on {vehicle_tag(lifted.document)}"

    @property
    def curves(self) -> tuple[tuple[Lifted, int], ...]:
        """Vehicle and number of each curve; of several vehicles the first curve of each."""
        if len(self.lifts) != 1:
            return tuple((lifted, 0) for lifted in self.lifts)
        (lifted,) = self.lifts
        return tuple((lifted, number) for number in range(len(curves_of_lift(lifted.plan)) or 1))

    def say(self, words: str) -> None:
        """Show a line over the facts, or none."""
        line = self.query_one("#lift-words", Static)
        line.update(Content(words))
        line.display = bool(words)

    def say_keys(self) -> None:
        """Show the keys that do something now."""
        several = [Key("← →", "another curve", "turn(1)")] if len(self.curves) > 1 else []
        self.query_one(Keys).keys = (
            Key("Esc", "back", "close"),
            Key("L", "lift by", "lift"),
            *([Key("W", "with a conversion", "change")] if self.conversions else []),
            Key("V", "vehicles", "vehicles"),
            *several,
            Key("F2", other_unit(self.unit), "units"),
            Key("F1", "help", "help"),
        )

    @property
    def conversions(self) -> tuple[str, ...]:
        """Names of the conversions that fit one of the vehicles."""
        changes = (
            change
            for lifted in self.lifts
            for change in fitting(lifted.profile.changes, lifted.document)
        )
        names = (change.name for change in changes if isinstance(change, Conversion))
        return tuple(dict.fromkeys(names))

    def action_lift(self) -> None:
        """Ask for the lift."""
        unit = self.unit

        def read_lift(text: str) -> tuple[LiftRequest, str]:
            lift = parsed_lift(text, unit)
            words = "" if lift is None else f"a lift of {format_length(lift, unit)}"
            return replace(self.request, lift=lift), words or NO_LIFT

        def lift_by(request: LiftRequest | None) -> None:
            if request is not None:
                self.plan(request)

        ask = "How far is it lifted?"
        do = "From 2 in lower, which is -2 in, to 8 in. An empty field plans no lift."
        lift = self.request.lift
        present = "" if lift is None else format_length(lift, unit)
        self.app.push_screen(PromptScreen(ask, do, present, read_lift), lift_by)

    def action_change(self) -> None:
        """Ask for a conversion whose curve is wanted."""
        if not self.conversions:
            return
        choices = [Choice(NO_CHANGE, "none"), *(Choice(n, plain(n)) for n in self.conversions)]

        def with_change(name: str | None) -> None:
            if name is not None:
                self.plan(replace(self.request, change=name))

        ask, do = "With which conversion?", "Its curve is laid over that of each vehicle it fits."
        self.app.push_screen(PickScreen(ask, do, choices, self.request.change), with_change)

    def action_vehicles(self) -> None:
        """Ask for other vehicles."""
        chosen = [f"{LIKE}{tag}" for tag in self.request.like]
        chosen += [f"{TYPICAL}{name}" for name in self.request.typical]
        self.app.push_screen(vehicles_question(self.choices, chosen), self.take_vehicles)

    def take_vehicles(self, chosen: list[str] | None) -> None:
        """Plan the same lift on other vehicles; the conversion is asked for again."""
        if chosen:
            self.plan(replace(request_for(chosen), lift=self.request.lift))

    def action_turn(self, by: int) -> None:
        """Show the next curve, or the one before."""
        if self.lifts:
            self.at = (self.at + by) % len(self.curves)
            self.show_curve()

    def action_units(self) -> None:
        """Show lengths in the other unit."""
        self.unit = other_unit(self.unit)
        if self.lifts:
            self.show()

    def action_help(self) -> None:
        """Show help on lifts."""
        self.app.push_screen(HelpScreen(help_on_lifts()))

    def action_close(self) -> None:
        """Go back home."""
        self.dismiss()


def request_for(chosen: Sequence[str]) -> LiftRequest:
    """Request for vehicles by the values of their choices, without a lift."""
    like = tuple(value.removeprefix(LIKE) for value in chosen if value.startswith(LIKE))
    typical = tuple(value.removeprefix(TYPICAL) for value in chosen if value.startswith(TYPICAL))
    return LiftRequest(None, like, typical, NO_CHANGE)


def vehicles_question(choices: Sequence[Choice], chosen: Sequence[str]) -> PickScreen:
    """Screen whose result is the list of values of the chosen vehicles."""
    ask = "Whose geometry is lifted?"
    do = (
        "That of a vehicle that was measured, or the typical one of a profile. Of several each "
        "gets a row."
    )
    return PickScreen(ask, do, choices, list(chosen), several=True)
