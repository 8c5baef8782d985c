"""What to do, where the tape goes, and why it matters."""

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from wizard.questions.question import Question


class Guidance(VerticalScroll, can_focus=False):
    """The guidance of one question; what has no room is scrolled to, or read with F1."""

    def compose(self) -> ComposeResult:
        """What to do, and why."""
        yield Static(classes="do")
        yield Static(classes="why")

    def show(self, question: Question) -> None:
        """The guidance of another question, from its beginning."""
        self.query_one(".do", Static).update(Content(question.do))
        self.query_one(".why", Static).update(reason(question))
        self.scroll_home(animate=False)


def reason(question: Question) -> Content:
    """Why it matters, after the word for it."""
    if not question.why:
        return Content()
    return Content.assemble(("Why  ", "bold $accent"), question.why)
