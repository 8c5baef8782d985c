"""A curve that moves the axle: it goes to the heave that is pressed."""

from textual.events import MouseDown, MouseEvent, MouseMove, MouseUp
from textual.message import Message

from wizard.tui.pictures.curve import Curve
from wizard.tui.pictures.drawing import ACROSS
from wizard.tui.pictures.plot import plot_of


class TravelCurve(Curve):
    """Posts the heave under the mouse while the curve is pressed or dragged."""

    class Moved(Message):
        """The mouse was pressed or dragged.

        Attributes
        ----------
        heave : float
            Heave under the mouse, mm; it may lie beyond the travel.
        """

        def __init__(self, heave: float) -> None:
            super().__init__()
            self.heave = heave

    def on_mouse_down(self, event: MouseDown) -> None:
        """Capture the mouse."""
        self.capture_mouse()
        self.follow(event)

    def on_mouse_move(self, event: MouseMove) -> None:
        """Follow the mouse while it is captured."""
        if self.app.mouse_captured is self:
            self.follow(event)

    def on_mouse_up(self, event: MouseUp) -> None:
        """Release the mouse."""
        self.release_mouse()

    def follow(self, event: MouseEvent) -> None:
        """Post the heave under the mouse."""
        if self.picture is not None:
            plot = plot_of(self.picture, self.sheet)
            dots = (event.x + 0.5) * ACROSS - plot.corner[0]
            self.post_message(self.Moved(plot.low + dots / plot.width * (plot.high - plot.low)))
