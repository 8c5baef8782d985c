"""An application with one picture, in the colours of the wizard."""

from pathlib import Path

from textual.app import App, ComposeResult
from textual.widget import Widget

import wizard
from wizard.tui.theme import EVENARC

STYLES = Path(wizard.__file__).parent / "tui" / "evenarc.tcss"

SMALL, LARGE = (80, 24), (120, 40)


class PictureApp(App[None]):
    """Shows one picture."""

    CSS_PATH = STYLES

    def __init__(self, picture: Widget) -> None:
        super().__init__()
        self.picture = picture
        self.register_theme(EVENARC)
        self.theme = EVENARC.name

    def compose(self) -> ComposeResult:
        yield self.picture


def text_of(picture: Widget) -> str:
    """Text of a picture, row by row."""
    return "\n".join(strip.text for strip in picture.render_lines(picture.size.region))
