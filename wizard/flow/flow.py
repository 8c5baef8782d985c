"""Order of the questions: a session with its place in the steps, as an immutable value.

A flow is a document and a place in it. Each answer, skip or move returns another flow. Undo
returns the flow before the last answer. A draft stores its place in a `[draft]` table, which is
not part of the record.
"""

from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any, Self

from core.documents.document import Document, value_at, with_value, without
from core.profiles.profile import Profile
from core.verdict.standing import Standing
from wizard.flow.answers import (
    AFTER_THE_READINGS,
    PASSED,
    applicable_answers,
    asked_on_long_way,
    reading_name,
    with_kept_reason,
    with_results_open,
    without_carried,
    without_passed,
)
from wizard.flow.progress import Progress, progress_of
from wizard.flow.short_way import (
    REFINES,
    TAKEN,
    WAY,
    asked_in_short_way,
    standing_in,
    usual_standing_in,
    wanted_paths,
)
from wizard.questions.question import Question, Step
from wizard.questions.short_way import ENOUGH, HELPS_MOST, SHORT_STEPS
from wizard.questions.steps import STEPS

PLACE = "draft.at"
"""Path of the question at which a draft was left."""

NEEDED_FIRST = ("vehicle.tag", "session.profile")
"""Without a tag no draft can be kept; without a profile no answer can be checked."""

