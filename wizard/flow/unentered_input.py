"""What was answered and taken back, or typed and left: said, and put back into its field."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress

from core.documents.document import value_at
from core.documents.entries import units_of
from core.text.plain_text import plain
from core.text.quantity import QuantityError, split_repeats, with_unit
from wizard.flow.flow import Flow
from wizard.phrases.answer_words import answer_in_words, field_text

LONGEST = 80
"""Characters of an answer that are said."""


class UnenteredInput:
    """What was typed and left, by question, until that question comes up again."""

    def __init__(self) -> None:
        self.typed: dict[str, str] = {}

    def keep(self, flow: Flow, typed: str) -> None:
        """Keep what stands in the field of the question at hand; a length with its unit."""
        if flow.question.kind == "length":
            units = units_of(flow.document)
            with suppress(QuantityError):
                typed = "; ".join(with_unit(part, units) for part in split_repeats(typed))
        self.typed[flow.question.path] = typed

    def take(self, path: str) -> str:
        """What was typed at a question, once; empty where nothing was."""
        return self.typed.pop(path, "")

    def words(self, *others: str) -> Iterator[str]:
        """A line for each text that would be lost, and for others."""
        for typed in (*self.typed.values(), *others):
            yield f"“{plain(typed, 40)}” was typed and not entered"


def undone(now: Flow, before: Flow) -> tuple[str, str]:
    """What undoing the last answer did, in words, and what to put back into its field.

    Parameters
    ----------
    now : Flow
        With the answer.
    before : Flow
        Without it, at its question.
    """
    question, units = before.question, units_of(before.document)
    answer, restored = (value_at(one.document, question.path) for one in (now, before))
    if answer is None or answer == restored:
        return "", ""
    said = f"{question.name}: {plain(answer_in_words(question, answer, units), LONGEST)}"
    if restored is not None:
        was = plain(answer_in_words(question, restored, units), LONGEST)
        return f"{said}; it is {was} again", ""
    return said, "" if question.is_chosen else field_text(answer)
