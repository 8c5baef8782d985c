"""Texts that are pasted into a field."""

from textual.events import Paste

from tests.wizard.tui.driving import app_in, at, draft_at
from wizard.tui.widgets.field import LONGEST, Field


async def pasted(tmp_path, *texts):
    """Value of the field and the notices after some pastes."""
    draft_at(tmp_path, "vehicle.description")
    async with app_in(tmp_path).run_test(size=(80, 24)) as pilot:
        await pilot.press("enter")
        field = pilot.app.screen.query_one(Field)
        for text in texts:
            field.post_message(Paste(text))
            await pilot.pause()
        assert at(pilot) == "vehicle.description"
        return field.value, [notice.message for notice in pilot.app._notifications]


async def test_several_lines_become_one_line(tmp_path):
    value, _ = await pasted(tmp_path, "crew [red]cab[/red]\nlong bed\r\nlift")
    assert value == "crew [red]cab[/red] long bed lift"


async def test_control_characters_are_dropped(tmp_path):
    value, _ = await pasted(tmp_path, "crew\x1b[31m cab\x07\u202e")
    assert value == "crew[31m cab"


async def test_a_text_too_long_is_cut_with_a_notice(tmp_path):
    value, notices = await pasted(tmp_path, "x" * (LONGEST - 2), "abc")
    assert value == "x" * (LONGEST - 2) + "ab"
    assert notices == [f"cut: a line takes {LONGEST} characters"]
