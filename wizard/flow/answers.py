"""Answers in the document of a session: those that apply, and what else an answer changes."""

from collections.abc import Iterator

from core.documents.document import Document, value_at, with_value, without
from core.profiles.profile import Profile
from wizard.questions.question import Question
from wizard.questions.steps import STEPS

PASSED = "draft.passed"
"""Path of the list of questions that were skipped, read or seen."""

AFTER_THE_READINGS = ("Verdict", "Fix")
"""Steps that have to be seen again when a reading changes."""


def applicable_answers(document: Document, profile: Profile | None) -> Document:
    """Document with the answers that apply, and without the draft's own table.

    Some answers belong to questions that are no longer asked: the near ball of a layout that was
    changed. A draft keeps them, in case the layout is changed back. Nothing else uses them.
    """
    asked = {question.path for question in asked_on_long_way(document, profile)}
    for step in STEPS:
        for question in step.questions:
            if question.is_answered_by_a_value and question.path not in asked:
                document = without(document, question.path)
    return without(document, "draft")


def asked_on_long_way(document: Document, profile: Profile | None) -> Iterator[Question]:
    """Questions of the long way that apply to the answers so far, in order."""
    for step in STEPS:
        for question in step.questions:
            if question.is_asked(document, profile):
                yield question.as_asked(document)


def with_results_open(document: Document) -> Document:
    """Document whose verdict and fix are to be seen again."""
    for step in AFTER_THE_READINGS:
        document = without_passed(document, step.lower())
    return document


def with_kept_reason(document: Document, question: Question, reason: str) -> Document:
    """Replace the reason why a queried answer was kept; an empty reason removes it."""
    reading = reading_name(question)
    kept = [entry for entry in document.get("kept", ()) if entry.get("reading") != reading]
    if reason:
        kept.append({"reading": reading, "reason": reason})
    return with_value(document, "kept", kept) if kept else without(document, "kept")


def reading_name(question: Question) -> str:
    """Name under which `[[kept]]` lists the answer to a question."""
    return question.path.removeprefix("readings.")


def without_passed(document: Document, path: str) -> Document:
    """Remove a question from the list of passed questions."""
    passed = value_at(document, PASSED, ())
    if path not in passed:
        return document
    return with_value(document, PASSED, [other for other in passed if other != path])


def without_carried(document: Document, question: Question) -> Document:
    """Document in which a reading is no longer named as carried over: it is measured now."""
    carried = value_at(document, "session.carried", ())
    left = [name for name in carried if name != reading_name(question)]
    if len(left) == len(carried):
        return document
    return with_value(document, "session.carried", left)
