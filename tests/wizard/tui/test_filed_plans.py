"""Plans of a filed record: they can be read, and nothing is changed."""

import pytest

from core.documents.record_list import list_drafts, list_records
from tests.wizard.tui.fixing import plans_screen, press
from tests.wizard.tui.looking import LARGE, SMALL, flowing, open_session, screen_text, workshop_app
from wizard.tui.screens.bench import BenchScreen
from wizard.tui.screens.filed_plans import FiledPlansScreen
from wizard.tui.screens.record import RecordScreen
from wizard.tui.widgets.keys import Keys

WORDS_OF_A_DRAFT = ("choose it", "no plan", "steps", "leave")


def named(pilot):
    """Named keys by their words."""
    return {key.words: key.key for key in pilot.app.screen.query_one(Keys).keys}


async def test_plans_are_searched_and_the_record_stays_as_it_is(tmp_path):
    async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
        files = pilot.app.files
        before = {entry.path: entry.path.read_bytes() for entry in list_records(files)}
        await open_session(pilot, "re-mounted")
        assert named(pilot)["plans"] == "P"
        await press(pilot, "p")
        assert isinstance(pilot.app.screen, FiledPlansScreen)
        assert "five plans cure it" in flowing(screen_text(pilot))
        assert not set(WORDS_OF_A_DRAFT) & named(pilot).keys()
        await press(pilot, "enter", "f3", "f4", "f9")
        assert isinstance(pilot.app.screen, FiledPlansScreen)
        await press(pilot, "b")
        assert isinstance(pilot.app.screen, BenchScreen)
        await press(pilot, "escape", "escape")
        assert isinstance(pilot.app.screen, RecordScreen)
        assert {entry.path: entry.path.read_bytes() for entry in list_records(files)} == before
        assert list_drafts(files) == []


async def test_a_correction_switched_off_is_left_out_without_a_draft(tmp_path):
    async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
        await open_session(pilot, "re-mounted")
        await press(pilot, "p")
        every = plans_screen(pilot).planning.search_result.plans
        await press(pilot, "s", "space", "enter")
        assert isinstance(pilot.app.screen, FiledPlansScreen)
        assert plans_screen(pilot).planning.search_result.plans != every
        assert list_drafts(pilot.app.files) == []


@pytest.mark.parametrize("name", ["fixed", "close", "worn joint"])
async def test_plans_are_not_offered_without_bump_steer(tmp_path, name):
    async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
        await open_session(pilot, name)
        assert "plans" not in named(pilot)
        await press(pilot, "p")
        assert isinstance(pilot.app.screen, RecordScreen)


async def test_a_missing_profile_is_reported(tmp_path):
    async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
        await open_session(pilot, "re-mounted")
        pilot.app.screen.document = pilot.app.screen.document | {
            "session": pilot.app.screen.document["session"] | {"profile": "elsewhere"}
        }
        await press(pilot, "p")
        assert isinstance(pilot.app.screen, RecordScreen)
        (warning,) = pilot.app._notifications
        assert "elsewhere" in warning.message
