"""The short way through a session: what decides first, then what would help most.

From the pivots on the order follows from the verdict as it stands. Where no further reading is
needed, `ENOUGH` is asked, which leads to the verdict. Everything after it only refines.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import Literal

from core.documents.document import Document, value_at
from core.profiles.profile import Profile
from core.verdict.standing import Standing, Worth, standing_of
from core.verdict.usual_linkage import completed
from core.verdict.verdict import Overall
from wizard.phrases.next_reading import READ_AS
from wizard.phrases.standing import enough_ask, enough_guidance
from wizard.questions.question import Question, Step
from wizard.questions.short_way import ENOUGH, FIX, HELPS_MOST, SHORT_STEPS

Way = Literal["short", "long"]

WAY = "draft.way"
"""Path of the way that a session goes. A draft without it goes the long way."""

TAKEN = "draft.taken"
"""Path of the list of questions of `HELPS_MOST` in the order in which they were settled."""

REFINES = "draft.refines"
"""Path of the answer that more readings are taken than are needed."""


def path_of(worth: Worth) -> str:
    """Path of the question that asks for a reading."""
    return f"readings.{READ_AS.get(worth.reading, worth.reading)}"


def reading_at_question(question: Question) -> str:
    """Name of the reading that a question asks for, as `Worth` has it."""
    reading = question.path.removeprefix("readings.")
    return next((name for name, asked in READ_AS.items() if asked == reading), reading)


def wanted_paths(standing: Standing | None) -> tuple[str, ...]:
    """Paths of the readings to take before it is enough, the next one first."""
    return tuple(map(path_of, standing.left)) if standing else ()


def standing_in(answers: Document, profile: Profile | None) -> Standing | None:
    """The verdict as it stands on the answers that apply; None before it can be judged."""
    return None if profile is None else standing_of(answers, lambda _: profile)


def usual_standing_in(answers: Document, profile: Profile | None) -> Standing | None:
    """The standing of a session that has the usual linkage where readings are missing."""
    if profile is None:
        return None
    return standing_of(completed(answers, profile), lambda _: profile, draws=0)


def asked_in_short_way(
    document: Document, profile: Profile | None, standing: Standing | None
) -> Iterator[tuple[Step, Question]]:
    """Questions of the short way that apply, in order, each with its step."""
    for step in SHORT_STEPS:
        asked = [question for question in step.questions if question.is_asked(document, profile)]
        if step is HELPS_MOST:
            asked = _by_worth(asked, document, standing)
        if step is FIX and standing is not None and standing.geometry != Overall.BUMP_STEER:
            asked = [question for question in asked if question.path == "fix"]
        for question in asked:
            yield step, question.as_asked(document)


def _by_worth(
    asked: list[Question], document: Document, standing: Standing | None
) -> list[Question]:
    """Questions in the order of their worth: settled, wanted, `ENOUGH`, then the rest."""
    by_path = {question.path: question for question in asked}
    wanted = wanted_paths(standing)
    worths = standing.worths if standing else ()
    paths = dict.fromkeys(
        (
            *value_at(document, TAKEN, ()),
            *wanted,
            ENOUGH.path,
            *map(path_of, worths),
            *by_path,
        )
    )
    enough = replace(ENOUGH, ask=enough_ask(standing), guidance=enough_guidance(standing))
    return [enough if path == ENOUGH.path else by_path[path] for path in paths if path in by_path]
