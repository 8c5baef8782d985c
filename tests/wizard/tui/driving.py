"""Helpers that drive the wizard by its keys, as a technician does."""

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager, suppress
from pathlib import Path

from textual.events import Paste
from textual.pilot import Pilot
from textual.worker import WorkerCancelled

from core.documents.record import save_draft
from wizard.commands import application
from wizard.flow import drafts
from wizard.flow.answering import answer_question
from wizard.flow.flow import Flow
from wizard.locations import PROFILES
from wizard.questions.question import Question
from wizard.tui.app import EvenarcApp
from wizard.tui.screens.measure import MeasureScreen
from wizard.tui.widgets.field import Field

TRUE_TRUCK = {
    "vehicle.tag": "FG-3",
    "vehicle.description": "invented utility truck",
    "session.technician": "T. Invented",
    "vehicle.odometer": "48210 km",
    "walk_round.steering_wheel_diameter": "16",
    "walk_round.rim_play": "1 1/4",
    "walk_round.linkage_play": "1/16",
    "stance.ride_height.left": "21 3/8",
    "stance.ride_height.right": "21 1/4",
    "readings.track_bar.frame.height": "24 1/2",
    "readings.track_bar.frame.offset": "18 1/4",
    "readings.track_bar.axle.height": "19 9/16",
    "readings.track_bar.axle.offset": "51 1/4",
    "readings.drag_link.frame.height": "22 3/4; 22 11/16",
    "readings.drag_link.frame.offset": "20",
    "readings.drag_link.axle.height": "17 3/8",
    "readings.drag_link.axle.offset": "56",
    "readings.track_bar.length": "33 3/8",
    "readings.track_bar.slope": "8.5",
    "session.note": "an invented session",
}
"""Texts typed for an invented truck whose links are parallel; the other questions are skipped."""

CHOICES = {
    "session.profile": "1",
    "complaint.reported": "enter",
    "readings.track_bar.bent": "n",
    "readings.drag_link.bent": "n",
    "session.altered": "1",
    "cautions": "enter",
}
"""Keys that mark the chosen line of a list; in other lists the first line is chosen."""


def app_in(files: Path) -> EvenarcApp:
    """The wizard over a files folder, with the delivered profiles."""
    return application(files, [PROFILES])


def draft_at(files: Path, path: str) -> Path:
    """File of a draft of the invented truck that has reached a question."""
    flow = answered_until(Flow(drafts.new_session(drafts.now())), path)
    return save_draft(files, flow.document)


def answered_until(flow: Flow, path: str) -> Flow:
    """Answer the questions of a flow for the invented truck until one is reached, without keys."""
    while flow.question.path != path:
        question = flow.question
        if question.path in TRUE_TRUCK:
            given: object = TRUE_TRUCK[question.path]
        elif question.kind == "profile":
            given = "coil-crossover"
        elif question.choices and question.is_answered_by_a_value:
            given = [] if question.kind == "any of" else first_choice(question)
        else:
            flow = flow.skipped()
            continue
        answered = answer_question(flow, given, [PROFILES])
        assert isinstance(answered, Flow), f"{question.path}: {answered}"
        flow = answered
    return flow


def first_choice(question: Question) -> str | bool:
    """Choice for the invented truck: no bent link, else the first line."""
    return False if question.path.endswith(".bent") else question.choices[0].value


@asynccontextmanager
async def at_home(app: EvenarcApp, size: tuple[int, int] = (80, 24)) -> AsyncIterator[Pilot[None]]:
    """Run the wizard, and wait until home has listed the sessions."""
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        yield pilot


async def type_text(pilot: Pilot[None], text: str) -> None:
    """Type the first character by its key, and paste the rest: that is quicker."""
    if not text:
        return
    await pilot.press("space" if text[0] == " " else text[0])
    field = pilot.app.focused
    assert isinstance(field, Field)
    field.post_message(Paste(text[1:]))
    await pilot.pause()


async def settle(pilot: Pilot[None]) -> None:
    """Wait until the workers have ended and the screen is painted.

    A worker may be cancelled meanwhile, because its screen was left or other work took its place.
    """
    await pilot.pause()
    while not all(worker.is_finished for worker in pilot.app.workers):
        with suppress(WorkerCancelled):
            await pilot.app.workers.wait_for_complete()
    await pilot.pause()


def measuring(pilot: Pilot[None]) -> MeasureScreen:
    """The screen that measures, which may lie under the verdict."""
    screens = pilot.app.screen_stack
    return next(screen for screen in screens if isinstance(screen, MeasureScreen))


def at(pilot: Pilot[None]) -> str:
    """Path of the question at hand."""
    return measuring(pilot).flow.question.path


async def answer(pilot: Pilot[None], answers: dict[str, str]) -> None:
    """Answer the question at hand by keys: type, choose, or skip."""
    question = measuring(pilot).flow.question
    if question.kind == "show":
        await settle(pilot)
        await pilot.press("enter")
        await settle(pilot)
        if at(pilot) == question.path:  # the comparison comes between
            await pilot.press("enter")
    elif question.path in answers:
        pilot.app.screen.query_one(Field).begin(answers[question.path])  # quicker than by keys
        await pilot.press("enter")
    elif question.path in CHOICES or question.choices:
        key = CHOICES.get(question.path, "1")
        await pilot.press(*dict.fromkeys((key, "enter")))
    else:
        await pilot.press("f4")


async def answer_until(pilot: Pilot[None], path: str, answers: dict[str, str]) -> None:
    """Answer one question after the other by keys until one is reached."""
    for _ in range(100):
        if at(pilot) == path:
            return
        asked = at(pilot)
        await answer(pilot, answers)
        assert at(pilot) != asked, f"{asked} was not accepted"
    raise AssertionError(f"{path} was never asked")
