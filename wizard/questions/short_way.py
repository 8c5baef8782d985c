"""The short way: the same questions in the order in which they decide.

What decides most vehicles comes first. The step `HELPS_MOST` has all the rest; its order follows
from the readings so far. The record is the same as that of the long way.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import TYPE_CHECKING

from core.documents.document import Document, value_at
from core.kinematics.pivots import DRAG_LINK_ENDS
from wizard.questions import file, fix, pivots, stance, verdict, walk_round
from wizard.questions.pivots import runs_fore_aft
from wizard.questions.question import Choice, Question, Step
from wizard.questions.steps import QUESTIONS, STEPS

if TYPE_CHECKING:
    from core.profiles.profile import Profile

CHANGES_TOOLS = "draft.changes_tools"
"""Path of the draft that says that the instruments differ from the usual ones."""

INSTRUMENTS = tuple(path for path in QUESTIONS if path.startswith("instruments."))

TOOLS = Question(
    "tools",
    "read",
    "Instruments",
    "Are these your instruments?",
    "Have at hand: tape, plumb line, chalk line, angle finder, straight edge, torque wrench, wheel "
    "chocks, lamp, and a helper for the steering wheel.\n"
    "Prepare: a level floor, tyres at their pressures, road wheels straight. Snap one chalk line "
    "lengthwise on the floor, left of everything you will measure. Every offset is taken from it.",
    "How fine they read decides how sure every number is.",
    choices=(
        Choice("keep", "yes, keep them"),
        Choice("change", "no, change them", "key E"),
    ),
)

ENOUGH = Question(
    "enough",
    "read",
    "Enough",
    "Is that enough?",
    "",
    choices=(
        Choice("verdict", "show the verdict"),
        Choice("refine", "take more readings"),
    ),
)
"""Asked where no further reading is needed; its words follow from the verdict as it stands."""


def tick_values(question: Question) -> tuple[str | bool, ...]:
    """Answers that the key of a line on a sheet gives in turn, the sound one first.

    A line that is typed has none.
    """
    values = tuple(choice.value for choice in question.choices)
    return values[::-1] if question.path in BENT else values


def changes_tools(document: Document, _profile: Profile | None) -> bool:
    """True if the instruments differ from the usual ones."""
    return bool(value_at(document, CHANGES_TOOLS, False))


def _fore_aft(document: Document, _profile: Profile | None) -> bool:
    return runs_fore_aft(document)


def _not_fore_aft(document: Document, _profile: Profile | None) -> bool:
    return not runs_fore_aft(document)


def _of(paths: Iterable[str]) -> tuple[Question, ...]:
    return tuple(QUESTIONS[path] for path in paths)


def _optional(path: str) -> Question:
    return replace(QUESTIONS[path], optional=True)


def _with_picture_of(step: Step, question: Question) -> Question:
    """A question that keeps the picture of its step of the long way."""
    if question.path in STATIONS_THAT_PLACE:
        question = replace(question, is_asked=_not_fore_aft)
    return replace(question, picture=question.picture or step.picture)


PIVOT_ORDER = ("track_bar.frame", "drag_link.frame", "track_bar.axle", "drag_link.axle")
"""The pivots in the order in which a technician walks past them: frame ends, then axle ends."""

STATIONS_THAT_PLACE = tuple(f"readings.{pivot}.station" for pivot in DRAG_LINK_ENDS)
"""Stations without which a drag link that runs lengthwise has no place."""

BENT = ("readings.track_bar.bent", "readings.drag_link.bent")

_JOINTS = tuple(path for path in QUESTIONS if path.startswith("walk_round.joints."))

VEHICLE = Step(
    "Vehicle",
    "Which vehicle it is, who measures it, and with what.",
    (
        *_of(("vehicle.tag", "session.profile", "session.technician", "session.altered")),
        _optional("complaint.reported"),
        TOOLS,
        *(
            replace(QUESTIONS[path], is_asked=changes_tools)
            for path in ("session.units", *INSTRUMENTS)
        ),
    ),
)

LAYOUT = Step(
    "Layout",
    "How the drag link reaches the axle, and what guides the axle.",
    _of(f"layout.{key}" for key in ("steering", "arm", "pitman", "track_bar", "guide")),
)

WALK_ROUND = Step(
    walk_round.STEP.name,
    walk_round.STEP.aim,
    (
        *_of((walk_round.CAUTIONS, *_JOINTS)),
        *_of(("walk_round.bolts_torqued", "walk_round.tyres_alike")),
        *map(_optional, BENT),
        *_of(
            f"walk_round.{key}"
            for key in ("steering_wheel_diameter", "rim_play", "rim_size", "linkage_play")
        ),
    ),
    is_sheet=True,
)

STANCE = replace(stance.STEP, is_sheet=True)

PIVOTS = Step(
    pivots.STEP.name,
    "Where the ends of the two links are: they decide most vehicles.",
    (
        *_of(
            f"readings.{pivot}.{kind}"
            for pivot in (*PIVOT_ORDER, "tie_rod.near")
            for kind in ("height", "offset")
        ),
        *(replace(QUESTIONS[path], is_asked=_fore_aft) for path in STATIONS_THAT_PLACE),
        *_of(("readings.wheels.left_offset", "readings.wheels.right_offset")),
        *_of(("layout.steering_box",)),
    ),
    picture="front",
    shows_closing=True,
)

FIX = replace(fix.STEP, questions=(*_of(("layout.ball",)), *fix.STEP.questions))

_ASKED_BEFORE = {
    question.path
    for step in (VEHICLE, LAYOUT, WALK_ROUND, STANCE, PIVOTS, verdict.STEP, FIX, file.STEP)
    for question in step.questions
    if question.path not in STATIONS_THAT_PLACE
}

HELPS_MOST = Step(
    "Helps most",
    "What takes most doubt out of the verdict, or shows a mistake.",
    (
        *(
            _with_picture_of(step, question)
            for step in STEPS
            for question in step.questions
            if question.path not in _ASKED_BEFORE
        ),
        ENOUGH,
    ),
    shows_closing=True,
)
"""All readings that can wait; `wizard.flow.short_way` orders them."""

SHORT_STEPS: tuple[Step, ...] = (
    VEHICLE,
    LAYOUT,
    WALK_ROUND,
    STANCE,
    PIVOTS,
    HELPS_MOST,
    verdict.STEP,
    FIX,
    file.STEP,
)
