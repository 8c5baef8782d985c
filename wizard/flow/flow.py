"""Order of the questions: a session with its place in the steps, as an immutable value.

A flow is a document and a place in it. Each answer, skip or move returns another flow. Undo
returns the flow before the last answer. A draft stores its place in a `[draft]` table, which is
not part of the record.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any, Literal, Self

from core.documents.document import Document, value_at, with_value, without
from core.profiles.profile import Profile
from wizard.questions.question import Question, Step
from wizard.questions.steps import STEPS

StepState = Literal["done", "open", "here", "to come"]
"""State of a step: all settled, some settled, the step at hand, none settled."""

PLACE = "draft.at"
"""Path of the question at which a draft was left."""

PASSED = "draft.passed"
"""Path of the list of questions that were skipped, read or seen."""

NEEDED_FIRST = ("vehicle.tag", "session.profile")
"""Without a tag no draft can be kept; without a profile no answer can be checked."""

AFTER_THE_READINGS = ("Verdict", "Fix")
"""Steps that have to be seen again when a reading changes."""

_STEPS_BY_PATH = {question.path: step for step in STEPS for question in step.questions}


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


@dataclass(frozen=True)
class Flow:
    """A session that is being measured: its document, its place, and its past for undo.

    Attributes
    ----------
    document : mapping
        The draft.
    profile : Profile or None
        The chosen profile; None before one was chosen.
    past : tuple of Flow
        The flows before each answer, oldest first.
    left : str
        Path of the question that was left for an earlier one; empty if none was. Once an earlier
        answer is changed, that question is asked again.
    """

    document: Document
    profile: Profile | None = None
    past: tuple[Self, ...] = field(default=(), repr=False, compare=False)
    left: str = field(default="", repr=False, compare=False)

    @cached_property
    def question(self) -> Question:
        """Question at hand: the question at the draft's place, or else the first open one."""
        place = value_at(self.document, PLACE)
        at_place = (question for question in self.asked if question.path == place)
        return next(at_place, self._first_open)

    @cached_property
    def step(self) -> Step:
        """Step of the question at hand."""
        return step_of(self.question)

    @cached_property
    def asked(self) -> tuple[Question, ...]:
        """Questions that apply to the answers so far, in order."""
        return tuple(_asked(self.document, self.profile))

    @property
    def _first_open(self) -> Question:
        """First question that is not settled; the last question if all are."""
        return next(filter(self._is_open, self.asked), self.asked[-1])

    def is_settled(self, question: Question) -> bool:
        """True if a question was answered, skipped, read or seen."""
        if question.is_answered_by_a_value and value_at(self.document, question.path) is not None:
            return True
        can_be_passed = question.optional or not question.is_answered_by_a_value
        return can_be_passed and question.path in value_at(self.document, PASSED, ())

    def _is_open(self, question: Question) -> bool:
        return not self.is_settled(question)

    @cached_property
    def missing(self) -> tuple[Question, ...]:
        """Questions that need an answer and have none yet."""
        return tuple(
            question
            for question in self.asked
            if question.is_answered_by_a_value and not question.optional and self._is_open(question)
        )

    @cached_property
    def progress(self) -> tuple[Progress, ...]:
        """Progress of every step, in order."""
        return tuple(self._progress_of(step) for step in STEPS)

    def _progress_of(self, step: Step) -> Progress:
        asked = [question for question in self.asked if step_of(question) is step]
        done = sum(map(self.is_settled, asked))
        state: StepState = "open" if done else "to come"
        if done == len(asked):
            state = "done"
        if step is self.step:
            state = "here"
        return Progress(step, state, done, len(asked))

    def answered(self, value: Any, reason: str = "") -> Self:
        """Flow with the question at hand answered, at the next open question.

        Parameters
        ----------
        value
            The value for the document.
        reason : str
            Why a queried value was kept; the document stores it in `[[kept]]`.
        """
        question = self.question
        answered = with_value(self.document, question.path, value)
        document = _with_kept_reason(answered, question, reason)
        return self._settled(_without_passed(document, question.path), question)

    def reason_for(self, value: Any) -> str:
        """Reason why this answer to the question at hand was kept before; empty without one."""
        if value_at(self.document, self.question.path) != value:
            return ""
        reading = _reading_name(self.question)
        reasons = {
            entry.get("reading"): entry.get("reason") for entry in self.document.get("kept", ())
        }
        return str(reasons.get(reading) or "")

    def skipped(self) -> Self:
        """Flow past the question at hand without an answer: skipped, read or seen."""
        question = self.question
        document: Document = self.document
        if question.is_answered_by_a_value:
            document = _with_kept_reason(without(document, question.path), question, "")
        passed = [*value_at(document, PASSED, ())]
        if question.path not in passed:
            passed.append(question.path)
        return self._settled(with_value(document, PASSED, passed), question)

    def _settled(self, document: Document, question: Question) -> Self:
        if step_of(question).name not in (*AFTER_THE_READINGS, "File"):
            document = with_results_open(document)
        settled = replace(self, document=document, past=(*self.past, self), left="")
        return settled._at(self._left_for(settled, question) or settled._next_open(question).path)

    def _left_for(self, settled: Self, question: Question) -> str:
        """The question that was left to change this answer; empty where there is none.

        It is also empty if the change opens other questions before it.
        """
        asked = settled.asked
        paths = [other.path for other in asked]
        if self.left not in paths or question not in asked or self._is_open(question):
            return ""
        between = asked[asked.index(question) + 1 : paths.index(self.left)]
        was_open = {other.path for other in self.asked if self._is_open(other)}
        opened = (other for other in between if settled._is_open(other))
        return "" if any(other.path not in was_open for other in opened) else self.left

    def _next_open(self, question: Question) -> Question:
        asked = self.asked
        later = asked[asked.index(question) + 1 :] if question in asked else ()
        return next(filter(self._is_open, later), self._first_open)

    def undone(self) -> Self:
        """Flow before the last answer; the same flow if there was none.

        The units are not an answer and stay as they are.
        """
        if not self.past:
            return self
        before = self.past[-1]
        units = value_at(self.document, "session.units")
        if units is None or before.question.path == "session.units":
            return before
        return replace(before, document=with_value(before.document, "session.units", units))

    def going_to(self, path: str) -> Self:
        """Flow at another question, but not past tag and profile while these are missing.

        It remembers the question that it leaves for an earlier one.
        """
        there = self._at(path)
        left, asked = self.left or self.question.path, [question.path for question in self.asked]
        is_earlier = left in asked and asked.index(there.question.path) < asked.index(left)
        return replace(there, left=left if is_earlier else "")

    def _at(self, path: str) -> Self:
        """Flow at another question, as `going_to` without its memory."""
        asked = [question.path for question in self.asked]
        needed = (question.path for question in self.missing if question.path in NEEDED_FIRST)
        farthest = next(needed, asked[-1])
        place = min(path, farthest, key=asked.index) if path in asked else farthest
        return replace(self, document=with_value(self.document, PLACE, place))

    def going_by(self, count: int) -> Self:
        """Flow at the question `count` places later, or earlier if negative; it stops at the ends.

        Parameters
        ----------
        count : int
            Number of questions.
        """
        asked = self.asked
        index = min(max(asked.index(self.question) + count, 0), len(asked) - 1)
        return self.going_to(asked[index].path)

    def going_to_step(self, name: str) -> Self:
        """Flow at the first open question of a step, or at its first question if all are settled.

        Parameters
        ----------
        name : str
            Name of the step.
        """
        asked = [question for question in self.asked if step_of(question).name == name]
        return self.going_to(next(filter(self._is_open, asked), asked[0]).path)

    def with_document(self, document: Document) -> Self:
        """Flow with a document that was changed by something other than an answer."""
        return replace(self, document=document)

    def with_profile(self, profile: Profile | None) -> Self:
        """Flow with the chosen profile."""
        return replace(self, profile=profile)


