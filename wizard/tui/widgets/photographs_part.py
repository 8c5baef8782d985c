"""The photographs of a verdict, each with its marks and the lines through the joint centres."""

from collections.abc import Sequence
from pathlib import Path

from PIL.Image import Image
from textual import on
from textual.app import ComposeResult
from textual.containers import Vertical
from textual.widget import Widget
from textual.widgets import Static

from core.documents.picture import PictureError, read_picture
from core.readings.photograph import Photograph
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.photographs import photograph_facts
from wizard.tui.widgets.facts import Facts
from wizard.tui.widgets.photograph_view import PhotographView
from wizard.views.photograph import Window

TITLE = "The photographs, with the lines of the track bar (blue) and the drag link (yellow)"


class PhotographsPart(Vertical):
    """Shows photographs under each other; one whose file is gone has its facts alone.

    Parameters
    ----------
    photographs : sequence of Photograph
    folder : Path
        The vehicle's folder.
    sharp : type of Widget or None
        Shows sharp pictures; None for half-blocks.
    """

    def __init__(
        self, photographs: Sequence[Photograph], folder: Path, sharp: type[Widget] | None
    ) -> None:
        super().__init__(id="photographs")
        self.photographs, self.sharp = tuple(photographs), sharp
        self.images: dict[int, Image] = {}
        self.missing: dict[int, str] = {}
        for photograph in photographs:
            try:
                self.images[photograph.number] = read_picture(folder / photograph.file)
            except PictureError as error:
                self.missing[photograph.number] = str(error)

    def compose(self) -> ComposeResult:
        """Yield the title, and each picture above its facts."""
        yield Static(TITLE, classes="title", markup=False)
        for photograph in self.photographs:
            if photograph.number in self.images:
                yield PhotographView(self.sharp, id=f"photograph-{photograph.number}")
            yield Facts(id=f"photograph-facts-{photograph.number}")

    def show(self, verdict: Verdict, unit: LengthUnit) -> None:
        """Show the facts on every photograph."""
        for photograph in self.photographs:
            facts = [*photograph_facts(verdict, photograph, unit)]
            if words := self.missing.get(photograph.number):
                facts.append(Fact("", f"{words}; its marks are kept.", LOOK))
            self.query_one(f"#photograph-facts-{photograph.number}", Facts).show("", facts)

    @on(PhotographView.Resized)
    def draw(self, event: PhotographView.Resized) -> None:
        """Draw the picture of a view, whole."""
        view = event.view
        for photograph in self.photographs:
            if view.id == f"photograph-{photograph.number}":
                image = self.images[photograph.number]
                marks = {mark.point: (mark.across, mark.down) for mark in photograph.marks}
                view.show(image, Window.whole(image.size, view.pixels, view.grain), marks, None)
