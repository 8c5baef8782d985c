"""Reports beside the readings: the vehicle, the driver's words, the note."""

from collections.abc import Iterator, Sequence

from core.documents.document import Document, value_at
from core.text.plain_text import plain
from wizard.phrases.answer_words import choice_words
from wizard.phrases.fact import Fact
from wizard.questions.steps import QUESTIONS

LONGEST = 4000
"""Characters of a text."""

REPORTED = (
    "vehicle.description",
    "vehicle.odometer",
    "session.technician",
    "complaint.reported",
    "complaint.note",
    "session.altered",
    "session.note",
)


def reported_facts(document: Document, paths: Sequence[str] = REPORTED) -> Iterator[Fact]:
    """Reports in a record, under the names of their questions."""
    for path in paths:
        value, question = value_at(document, path), QUESTIONS[path]
        if value:
            words = choice_words(question, value) if question.choices else plain(value, LONGEST)
            yield Fact(question.name.casefold(), words)