def step_reached(document: Document) -> str:
    """Name of the step at which a draft was left; empty if the draft does not say."""
    step = _STEPS_BY_PATH.get(str(value_at(document, PLACE)))
    return step.name if step else ""


def step_of(question: Question) -> Step:
    """Step of a question."""
    return _STEPS_BY_PATH[question.path]


def applicable_answers(document: Document, profile: Profile | None) -> Document:
    """Document with the answers that apply, and without the draft's own table.

    Some answers belong to questions that are no longer asked: the near ball of a layout that was
    changed. A draft keeps them, in case the layout is changed back. Nothing else uses them.
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
                yield question.as_asked(document)


def with_results_open(document: Document) -> Document:
    """Document whose verdict and fix are to be seen again."""
    for step in AFTER_THE_READINGS:
        document = _without_passed(document, step.lower())
    return document


def _with_kept_reason(document: Document, question: Question, reason: str) -> Document:
    """Replace the reason why a queried answer was kept; an empty reason removes it."""
    reading = _reading_name(question)
    kept = [entry for entry in document.get("kept", ()) if entry.get("reading") != reading]
    if reason:
        kept.append({"reading": reading, "reason": reason})
    return with_value(document, "kept", kept) if kept else without(document, "kept")


def _reading_name(question: Question) -> str:
    """Name under which `[[kept]]` lists the answer to a question."""
    return question.path.removeprefix("readings.")


def _without_passed(document: Document, path: str) -> Document:
    """Remove a question from the list of passed questions."""
    passed = value_at(document, PASSED, ())
    if path not in passed:
        return document
    return with_value(document, PASSED, [other for other in passed if other != path])
