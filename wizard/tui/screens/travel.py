"""The axle through its travel: heave and roll by keys, by the mouse, or played."""

from math import degrees, radians
from time import monotonic

from textual import on
from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.events import MouseScrollDown, MouseScrollUp
from textual.screen import Screen

from core.kinematics.pivots import Layout
from core.kinematics.places import axle_pose
from core.text.quantity import INCH, LengthUnit, other_unit
from core.uncertainty.measured_linkage import has_centre_plane, hub_centres
from core.verdict.verdict import Verdict
from wizard.phrases.answer_words import UNIT_WORDS
from wizard.phrases.help_on_verdict import help_on_travel
from wizard.phrases.travel import axle_pose_facts
from wizard.tui.host import Host
from wizard.tui.pictures.front_view import FrontView
from wizard.tui.pictures.side_view import SideView
from wizard.tui.screens.help import HelpScreen
from wizard.tui.widgets.heading import Heading
from wizard.tui.widgets.keys import Key, Keys
from wizard.tui.widgets.readout import Readout
from wizard.tui.widgets.travel_curve import TravelCurve
from wizard.views.side import side_of, side_pose_of
from wizard.views.travel_state import LARGEST_ROLL, Axis, TravelState
from wizard.views.verdict import front_of, pose_of, travel_curve

FRAME_RATE = 30
"""Frames of the play, 1/s."""

STEPS: dict[LengthUnit, float] = {"in": INCH / 4, "mm": 5.0}
"""Heave of one press of a key, mm."""

ROLL_STEP = radians(1.0)
"""Roll of one press of a key, rad."""


