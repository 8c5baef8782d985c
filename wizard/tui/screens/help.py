"""Help: the guidance of the question at hand, the keys, and the cautions."""

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Static

from wizard.phrases.help_section import HelpSection
from wizard.tui.widgets.closing import fact_content
from wizard.tui.widgets.guidance import why_content
from wizard.tui.widgets.keys import Key, Keys


class HelpScreen(ModalScreen[None]):
    """Sections of text, each under its title, scrolled with the arrows."""

    BINDINGS = [("escape,f1,enter", "close", "back")]

    def __init__(self, sections: Sequence[HelpSection]) -> None:
        super().__init__()
        self.sections = sections

    def compose(self) -> ComposeResult:
        """Yield the sections under each other."""
        with VerticalScroll(classes="sheet"):
            for section in self.sections:
                yield Static(Content(section.title), classes="title")
                yield Static(section_content(section), classes="text")
        yield Keys()

    def on_mount(self) -> None:
        """Let the arrows scroll at once."""
        self.query_one(VerticalScroll).focus()
        self.query_one(Keys).keys = (Key("↑ ↓", "scroll"), Key("Esc", "back", "close"))

    def action_close(self) -> None:
        """Go back to the screen below."""
        self.dismiss(None)


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
