"""Words for an answer that was undone."""

from core.documents.document import value_at
from core.documents.entries import units_of
from core.text.plain_text import plain
from wizard.flow.flow import Flow
from wizard.phrases.answer_words import answer_in_words, field_text

LONGEST = 80
"""Characters of an answer in a message."""


def describe_undo(undone_from: Flow, undone_to: Flow) -> tuple[str, str]:
    """Describe the answer that an undo took back.

    Parameters
    ----------
    undone_from : Flow
        The session with the answer.
    undone_to : Flow
        The session without the answer, at its question.

    Returns
    -------
    message : str
        The question and the answer; empty if the document did not change.
    field_text : str
        Text to put back into the field, so that it can be corrected; empty if there is none.
    """
    question, units = undone_to.question, units_of(undone_to.document)
    answer = value_at(undone_from.document, question.path)
    restored = value_at(undone_to.document, question.path)
    if answer is None or answer == restored:
        return "", ""
    message = f"{question.name}: {plain(answer_in_words(question, answer, units), LONGEST)}"
    if restored is not None:
        restored_words = plain(answer_in_words(question, restored, units), LONGEST)
        return f"{message}; it is {restored_words} again", ""
    return message, "" if question.is_chosen else field_text(answer)
