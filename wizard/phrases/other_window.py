"""Remarks on a session that another window has open too."""

from collections.abc import Sequence

from core.documents.document import Document, value_at
from core.documents.entries import units_of
from core.text.plain_text import plain, with_full_stop
from wizard.phrases.answer_words import answer_in_words
from wizard.questions.steps import QUESTIONS

FILED_ELSEWHERE = (
    "was filed from another window. Leave with F9, and open the filed session from home"
)
NOT_FILED_YET = (
    "has answers from another window. They are taken over now. Look at the verdict again, then file"
)
NOT_TAKEN_BACK = "has answers from another window, so it is not removed"

THROWN_AWAY = (
    "was thrown away in another window. It is kept again, with every answer of this window"
)

LONGEST = 60
"""Characters of an answer in a remark."""

MOST_NAMES = 3
"""Questions that a remark names."""


def answered_words(paths: Sequence[str], draft: Document) -> str:
    """Say that another window has answered the same question.

    Parameters
    ----------
    paths : sequence of str
        Paths of the values that both windows have changed.
    draft : mapping
        The session as the other window has kept it.
    """
    question = next((QUESTIONS[path] for path in paths if path in QUESTIONS), None)
    if question is None:
        return f"{plain(paths[0])} was changed in another window, and stays. Look at it again"
    value = value_at(draft, question.path)
    words = plain(answer_in_words(question, value, units_of(draft)), LONGEST)
    answered = f"answered in another window: {words}" if words else "removed in another window"
    said = with_full_stop(f"{question.name} was {answered}")
    return f"{said} To put yours in its place, answer once more"


def taken_over_words(paths: Sequence[str]) -> str:
    """Say which answers were taken over from another window."""
    names = [QUESTIONS[path].name for path in paths]
    more = f" and {len(names) - MOST_NAMES} more" if len(names) > MOST_NAMES else ""
    return f"taken over from another window: {', '.join(names[:MOST_NAMES])}{more}"
