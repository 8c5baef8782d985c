"""Guidance on a question: the work, the way of the tape, and the reason."""

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from wizard.phrases.guidance import guidance_of
from wizard.questions.question import Question


class Guidance(VerticalScroll, can_focus=False):
    """The guidance on one question; it scrolls, and F1 shows it in full."""

    def compose(self) -> ComposeResult:
        """Yield the guidance and its reason."""
        yield Static(classes="do")
        yield Static(classes="why")

    def show(self, question: Question) -> None:
        """Show the guidance on another question from its beginning."""
        self.query_one(".do", Static).update(Content(guidance_of(question)))
        self.query_one(".why", Static).update(why_content(question.reason))
        self.scroll_home(animate=False)


def why_content(why: str) -> Content:
    """The reason, after the word for it; empty where there is none."""
    return Content.assemble(("Why  ", "bold $accent"), why) if why else Content()
