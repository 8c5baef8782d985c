"""The guidance: the action, the way of the tape, and the reason."""

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from wizard.phrases.guidance import guidance_of
from wizard.questions.question import Question


class Guidance(VerticalScroll, can_focus=False):
    """The guidance of one question; what has no room is scrolled to, or read with F1."""

    def compose(self) -> ComposeResult:
        """Yield the action and the reason."""
        yield Static(classes="do")
        yield Static(classes="why")

    def show(self, question: Question) -> None:
        """The guidance of another question, from its beginning."""
        self.query_one(".do", Static).update(Content(guidance_of(question)))
        self.query_one(".why", Static).update(why_content(question.reason))
        self.scroll_home(animate=False)


def why_content(why: str) -> Content:
    """The reason, after the word for it; empty where there is none."""
    return Content.assemble(("Why  ", "bold $accent"), why) if why else Content()
