"""The axle through its travel: heave and roll by keys, by the mouse, or played."""

from __future__ import annotations

from math import degrees, radians
from time import monotonic

from textual import on
from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.events import MouseScrollDown, MouseScrollUp
from textual.screen import Screen

from core.kinematics.pose import axle_pose
from core.text.quantity import LengthUnit, other_unit
from core.uncertainty.measured_linkage import has_centre_plane, hub_centres
from core.verdict.verdict import Verdict
from wizard.phrases.answer_words import UNIT_WORDS
from wizard.phrases.help_on_verdict import help_on_travel
from wizard.phrases.travel import axle_pose_facts
from wizard.tui.host import Host
from wizard.tui.pictures.front_view import FrontView
from wizard.tui.screens.help import HelpScreen
from wizard.tui.widgets.heading import Heading
from wizard.tui.widgets.keys import Key, Keys
from wizard.tui.widgets.readout import Readout
from wizard.tui.widgets.travel_curve import TravelCurve
from wizard.views.travel_state import LARGEST_ROLL, Plays, TravelState
from wizard.views.verdict import front_of, pose_of, travel_curve

FRAMES = 30
"""Frames a second of play."""

STEPS: dict[LengthUnit, float] = {"in": 25.4 / 4, "mm": 5.0}
"""Heave of one press of a key, mm."""

ROLL_STEP = radians(1.0)


class TravelScreen(Screen[None]):
    """Moves the axle of a measured vehicle.

    Parameters
    ----------
    verdict : Verdict
    unit : "in" or "mm"
    tag : str
        What the vehicle is called.
    """

    app: Host

    BINDINGS = [
        ("escape,t", "back", "back"),
        ("space", "play('heave')", "play"),
        ("x,X", "play('roll')", "play roll"),
        ("up", "heave(1)", "up"),
        ("down", "heave(-1)", "down"),
        ("pageup", "heave(4)", "further up"),
        ("pagedown", "heave(-4)", "further down"),
        ("right", "roll(1)", "left wheel up"),
        ("left", "roll(-1)", "right wheel up"),
        ("0,home", "reset", "ride height"),
        ("f1", "help", "help"),
        ("f2", "units", "units"),
    ]

    def __init__(self, verdict: Verdict, unit: LengthUnit, tag: str) -> None:
        super().__init__()
        self.verdict, self.unit, self.tag = verdict, unit, tag
        self.ride = TravelState(verdict.session.droop, verdict.session.bump)
        self.last = 0.0

    def compose(self) -> ComposeResult:
        """The front view, and under it numbers and curve."""
        yield Heading()
        yield FrontView(id="moving")
        with Horizontal(id="following"):
            yield Readout()
            yield TravelCurve()
        yield Keys()

    def on_mount(self) -> None:
        """At ride height, ready to play."""
        self.query_one(FrontView).show(front_of(self.verdict))
        self.clock = self.set_interval(1 / FRAMES, self.tick, pause=True)
        self.go(self.ride)

    @property
    def can_roll(self) -> bool:
        """The middle the axle rolls about is known from the wheels alone."""
        return has_centre_plane(self.verdict.session)

    def go(self, ride: TravelState) -> None:
        """Show the axle somewhere else."""
        was, self.ride = self.ride, ride
        session, linkage = self.verdict.session, self.verdict.measured.linkage
        hubs = hub_centres(session, linkage)
        at = axle_pose(linkage, hubs, ride.heave, ride.roll)
        if at.is_reached:
            self.query_one(FrontView).move(pose_of(at.points))
        roll = ride.roll if ride.roll or ride.plays == "roll" else None
        curve = travel_curve(self.verdict, ride.heave, roll, self.unit, LARGEST_ROLL)
        self.query_one(TravelCurve).show(curve)
        self.query_one(Readout).facts = axle_pose_facts(
            at, self.unit, session.layout == "inverted-y"
        )
        if ride.plays != was.plays or not self.query_one(Keys).keys:
            self.say()

    def say(self) -> None:
        """Name the vehicle and the keys."""
        heading = self.query_one(Heading)
        heading.left = f"{self.tag}, the axle through its travel"
        heading.right = UNIT_WORDS[self.unit]
        plays = self.ride.plays
        other = other_unit(self.unit)
        rolls = [
            Key("← →", "roll"),
            Key("X", "stop" if plays == "roll" else "play roll", "play('roll')"),
        ]
        self.query_one(Keys).keys = (
            Key("Space", "stop" if plays == "heave" else "play", "play('heave')"),
            Key("↑ ↓", "up and down"),
            *(rolls if self.can_roll else []),
            Key("0", "ride height", "reset"),
            Key("F2", other, "units"),
            Key("F1", "help", "help"),
            Key("Esc", "back", "back"),
        )

    def tick(self) -> None:
        """One frame on, by the time that has passed."""
        now = monotonic()
        self.go(self.ride.after(now - self.last))
        self.last = now

    def stop(self, ride: TravelState) -> None:
        """Stand somewhere."""
        self.clock.pause()
        self.go(ride)

    def action_play(self, what: Plays) -> None:
        """Play heave or roll, or stop."""
        if what == "" or (what == "roll" and not self.can_roll):
            return
        if self.ride.plays == what:
            self.stop(self.ride.stopped())
            return
        self.last = monotonic()
        self.go(self.ride.playing(what))
        self.clock.resume()

    def action_heave(self, steps: int) -> None:
        """Up or down by steps, on the marks of the tape."""
        step = STEPS[self.unit]
        self.stop(self.ride.at_heave((round(self.ride.heave / step) + steps) * step))

    def action_roll(self, steps: int) -> None:
        """Roll by whole degrees."""
        if self.can_roll:
            turns = round(degrees(self.ride.roll)) + steps
            self.stop(self.ride.at_roll(turns * ROLL_STEP))

    def action_reset(self) -> None:
        """Back to ride height."""
        self.stop(self.ride.reset())

    def action_units(self) -> None:
        """Lengths in the other unit."""
        self.unit = other_unit(self.unit)
        self.go(self.ride)
        self.say()

    @on(TravelCurve.Moved)
    def take(self, event: TravelCurve.Moved) -> None:
        """Where the curve was pressed."""
        self.stop(self.ride.at_heave(event.heave))

    def on_mouse_scroll_up(self, event: MouseScrollUp) -> None:
        """The mouse wheel heaves; with shift or control it rolls."""
        self.turn_wheel(1, event.shift or event.ctrl)

    def on_mouse_scroll_down(self, event: MouseScrollDown) -> None:
        """The mouse wheel heaves; with shift or control it rolls."""
        self.turn_wheel(-1, event.shift or event.ctrl)

    def turn_wheel(self, steps: int, rolls: bool) -> None:
        """One notch of the mouse wheel."""
        if rolls:
            self.action_roll(steps)
        else:
            self.action_heave(steps)

    def action_help(self) -> None:
        """Help on moving the axle."""
        self.app.push_screen(HelpScreen(help_on_travel()))

    def action_back(self) -> None:
        """To the verdict."""
        self.dismiss(None)
