"""Which question comes next: the way through the steps, as a plain value.

A flow is a document and a place in it. Answering, skipping and going about give the next
flow; undo gives the one before the last answer. A draft carries its place in a `[draft]`
table, which does not go into the record.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import TYPE_CHECKING, Any, Literal

from core.documents.document import Document, value_at, with_value, without
from wizard.questions.question import Question, Step
from wizard.questions.steps import STEPS

if TYPE_CHECKING:
    from core.profiles.profile import Profile

State = Literal["done", "open", "here", "to come"]

PLACE = "draft.at"
PASSED = "draft.passed"
RESTS_ON = ("vehicle.tag", "session.profile")
"""Without a tag nothing can be kept, without a profile nothing be checked."""

_STEPS_BY_PATH = {question.path: step for step in STEPS for question in step.questions}

AFTER_THE_READINGS = ("Verdict", "Fix")


@dataclass(frozen=True)
class Progress:
    """How far a step is: `done` of `of` questions, and whether it is the one at hand."""

    step: Step
    state: State
    done: int
    of: int


@dataclass(frozen=True)
class Flow:
    """A document while it is worked on, the place in it, and what was before.

    Attributes
    ----------
    document : mapping
    profile : Profile or None
        None until one was chosen.
    past : tuple of Flow
        Before each answer, the last one at the end; what undo goes back to.
    """

    document: Document
    profile: Profile | None = None
    past: tuple[Flow, ...] = field(default=(), repr=False, compare=False)

    @cached_property
    def question(self) -> Question:
        """The question at hand: the draft's place, or the first open one."""
        asked = self.asked
        place = value_at(self.document, PLACE)
        return next((question for question in asked if question.path == place), self._first_open)

    @cached_property
    def step(self) -> Step:
        """The step of the question at hand."""
        return step_of(self.question)

    @cached_property
    def asked(self) -> tuple[Question, ...]:
        """Every question that applies to what was answered so far, in order."""
        return tuple(_asked(self.document, self.profile))

    @property
    def _first_open(self) -> Question:
        asked = self.asked
        return next((question for question in asked if not self.is_settled(question)), asked[-1])

    def is_settled(self, question: Question) -> bool:
        """Whether a question was answered, skipped, read or seen."""
        if question.is_answered_by_a_value and value_at(self.document, question.path) is not None:
            return True
        return question.path in value_at(self.document, PASSED, ())

    @cached_property
    def missing(self) -> tuple[Question, ...]:
        """Questions that have to be answered and were not yet."""
        return tuple(
            question
            for question in self.asked
            if question.is_answered_by_a_value
            and not question.optional
            and not self.is_settled(question)
        )

    @cached_property
    def progress(self) -> tuple[Progress, ...]:
        """Every step with how far it is."""
        return tuple(self._progress_of(step) for step in STEPS)

    def _progress_of(self, step: Step) -> Progress:
        asked = [question for question in self.asked if step_of(question) is step]
        done = sum(map(self.is_settled, asked))
        state: State = "open" if done else "to come"
        if done == len(asked):
            state = "done"
        if step is self.step:
            state = "here"
        return Progress(step, state, done, len(asked))

    def answered(self, value: Any, reason: str = "") -> Flow:
        """With the question at hand answered, and on to the next open one.

        Parameters
        ----------
        value
            What goes into the document.
        reason : str
            Why a queried value was kept; goes into `[[kept]]`.
        """
        question = self.question
        document = _kept(with_value(self.document, question.path, value), question, reason)
        return self._settled(_passed_without(document, question.path), question)

    def reason_for(self, value: Any) -> str:
        """Why this same answer to the question at hand was kept before; empty if it was not."""
        if value_at(self.document, self.question.path) != value:
            return ""
        reading = self.question.path.removeprefix("readings.")
        kept = {one.get("reading"): one.get("reason") for one in self.document.get("kept", ())}
        return str(kept.get(reading) or "")

    def skipped(self) -> Flow:
        """Past the question at hand without an answer: an optional one, or a page that was read."""
        question = self.question
        document: Document = self.document
        if question.is_answered_by_a_value:
            document = _kept(without(document, question.path), question, "")
        passed = [*value_at(document, PASSED, ())]
        if question.path not in passed:
            passed.append(question.path)
        return self._settled(with_value(document, PASSED, passed), question)

    def _settled(self, document: Document, question: Question) -> Flow:
        if step_of(question).name not in (*AFTER_THE_READINGS, "File"):
            for step in AFTER_THE_READINGS:  # a changed reading is a changed verdict: see it again
                document = _passed_without(document, step.lower())
        settled = replace(self, document=document, past=(*self.past, self))
        return settled.going_to(settled._next_open(question).path)

    def _next_open(self, question: Question) -> Question:
        asked = self.asked
        later = asked[asked.index(question) + 1 :] if question in asked else ()
        return next((one for one in later if not self.is_settled(one)), self._first_open)

    def undone(self) -> Flow:
        """As it was before the last answer; the same flow when there was none.

        Units are no answer and stay as they are.
        """
        if not self.past:
            return self
        before = self.past[-1]
        units = value_at(self.document, "session.units")
        if units is None or before.question.path == "session.units":
            return before
        return replace(before, document=with_value(before.document, "session.units", units))

    def going_to(self, path: str) -> Flow:
        """At another question; not past the ones that everything else rests on."""
        asked = [question.path for question in self.asked]
        gate = next((one.path for one in self.missing if one.path in RESTS_ON), asked[-1])
        place = min(path, gate, key=asked.index) if path in asked else gate
        return replace(self, document=with_value(self.document, PLACE, place))

    def going_by(self, places: int) -> Flow:
        """At the question so many places on (or back) in order, at the ends if there is none."""
        asked = self.asked
        index = min(max(asked.index(self.question) + places, 0), len(asked) - 1)
        return self.going_to(asked[index].path)

    def going_to_step(self, name: str) -> Flow:
        """At the first open question of a step, or at its first one when all are settled."""
        asked = [question for question in self.asked if step_of(question).name == name]
        is_open = (question for question in asked if not self.is_settled(question))
        return self.going_to(next(is_open, asked[0]).path)

    def with_document(self, document: Document) -> Flow:
        """With a document that was changed by something else than an answer."""
        return replace(self, document=document)

    def with_profile(self, profile: Profile | None) -> Flow:
        """With the profile that was chosen, now that it has been read."""
        return replace(self, profile=profile)


