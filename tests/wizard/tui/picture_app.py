"""A page with one picture on it, in the wizard's own colours."""

from pathlib import Path

from textual.app import App, ComposeResult
from textual.widget import Widget

import wizard
from wizard.tui.theme import EVENARC

STYLES = Path(wizard.__file__).parent / "tui" / "evenarc.tcss"

SMALL, LARGE = (80, 24), (120, 40)


class PictureApp(App[None]):
    """Shows a picture and nothing else."""

    CSS_PATH = STYLES

    def __init__(self, picture: Widget) -> None:
        super().__init__()
        self.picture = picture
        self.register_theme(EVENARC)
        self.theme = EVENARC.name

    def compose(self) -> ComposeResult:
        yield self.picture


def text_of(picture: Widget) -> str:
    """What a picture says, row by row."""
    return "\n".join(strip.text for strip in picture.render_lines(picture.size.region))
