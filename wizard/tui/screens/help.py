"""Help: the guidance of the question at hand, the keys, and the cautions."""

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.containers import Container, VerticalScroll
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Static

from wizard.flow.flow import Flow
from wizard.phrases.help_section import HelpSection
from wizard.tui.pictures.above_view import AboveView
from wizard.tui.pictures.front_view import FrontView
from wizard.tui.widgets.closing import fact_content
from wizard.tui.widgets.guidance import why_content
from wizard.tui.widgets.keys import Key, Keys
from wizard.views.above import AbovePicture
from wizard.views.picture_data import FrontPicture
from wizard.views.where_the_tape_goes import tapes_from_above, tapes_from_front


class HelpScreen(ModalScreen[None]):
    """Sections of text, each under its title, scrolled with the arrows.

    Parameters
    ----------
    sections : sequence of HelpSection
    tapes : pair of FrontPicture and AbovePicture, optional
        Where the tape goes, shown under the first section.
    """

    BINDINGS = [("escape,f1,enter", "close", "back")]

    def __init__(
        self,
        sections: Sequence[HelpSection],
        tapes: tuple[FrontPicture, AbovePicture] | None = None,
    ) -> None:
        super().__init__()
        self.sections = sections
        self.tapes = tapes

    def compose(self) -> ComposeResult:
        """Yield the sections under each other."""
        first, *others = self.sections
        with VerticalScroll(classes="sheet"):
            yield from of_section(first)
            if self.tapes:
                from_front, from_above = self.tapes
                yield Static("Where the tape goes", classes="title")
                with Container(id="tapes"):
                    yield FrontView(from_front)
                    yield AboveView(from_above)
            for section in others:
                yield from of_section(section)
        yield Keys()

    def on_mount(self) -> None:
        """Let the arrows scroll at once."""
        self.query_one(VerticalScroll).focus()
        self.query_one(Keys).keys = (Key("↑ ↓", "scroll"), Key("Esc", "back", "close"))

    def action_close(self) -> None:
        """Go back to the screen below."""
        self.dismiss(None)


def of_section(section: HelpSection) -> ComposeResult:
    """Yield the title and the text of a section."""
    yield Static(Content(section.title), classes="title")
    yield Static(section_content(section), classes="text")


def section_content(section: HelpSection) -> Content:
    """Body of a section, a line for each of its parts."""
    lines = [Content(section.text)] if section.text else []
    if section.why:
        lines.append(why_content(section.why))
    width = max((len(key) for key, _ in section.keys), default=0) + 2
    lines += [
        Content.assemble((f"{key:<{width}}", "bold $accent"), does) for key, does in section.keys
    ]
    lines += [Content.assemble((f"{word}: ", "bold"), means) for word, means in section.glossary]
    lines += [fact_content(fact) for fact in section.facts]
    return Content("\n").join(lines)


def tapes_of(flow: Flow) -> tuple[FrontPicture, AbovePicture] | None:
    """Pictures of where the tape goes; None where no reading is asked for."""
    if not flow.question.path.startswith("readings."):
        return None
    return (
        tapes_from_front(flow.document, flow.profile),
        tapes_from_above(flow.document, flow.profile),
    )