def step_reached(document: Document) -> str:
    """Name of the step at which a draft was left; empty where it does not say."""
    step = _STEPS_BY_PATH.get(str(value_at(document, PLACE)))
    return step.name if step else ""


def step_of(question: Question) -> Step:
    """The step a question belongs to."""
    return _STEPS_BY_PATH[question.path]


def applicable_answers(document: Document, profile: Profile | None) -> Document:
    """The document with the answers that apply to it, without the draft's own table.

    Answers to questions that are no longer asked (the near ball of a layout that was changed)
    stay in a draft, in case the layout is changed back, and stay out of everything else.
    """
    asked = {question.path for question in _asked(document, profile)}
    for step in STEPS:
        for question in step.questions:
            if question.is_answered_by_a_value and question.path not in asked:
                document = without(document, question.path)
    return without(document, "draft")


def _asked(document: Document, profile: Profile | None) -> Iterator[Question]:
    for step in STEPS:
        for question in step.questions:
            if question.is_asked(document, profile):
                yield question


def _kept(document: Document, question: Question, reason: str) -> Document:
    """With the reason a queried answer was kept, in place of any earlier one for it."""
    reading = question.path.removeprefix("readings.")
    others = [kept for kept in document.get("kept", ()) if kept.get("reading") != reading]
    if reason:
        others.append({"reading": reading, "reason": reason})
    return with_value(document, "kept", others) if others else without(document, "kept")


def _passed_without(document: Document, path: str) -> Document:
    passed = value_at(document, PASSED, ())
    if path not in passed:
        return document
    return with_value(document, PASSED, [one for one in passed if one != path])
