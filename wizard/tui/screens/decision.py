"""The shop lead's decision on a filed session: signed, or sent back."""

from dataclasses import replace
from pathlib import Path

from textual import on
from textual.app import ComposeResult
from textual.screen import Screen

from core.documents.document import Document
from core.documents.record import NotConfirmed, RecordError, replace_signed
from core.documents.signature import Decision, sign
from core.entry_checks import words
from core.entry_checks.outcome import Accepted, Refused
from wizard.flow.drafts import now
from wizard.phrases.answer_words import answer_in_words
from wizard.phrases.decisions import decision_facts
from wizard.phrases.session_names import session_words
from wizard.questions.question import Choice, Question
from wizard.tui.host import Host
from wizard.tui.widgets.answer_list import AnsweredQuestion, AnswerList
from wizard.tui.widgets.heading import Heading
from wizard.tui.widgets.keys import Key, Keys
from wizard.tui.widgets.question_view import NOTHING_CHOSEN, QuestionView

DECISION = Question(
    "decision",
    "one of",
    "Decision",
    "What becomes of this session?",
    "Sign it if its readings and its verdict stand. Send it back if something has to be done "
    "again, and say what.",
    "The decision is tied to every word of the record. If the record is changed later, the "
    "decision no longer stands. The screen says so.",
    choices=(Choice("signed", "sign it"), Choice("returned", "send it back")),
)
BY = Question(
    "by",
    "text",
    "Name",
    "Who decides?",
    "The name or initials the shop signs with.",
    "The technician can ask who it was.",
)
NOTE = Question(
    "note",
    "text",
    "Note",
    "Anything to say with it?",
    "What has to be done again, or what was agreed.",
    "It stands in the record beside the name.",
    optional=True,
)

WHY = "Why is it sent back?"

QUESTIONS = (DECISION, BY, NOTE)
AIM = "The lead's decision on this session."


class DecisionScreen(Screen[Document | None]):
    """Asks for the decision, the name and a note, and writes them into the record.

    Its result is the signed document, or None if nothing was decided.

    Parameters
    ----------
    path : Path
        The record.
    document : mapping
        The contents of the record.

    Attributes
    ----------
    answers : dict of str to str
        Answers so far, by the path of the question.
    """

    app: Host

    BINDINGS = [("escape", "back", "back")]

    def __init__(self, path: Path, document: Document) -> None:
        super().__init__()
        self.path, self.document = path, document
        self.answers: dict[str, str] = {}

    def compose(self) -> ComposeResult:
        """Yield the heading, the question and the keys."""
        yield Heading()
        yield QuestionView()
        yield Keys()

    def on_mount(self) -> None:
        """Ask the first question."""
        self.query_one(Heading).left = session_words(self.document)
        self.query_one(Keys).keys = (Key("Enter", "go on", "submit"), Key("Esc", "back", "back"))
        self.ask()

    @property
    def question(self) -> Question:
        """Question at hand."""
        return QUESTIONS[len(self.answers)]

    def ask(self) -> None:
        """Put the question at hand."""
        question, hint = self.question, ""
        if question is DECISION:
            hint = self.earlier_decision
        elif question is NOTE and self.needs_note:
            question = replace(NOTE, ask=WHY)
        elif question is NOTE:
            hint = "may be left empty; Enter puts the decision into the record"
        self.query_one(QuestionView).ask(question, question.choices, None, hint)
        self.query_one(AnswerList).show(AIM, [self.listed(answered) for answered in self.answered])

    @property
    def earlier_decision(self) -> str:
        """The last decision in the record, in words; empty if there is none."""
        decisions = list(decision_facts(self.document))
        return f"so far: {decisions[-1].name} {decisions[-1].text}" if decisions else ""

    @property
    def answered(self) -> tuple[Question, ...]:
        """Questions that were answered."""
        return QUESTIONS[: len(self.answers)]

    def listed(self, question: Question) -> AnsweredQuestion:
        """Question and answer as the list shows them."""
        words = answer_in_words(question, self.answers[question.path], "in")
        return AnsweredQuestion(question.path, question.name, words)

    @property
    def needs_note(self) -> bool:
        """True if the session is sent back: the note then says why."""
        return self.answers.get("decision") == "returned"

    @on(QuestionView.Submitted)
    def handle_answer(self, event: QuestionView.Submitted) -> None:
        """Accept an answer, or refuse it."""
        if event.answer is None:
            self.query_one(QuestionView).say("refused", NOTHING_CHOSEN)
            return
        text = str(event.answer)
        outcome = words.line(text) if self.question is BY else words.note(text)
        if self.question is NOTE and self.needs_note and not text.strip():
            outcome = Refused("nothing was typed: the technician has to know what to do again")
        if isinstance(outcome, Refused):
            self.query_one(QuestionView).say("refused", outcome.message)
        elif isinstance(outcome, Accepted):
            self.answers[self.question.path] = str(outcome.value)
            if len(self.answers) < len(QUESTIONS):
                self.ask()
            else:
                self.sign_record()

    def sign_record(self) -> None:
        """Write the decision into the record."""
        answers = self.answers
        decision: Decision = "signed" if answers["decision"] == "signed" else "returned"
        document = sign(self.document, decision, answers["by"], now(), answers["note"])
        try:
            replace_signed(self.path, document)
        except NotConfirmed as error:
            self.app.warn(str(error))
            self.dismiss(document)
        except RecordError as error:
            del self.answers["note"]
            self.query_one(QuestionView).say("trouble", str(error))
        else:
            self.dismiss(document)

    def action_submit(self) -> None:
        """Submit the answer, for the mouse."""
        self.query_one(QuestionView).submit()

    def action_back(self) -> None:
        """Go to the question before; from the first question back to the record."""
        if self.answers:
            self.action_go_to(self.answered[-1].path)
        else:
            self.dismiss(None)

    def action_go_to(self, path: str) -> None:
        """Go to a question that was answered, by its path."""
        while path in self.answers:
            self.answers.popitem()
        self.ask()
