"""Progress of a session through its steps."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from wizard.questions.question import Step

if TYPE_CHECKING:
    from wizard.flow.flow import Flow

StepState = Literal["done", "open", "here", "to come"]
"""State of a step: all settled, some settled, the step at hand, none settled."""


@dataclass(frozen=True)
class Progress:
    """Progress of one step.

    Attributes
    ----------
    step : Step
    state : str
    done : int
        Number of its questions that are settled.
    total : int
        Number of its questions that are asked.
    """

    step: Step
    state: StepState
    done: int
    total: int


def progress_of(flow: Flow, step: Step) -> Progress:
    """Progress of one step; what only refines does not count until it is asked for."""
    asked = [
        question
        for placed, question in flow.placed
        if placed is step and (flow.is_settled(question) or flow.is_wanted(question))
    ]
    done = sum(map(flow.is_settled, asked))
    state: StepState = "open" if done else "to come"
    if done == len(asked):
        state = "done"
    if step is flow.step:
        state = "here"
    return Progress(step, state, done, len(asked))
