"""The direct check of a session: rows are typed as they are read, and kept at once."""

from textual import on
from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

from core.documents.document import Document
from core.documents.entries import EntryError, units_of
from core.profiles.profile import ProfileError
from core.verdict.assess import assess
from core.verdict.verdict import Verdict
from wizard.flow.answers import applicable_answers
from wizard.flow.direct_rows import (
    line_hint,
    typed_check,
    typed_rows,
    with_line,
    without_last_line,
)
from wizard.flow.flow import Flow
from wizard.phrases.direct import direct_facts
from wizard.phrases.direct_steps import (
    SET_UP,
    method_words,
    progress_words,
    row_words,
    steer_rows,
)
from wizard.phrases.session_names import session_words
from wizard.tui.host import Host
from wizard.tui.widgets.field import Field
from wizard.tui.widgets.heading import Heading
from wizard.tui.widgets.keys import Key, Keys
from wizard.tui.widgets.remark import Remark


class DirectScreen(Screen[Flow]):
    """Asks for the method and for one row after the other. Its result is the session.

    Parameters
    ----------
    flow : Flow
        The session that is measured.
    """

    app: Host

    BINDINGS = [
        ("escape", "close", "back"),
        ("f8", "undo", "undo"),
        ("pageup", "page(-1)", "page up"),
        ("pagedown", "page(1)", "page down"),
    ]

    def __init__(self, flow: Flow) -> None:
        super().__init__()
        self.flow = flow

    def compose(self) -> ComposeResult:
        """Yield the set-up and the rows, the field, the keys."""
        yield Heading()
        with VerticalScroll(id="direct"):
            yield Static(id="set-up")
            yield Static(id="rows")
        yield Field()
        yield Remark()
        yield Keys()

    def on_mount(self) -> None:
        """Show the session, and focus the field."""
        self.query_one(Heading).left = f"{session_words(self.flow.document)}, direct check"
        self.query_one("#set-up", Static).update(Content("\n\n".join(SET_UP)))
        self.query_one(VerticalScroll).can_focus = False
        self.query_one(Field).focus()
        self.show()

    def show(self) -> None:
        """Show what is typed, and what it says so far."""
        document = self.flow.document
        table, rows = typed_check(document), typed_rows(document)
        lines = [f"Method: {method_words(table)}", ""] if table else ["The method first.", ""]
        lines += [row_words(number, row) for number, row in enumerate(rows, start=1)]
        if table:
            lines += ["", progress_words(rows)]
        verdict = self.verdict()
        if verdict is not None and verdict.direct is not None:
            lines += ["", *steer_rows(verdict, units_of(document)), ""]
            facts = direct_facts(verdict, units_of(document))
            lines += [
                f"{fact.mark or ' '} {f'{fact.name}: ' if fact.name else ''}{fact.text}"
                for fact in facts
            ]
        self.query_one("#rows", Static).update(Content("\n".join(lines)))
        self.query_one(Field).value = ""
        self.query_one(Remark).hint(line_hint(document))
        self.query_one(VerticalScroll).scroll_end(animate=False)
        undo = [Key("F8", "undo", "undo")] if table else []
        self.query_one(Keys).keys = (
            Key("Enter", "keep the line", "submit"),
            *undo,
            Key("Esc", "back to the verdict", "close"),
        )

    def verdict(self) -> Verdict | None:
        """Verdict on the session with the rows so far; None where it has none."""
        profile = self.flow.profile
        if profile is None:
            return None
        try:
            return assess(applicable_answers(self.flow.document, profile), lambda _: profile, 0)
        except (EntryError, ProfileError):
            return None

    @on(Field.Submitted)
    def action_submit(self) -> None:
        """Keep the typed line, or say why it is refused."""
        text = self.query_one(Field).value.strip()
        if not text:
            return
        try:
            document = with_line(self.flow.document, text)
        except EntryError as error:
            self.query_one(Remark).say("refused", str(error))
        else:
            self.keep(document)

    def action_undo(self) -> None:
        """Take the last line out."""
        if typed_check(self.flow.document):
            self.keep(without_last_line(self.flow.document))

    def keep(self, document: Document) -> None:
        """Keep the session with other rows, and show them."""
        self.flow, is_kept = self.app.keep_or_warn(self.flow.with_document(document), self.flow)
        if is_kept:
            self.show()

    def action_page(self, way: int) -> None:
        """Scroll by a page."""
        rows = self.query_one(VerticalScroll)
        (rows.scroll_page_down if way > 0 else rows.scroll_page_up)(animate=False)

    def action_close(self) -> None:
        """Go back to the verdict."""
        self.dismiss(self.flow)
