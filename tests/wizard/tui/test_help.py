"""Help while measuring: where every kind of tape goes, on this vehicle's layout."""

import pytest

from tests.wizard.tui.driving import app_in, draft_at
from wizard.tui.pictures.above_view import AboveView
from wizard.tui.pictures.front_view import FrontView
from wizard.tui.screens.help import HelpScreen


@pytest.mark.parametrize("size", [(80, 24), (120, 40)], ids=str)
async def test_help_on_a_reading_shows_where_every_tape_goes(tmp_path, size):
    draft_at(tmp_path, "readings.track_bar.frame.height")
    async with app_in(tmp_path).run_test(size=size) as pilot:
        await pilot.press("enter", "f1")
        await pilot.pause()
        screen = pilot.app.screen
        assert isinstance(screen, HelpScreen)
        words = {word.text for word in screen.query_one(FrontView).words}
        assert {"height", "offset", "brace", "datum line"} <= words
        assert "track bar length" in words
        words = {word.text for word in screen.query_one(AboveView).words}
        assert {"station", "kingpin to ball", "shaft to ball"} <= words


async def test_help_on_a_question_without_a_tape_has_no_picture(tmp_path):
    draft_at(tmp_path, "layout.guide")
    async with app_in(tmp_path).run_test(size=(80, 24)) as pilot:
        await pilot.press("enter", "f1")
        await pilot.pause()
        assert not pilot.app.screen.query(FrontView)
