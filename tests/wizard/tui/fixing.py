"""Helpers that open the step Fix with a demo session as a draft."""

from pathlib import Path

from textual.pilot import Pilot

from core.documents.document import Document, value_at, with_value, without
from core.documents.record import read_document, save_draft
from core.documents.record_list import list_drafts
from core.profiles.profile import load_profile
from tests.wizard.tui.looking import path_of, settle
from wizard.flow.flow import Flow
from wizard.locations import PROFILES
from wizard.tui.app import EvenarcApp
from wizard.tui.screens.bench import BenchScreen
from wizard.tui.screens.plans import PlansScreen

ID = "FG-0_20261201-080000_first_t3st"


def unfiled(document: Document) -> Document:
    """Contents of a filed demo session as they were before its step Fix."""
    for path in (
        *("plan", "results", "limits", "events", "road", "assumed", "assumed_within"),
        *("signatures", "session.closed"),
    ):
        document = without(document, path)
    document = with_value(document, "vehicle.tag", "FG-0")
    document = with_value(document, "session.id", ID)
    return with_value(document, "draft", {"at": "fix", "passed": ["verdict"]})


def flow_at_fix(app: EvenarcApp, name: str) -> Flow:
    """Flow of a demo session at its fix."""
    document = unfiled(read_document(path_of(app, name)))
    return Flow(document, load_profile(value_at(document, "session.profile"), [PROFILES]))


async def go_to_fix(pilot: Pilot[None], name: str, document: Document | None = None) -> PlansScreen:
    """Resume a demo session at its fix; a document may take the place of the session."""
    app = pilot.app
    assert isinstance(app, EvenarcApp)
    if document is None:
        document = unfiled(read_document(path_of(app, name)))
    app.resume(save_draft(app.files, document))
    await settle(pilot)
    return plans_screen(pilot)


async def press(pilot: Pilot[None], *keys: str) -> None:
    """Press keys, and wait until their work is done."""
    await pilot.press(*keys)
    await settle(pilot)


def plans_screen(pilot: Pilot[None]) -> PlansScreen:
    """The screen of the plans, which may lie under another screen."""
    return next(screen for screen in pilot.app.screen_stack if isinstance(screen, PlansScreen))


def bench_screen(pilot: Pilot[None]) -> BenchScreen:
    """The screen of the bench."""
    screen = pilot.app.screen
    assert isinstance(screen, BenchScreen)
    return screen


def draft(files: Path) -> Document:
    """Contents of the draft of `unfiled` on the disk."""
    (entry,) = [entry for entry in list_drafts(files) if entry.id == ID]
    return read_document(entry.path)


def plan_in_draft(files: Path) -> list[dict[str, str]]:
    """Moves of the plan in the draft."""
    moves: list[dict[str, str]] = value_at(draft(files), "plan.moves", [])
    return moves