_STEPS_BY_PATH = {question.path: step for step in STEPS for question in step.questions}
_SHORT_STEPS_BY_PATH = {question.path: step for step in SHORT_STEPS for question in step.questions}


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
        return next(at_place, self.first_open)

    @cached_property
    def step(self) -> Step:
        """Step of the question at hand."""
        return self.step_of(self.question)

    @property
    def is_short(self) -> bool:
        """True if the session goes the short way."""
        return bool(value_at(self.document, WAY) == "short")

    @property
    def steps(self) -> tuple[Step, ...]:
        """Steps of the way, in order."""
        return SHORT_STEPS if self.is_short else STEPS

    @cached_property
    def asked(self) -> tuple[Question, ...]:
        """Questions that apply to the answers so far, in order."""
        return tuple(question for _, question in self.placed)

    @cached_property
    def placed(self) -> tuple[tuple[Step, Question], ...]:
        """Questions that apply, in order, each with its step."""
        if self.is_short:
            return tuple(asked_in_short_way(self.document, self.profile, self.standing))
        asked = asked_on_long_way(self.document, self.profile)
        return tuple((step_of(question), question) for question in asked)

    @cached_property
    def _steps_by_path(self) -> dict[str, Step]:
        return {question.path: step for step, question in self.placed}

    def step_of(self, question: Question) -> Step:
        """Step of a question that is asked."""
        return self._steps_by_path[question.path]

    @cached_property
    def standing(self) -> Standing | None:
        """The verdict as it stands; None before every pivot has a place."""
        return standing_in(applicable_answers(self.document, self.profile), self.profile)

    @cached_property
    def usual_standing(self) -> Standing | None:
        """The same with the usual linkage of the profile where a pivot has no place yet."""
        if self.standing is not None:
            return self.standing
        answers = applicable_answers(self.document, self.profile)
        return usual_standing_in(answers, self.profile)

    @property
    def sheet(self) -> tuple[Question, ...]:
        """Questions that stand on one screen with the question at hand; () without a sheet."""
        if not self.step.is_sheet or self.question.kind == "read":
            return ()
        return tuple(
            question
            for step, question in self.placed
            if step is self.step and question.kind != "read"
        )

    @property
    def first_open(self) -> Question:
        """First question that is wanted and not settled; the last question if there is none."""
        return next(filter(self.is_wanted, self.asked), self.asked[-1])

    def is_wanted(self, question: Question) -> bool:
        """True if a question is open and comes by itself; what only refines has to be asked for."""
        if self.is_settled(question):
            return False
        if self.step_of(question) is not HELPS_MOST or question.path == ENOUGH.path:
            return True
        if value_at(self.document, REFINES, False):
            return True
        is_enough = ENOUGH.path in value_at(self.document, PASSED, ())
        return not is_enough and (
            self.standing is None or question.path in wanted_paths(self.standing)
        )

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
        """Progress of every step that has a question for this vehicle, in order."""
        progress = (progress_of(self, step) for step in self.steps)
        return tuple(each for each in progress if each.total)

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
        answered = with_value(without_carried(self.document, question), question.path, value)
        document = with_kept_reason(answered, question, reason)
        return self._settled(without_passed(document, question.path), question)

    def reason_for(self, value: Any) -> str:
        """Reason why this answer to the question at hand was kept before; empty without one."""
        if value_at(self.document, self.question.path) != value:
            return ""
        reading = reading_name(self.question)
        reasons = {
            entry.get("reading"): entry.get("reason") for entry in self.document.get("kept", ())
        }
        return str(reasons.get(reading) or "")

    def skipped(self) -> Self:
        """Flow past the question at hand without an answer: skipped, read or seen."""
        question = self.question
        document: Document = self.document
        if question.is_answered_by_a_value:
            document = with_kept_reason(without(document, question.path), question, "")
        passed = [*value_at(document, PASSED, ())]
        if question.path not in passed:
            passed.append(question.path)
        return self._settled(with_value(document, PASSED, passed), question)

    def _settled(self, document: Document, question: Question) -> Self:
        step = self.step_of(question)
        if step.name not in (*AFTER_THE_READINGS, "File"):
            document = with_results_open(document)
        if step is HELPS_MOST and question.path != ENOUGH.path:
            taken = value_at(document, TAKEN, ())
            if question.path not in taken:
                document = with_value(document, TAKEN, [*taken, question.path])
        settled = replace(self, document=document, past=(*self.past, self), left="")
        return settled.at(self._left_for(settled, question) or settled._next_open(question).path)

    def kept_on_sheet(self, before: Self) -> Self:
        """The flow after an answer, on the sheet where the question before was ticked.

        A tick leads to the next line that can be ticked, but neither to a line that is typed nor
        off the sheet: it may be a slip, and its key may be pressed again.
        """
        ticked = before.question
        if not before.sheet or not ticked.choices:
            return self
        lines = [line for line in self._after_on_sheet(ticked) if line.choices]
        return self.at(next(filter(self.is_wanted, lines), ticked).path)

    def _after_on_sheet(self, question: Question) -> tuple[Question, ...]:
        """The other questions of the sheet with a question, from it on; () without a sheet."""
        step = self._steps_by_path.get(question.path)
        if step is None or not step.is_sheet:
            return ()
        paths = [other.path for other in self.asked]
        place = paths.index(question.path)
        around = (*self.asked[place + 1 :], *self.asked[:place])
        return tuple(other for other in around if self.step_of(other) is step)

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
        """Next open question: on a sheet the others of the sheet come first."""
        paths = [other.path for other in self.asked]
        place = paths.index(question.path) + 1 if question.path in paths else len(paths)
        following = (*self._after_on_sheet(question), *self.asked[place:])
        return next(filter(self.is_wanted, following), self.first_open)

    def going_on(self) -> Self:
        """Flow at the next open question."""
        return self.at(self._next_open(self.question).path)

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
        there = self.at(path)
        left, asked = self.left or self.question.path, [question.path for question in self.asked]
        is_earlier = left in asked and asked.index(there.question.path) < asked.index(left)
        return replace(there, left=left if is_earlier else "")

    def at(self, path: str) -> Self:
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
        here = self.question.path
        paths = [
            question.path
            for question in self.asked
            if question.path == here or self.is_settled(question) or self.is_wanted(question)
        ]
        index = min(max(paths.index(here) + count, 0), len(paths) - 1)
        return self.going_to(paths[index])

    def going_to_step(self, name: str) -> Self:
        """Flow at the first open question of a step, or at its first question if all are settled.

        Parameters
        ----------
        name : str
            Name of the step.
        """
        flow = self
        if name == HELPS_MOST.name and ENOUGH.path in value_at(self.document, PASSED, ()):
            flow = replace(self, document=with_value(self.document, REFINES, True))
        asked = [question for step, question in flow.placed if step.name == name]
        return flow.going_to(next(filter(flow._is_open, asked), asked[0]).path)

    def with_document(self, document: Document) -> Self:
        """Flow with a document that was changed by something other than an answer."""
        return replace(self, document=document)

    def with_profile(self, profile: Profile | None) -> Self:
        """Flow with the chosen profile."""
        return replace(self, profile=profile)


def step_reached(document: Document) -> str:
    """Name of the step at which a draft was left; empty if the draft does not say."""
    is_short = value_at(document, WAY) == "short"
    steps = _SHORT_STEPS_BY_PATH if is_short else _STEPS_BY_PATH
    step = steps.get(str(value_at(document, PLACE)))
    return step.name if step else ""


def step_of(question: Question) -> Step:
    """Step of a question on the long way."""
    return _STEPS_BY_PATH[question.path]
