"""What to do, where the tape goes, and why it matters."""

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from wizard.questions.question import Question


class Guidance(VerticalScroll, can_focus=False):
    """The guidance of one question; what has no room is scrolled to, or read with F1."""

    def compose(self) -> ComposeResult:
        """A single text."""
        yield Static()

    def show(self, question: Question) -> None:
        """The guidance of another question, from its beginning."""
        self.query_one(Static).update(guidance(question))
        self.scroll_home(animate=False)


def guidance(question: Question) -> Content:
    """What to do, and why, as one text."""
    parts = [Content(question.do)] if question.do else []
    if question.why:
        parts.append(Content.assemble(("Why  ", "bold $accent"), question.why))
    return Content("\n").join(parts)