class TravelScreen(Screen[None]):
    """Moves the axle of a measured vehicle.

    Parameters
    ----------
    verdict : Verdict
    unit : "in" or "mm"
    tag : str
        Tag of the vehicle.

    Attributes
    ----------
    state : TravelState
        Heave and roll of the axle, and what is played.
    frame_time : float
        Time of the last frame on the monotonic clock, s.
    """

    app: Host

    BINDINGS = [
        ("escape,t,T", "back", "back"),
        ("space", "play('heave')", "play"),
        ("x,X", "play('roll')", "play roll"),
        ("up", "heave(1)", "up"),
        ("down", "heave(-1)", "down"),
        ("pageup", "heave(4)", "further up"),
        ("pagedown", "heave(-4)", "further down"),
        ("right", "roll(1)", "left wheel up"),
        ("left", "roll(-1)", "right wheel up"),
        ("0,home", "reset", "ride height"),
        ("v,V", "turn", "from the side"),
        ("f1", "help", "help"),
        ("f2", "units", "units"),
    ]

    def __init__(self, verdict: Verdict, unit: LengthUnit, tag: str) -> None:
        super().__init__()
        self.verdict, self.unit, self.tag = verdict, unit, tag
        self.state = TravelState(verdict.session.droop, verdict.session.bump)
        self.frame_time = 0.0

    def compose(self) -> ComposeResult:
        """Yield front view and side view, and under them numbers and curve."""
        yield Heading()
        with Horizontal(id="views"):
            yield FrontView(id="moving")
            yield SideView(id="from-side")
        with Horizontal(id="following"):
            yield Readout()
            yield TravelCurve()
        yield Keys()

    def on_mount(self) -> None:
        """Show the axle at ride height."""
        self.query_one(FrontView).show(front_of(self.verdict))
        self.query_one(SideView).show(side_of(self.verdict))
        self.clock = self.set_interval(1 / FRAME_RATE, self.tick, pause=True)
        self.show(self.state)

    @property
    def can_roll(self) -> bool:
        """True if the wheels were measured: they give the middle that the axle rolls about."""
        return has_centre_plane(self.verdict.session)

    def show(self, state: TravelState) -> None:
        """Show the axle in a state."""
        before, self.state = self.state, state
        session, linkage = self.verdict.session, self.verdict.measured.linkage
        hubs = hub_centres(session, linkage, self.verdict.adjustment)
        pose = axle_pose(linkage, hubs, state.heave, state.roll)
        if pose.is_reached:
            self.query_one(FrontView).move(pose_of(pose.points))
            side = self.query_one(SideView)
            side.move(side_pose_of(pose, side.picture))
        roll = state.roll if state.roll or state.plays == "roll" else None
        curve = travel_curve(self.verdict, state.heave, roll, self.unit, LARGEST_ROLL)
        self.query_one(TravelCurve).show(curve)
        self.query_one(Readout).facts = axle_pose_facts(
            pose, self.unit, session.layout == Layout.INVERTED_Y
        )
        if state.plays != before.plays or not self.query_one(Keys).keys:
            self.show_heading()

    def show_heading(self) -> None:
        """Show the vehicle, the unit and the keys."""
        heading = self.query_one(Heading)
        heading.left = f"{self.tag}, the axle through its travel"
        heading.right = UNIT_WORDS[self.unit]
        plays = self.state.plays
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
            Key("V", "from the front" if self.is_from_side else "from the side", "turn"),
            Key("F2", other, "units"),
            Key("F1", "help", "help"),
            Key("Esc", "back", "back"),
        )

    def tick(self) -> None:
        """Show the next frame, by the time that has passed."""
        now = monotonic()
        self.show(self.state.after(now - self.frame_time))
        self.frame_time = now

    def stop_at(self, state: TravelState) -> None:
        """Stop the play, and show the axle in a state."""
        self.clock.pause()
        self.show(state)

    def action_play(self, motion: Axis) -> None:
        """Play heave or roll, or stop."""
        if motion == "roll" and not self.can_roll:
            return
        if self.state.plays == motion:
            self.stop_at(self.state.stopped())
            return
        self.frame_time = monotonic()
        self.show(self.state.playing(motion))
        self.clock.resume()

    def action_heave(self, steps: int) -> None:
        """Move the axle up or down by steps, on the marks of the tape."""
        step = STEPS[self.unit]
        self.stop_at(self.state.at_heave((round(self.state.heave / step) + steps) * step))

    def action_roll(self, steps: int) -> None:
        """Roll the axle by whole degrees."""
        if self.can_roll:
            roll_steps = round(degrees(self.state.roll)) + steps
            self.stop_at(self.state.at_roll(roll_steps * ROLL_STEP))

    def action_reset(self) -> None:
        """Put the axle back to ride height."""
        self.stop_at(self.state.reset())

    @property
    def is_from_side(self) -> bool:
        """True while the side view stands alone."""
        return self.has_class("-from-side")

    def action_turn(self) -> None:
        """Show the axle from the side, or from the front again."""
        self.toggle_class("-from-side")
        self.show_heading()

    def action_units(self) -> None:
        """Show lengths in the other unit."""
        self.unit = other_unit(self.unit)
        self.show(self.state)
        self.show_heading()

    @on(TravelCurve.Moved)
    def move_to_press(self, event: TravelCurve.Moved) -> None:
        """Move the axle to the heave at which the curve was pressed."""
        self.stop_at(self.state.at_heave(event.heave))

    def on_mouse_scroll_up(self, event: MouseScrollUp) -> None:
        """Heave by a notch of the mouse wheel; with shift or control roll."""
        self.turn_wheel(1, event.shift or event.ctrl)

    def on_mouse_scroll_down(self, event: MouseScrollDown) -> None:
        """Heave by a notch of the mouse wheel; with shift or control roll."""
        self.turn_wheel(-1, event.shift or event.ctrl)

    def turn_wheel(self, steps: int, rolls: bool) -> None:
        """Heave or roll by notches of the mouse wheel."""
        if rolls:
            self.action_roll(steps)
        else:
            self.action_heave(steps)

    def action_help(self) -> None:
        """Show help on moving the axle."""
        self.app.push_screen(HelpScreen(help_on_travel()))

    def action_back(self) -> None:
        """Go back to the verdict."""
        self.dismiss(None)
