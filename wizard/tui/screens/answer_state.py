"""States of the question at hand: it waits for an answer, for a decision, or for a reason."""

from dataclasses import dataclass
from typing import Any

from core.entry_checks.outcome import Queried


@dataclass(frozen=True)
class AwaitingAnswer:
    """The question waits for an answer."""


@dataclass(frozen=True)
class AnswerQueried:
    """The answer was queried: it is to be given again, or to be kept with a reason.

    Attributes
    ----------
    query : Queried
        The value, and why it was queried.
    given : str, bool or list of str
        The answer as it was typed or chosen.
    """

    query: Queried
    given: Any

    def reason_asked(self) -> "AwaitingReason":
        """State after the technician chose to keep the answer."""
        return AwaitingReason(self.query, self.given)


@dataclass(frozen=True)
class AwaitingReason:
    """The answer is to be kept, and the screen asks for the reason.

    Attributes
    ----------
    query : Queried
    given : str, bool or list of str
    """

    query: Queried
    given: Any


AnswerState = AwaitingAnswer | AnswerQueried | AwaitingReason
