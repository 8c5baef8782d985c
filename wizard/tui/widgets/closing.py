"""Whether the readings close, while there are more to come."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.content import Content
from textual.widgets import Static

from core.verdict.closure import Closure
from wizard.phrases.fact import LOOK
from wizard.phrases.readings import closing_facts

if TYPE_CHECKING:
    from wizard.phrases.answer_words import Units

IN_SHORT = Content.assemble(
    (f"{LOOK} do not close: ", "bold $warning"), "some readings cannot be right; F1 says which."
)


class Closing(Static):
    """A few lines under the picture: the readings agree, or which of them cannot be right.

    Where the screen is low they are one line, and `words` are for the help.
    """

    words: Content = Content()

    def show(self, agreement: Closure | None, units: Units) -> None:
        """Say how the readings taken so far agree; nothing as long as a pivot has no place."""
        self.words = Content() if agreement is None else closing_words(agreement, units)
        is_short = agreement is None or not agreement.is_checked or agreement.closes
        is_low = self.screen.has_class("-low")
        self.update(IN_SHORT if is_low and not is_short else self.words)


def closing_words(agreement: Closure, units: Units) -> Content:
    """Mark and words, a line for each thing there is to say."""
    if not agreement.is_checked:
        return Content.styled("Nothing checks the readings yet; the cross-checks will.", "$quiet")
    facts = closing_facts(agreement.adjustment, agreement.suspect_groups, units)
    return Content("\n").join(
        Content.assemble(
            (
                f"{fact.mark} {fact.name}: ".lstrip(),
                "bold $warning" if fact.mark == LOOK else "bold",
            ),
            fact.text,
        )
        for fact in facts
    )
