"""The curve as something to take hold of: where it is pressed, the axle goes."""

from __future__ import annotations

from textual.events import MouseDown, MouseEvent, MouseMove, MouseUp
from textual.message import Message

from wizard.tui.pictures.curve import Curve
from wizard.tui.pictures.drawing import ACROSS
from wizard.tui.pictures.plot import plot_of


class TravelCurve(Curve):
    """A curve that is pressed or dragged."""

    class Moved(Message):
        """The heave under the mouse, mm; it may lie beyond the travel."""

        def __init__(self, heave: float) -> None:
            super().__init__()
            self.heave = heave

    def on_mouse_down(self, event: MouseDown) -> None:
        """Take hold."""
        self.capture_mouse()
        self.follow(event)

    def on_mouse_move(self, event: MouseMove) -> None:
        """Follow the mouse while it is held."""
        if self.app.mouse_captured is self:
            self.follow(event)

    def on_mouse_up(self, event: MouseUp) -> None:
        """Let go."""
        self.release_mouse()

    def follow(self, event: MouseEvent) -> None:
        """Say where the mouse is in the travel."""
        if self.picture is not None:
            plot = plot_of(self.picture, self.sheet)
            dots = (event.x + 0.5) * ACROSS - plot.corner[0]
            self.post_message(self.Moved(plot.low + dots / plot.width * (plot.high - plot.low)))
