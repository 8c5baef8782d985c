"""Text that was typed into a field and left there without Enter."""

from collections.abc import Iterator
from contextlib import suppress

from core.documents.entries import units_of
from core.text.plain_text import plain
from core.text.quantity import QuantityError, split_repeats, with_unit
from wizard.flow.flow import Flow


class UnenteredInput:
    """Text that was typed but not entered, by question, until the question is asked again."""

    def __init__(self) -> None:
        self._texts: dict[str, str] = {}

    def keep(self, flow: Flow, text: str) -> None:
        """Keep the text in the field of the question at hand; a length gets its unit."""
        if flow.question.kind == "length":
            units = units_of(flow.document)
            with suppress(QuantityError):
                text = "; ".join(with_unit(part, units) for part in split_repeats(text))
        self._texts[flow.question.path] = text

    def take(self, path: str) -> str:
        """Remove and return the text of a question; empty if there is none."""
        return self._texts.pop(path, "")

    def words(self, *others: str) -> Iterator[str]:
        """One line for each text that would be lost: the texts kept here, and `others`."""
        for text in (*self._texts.values(), *others):
            yield f"“{plain(text, 40)}” was typed and not entered"
