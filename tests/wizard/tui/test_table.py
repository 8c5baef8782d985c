"""Typing a sheet in: the table of readings has the checks, the draft and the flow of questions."""

from contextlib import asynccontextmanager

import pytest

from core.documents.document import value_at
from core.documents.record import read_document
from core.documents.record_list import list_drafts
from tests.wizard.tui.driving import app_in, at, draft_at, measuring, type_text
from tests.wizard.tui.looking import screen_text
from wizard.tui.screens.measure import MeasureScreen
from wizard.tui.screens.table import TableScreen
from wizard.tui.widgets.field import Field
from wizard.tui.widgets.readings_table import ReadingsTable
from wizard.tui.widgets.remark import Remark

SIZES = [(80, 24), (120, 40)]
HEIGHT, OFFSET, STATION = (
    f"readings.track_bar.frame.{kind}" for kind in ("height", "offset", "station")
)
NEXT_HEIGHT = "readings.track_bar.axle.height"


@asynccontextmanager
async def table_at(files, path=HEIGHT, size=SIZES[0]):
    """The table, opened with Ctrl+T from a question."""
    draft_at(files, path)
    async with app_in(files).run_test(size=size) as pilot:
        await pilot.press("enter", "ctrl+t")
        await pilot.pause()
        assert isinstance(pilot.app.screen, TableScreen)
        yield pilot


def cell_at(pilot):
    """Path of the cell at hand."""
    return pilot.app.screen.query_one(ReadingsTable).at


def cell(pilot, path):
    """A cell of the table by its path."""
    rows = pilot.app.screen.query_one(ReadingsTable).rows
    return next(cell for row in rows for cell in row.cells if cell.path == path)


def remark(pilot):
    return str(pilot.app.screen.query_one(Remark).content)


def on_disk(files, path):
    """Answer in the only draft."""
    (entry,) = list_drafts(files)
    return value_at(read_document(entry.path), path)


async def type_and(pilot, text, *keys):
    """Type a text into the cell, then press keys."""
    await type_text(pilot, text)
    await pilot.press(*keys)
    await pilot.pause()


@pytest.mark.parametrize("size", SIZES)
async def test_enter_takes_a_reading_and_goes_along_the_line_of_the_sheet(tmp_path, size):
    async with table_at(tmp_path, size=size) as pilot:
        for text, path in (("24 1/2", OFFSET), ("18 1/4", STATION), ("4", NEXT_HEIGHT)):
            await type_and(pilot, text, "enter")
            assert cell_at(pilot) == path
        assert on_disk(tmp_path, HEIGHT) == ["24 1/2 in"]
        assert on_disk(tmp_path, STATION) == ["4 in"]
        assert (cell(pilot, HEIGHT).mark, cell(pilot, HEIGHT).words) == ("✓", "24 1/2")
        assert "24 1/2" in screen_text(pilot.app)


@pytest.mark.parametrize(
    ("key", "path"), [("tab", OFFSET), ("down", NEXT_HEIGHT), ("right", OFFSET)]
)
async def test_an_empty_cell_is_left_by_arrows_and_tab(tmp_path, key, path):
    async with table_at(tmp_path) as pilot:
        await pilot.press(key)
        assert cell_at(pilot) == path
        back = {"tab": "shift+tab", "down": "up", "right": "left"}[key]
        await pilot.press(back)
        assert cell_at(pilot) == HEIGHT


@pytest.mark.parametrize(("key", "path"), [("tab", OFFSET), ("down", NEXT_HEIGHT)])
async def test_a_typed_reading_is_taken_when_its_cell_is_left(tmp_path, key, path):
    async with table_at(tmp_path) as pilot:
        await type_and(pilot, "24 1/2", key)
        assert cell_at(pilot) == path
        assert on_disk(tmp_path, HEIGHT) == ["24 1/2 in"]


async def test_arrows_to_the_side_move_in_a_text_that_is_being_typed(tmp_path):
    async with table_at(tmp_path) as pilot:
        await type_and(pilot, "4 1/2", "home", "2", "left", "right", "enter")
        assert on_disk(tmp_path, HEIGHT) == ["24 1/2 in"]


async def test_repeats_stand_in_one_cell(tmp_path):
    async with table_at(tmp_path) as pilot:
        await type_and(pilot, "24 1/2; 24 9/16", "enter")
        assert on_disk(tmp_path, HEIGHT) == ["24 1/2 in", "24 9/16 in"]


async def test_a_query_stays_in_the_cell_and_is_marked_when_it_is_left(tmp_path):
    async with table_at(tmp_path) as pilot:
        await type_and(pilot, "44", "enter")
        assert cell_at(pilot) == HEIGHT
        assert "queried" in remark(pilot)
        await pilot.press("down")
        await pilot.pause()
        assert cell_at(pilot) == NEXT_HEIGHT
        assert (cell(pilot, HEIGHT).mark, cell(pilot, HEIGHT).words) == ("?", "44")
        assert on_disk(tmp_path, HEIGHT) is None
        await pilot.press("up")
        assert pilot.app.screen.query_one(Field).value.startswith("44")


async def test_a_queried_reading_is_kept_with_a_reason(tmp_path):
    async with table_at(tmp_path) as pilot:
        await type_and(pilot, "44", "enter", "f5")
        await type_and(pilot, "a very tall truck", "enter")
        assert cell_at(pilot) == OFFSET
        assert on_disk(tmp_path, HEIGHT) == ["44 in"]
        assert on_disk(tmp_path, "kept")[0]["reason"] == "a very tall truck"
        assert cell(pilot, HEIGHT).mark == "!"


async def test_a_refused_text_stays_until_it_is_left_and_is_never_lost(tmp_path):
    async with table_at(tmp_path) as pilot:
        await type_and(pilot, "abc", "tab")
        assert cell_at(pilot) == HEIGHT
        assert "refused" in remark(pilot)
        await pilot.press("tab")
        await pilot.pause()
        assert cell(pilot, HEIGHT).mark == "✗"
        await pilot.press("ctrl+t")
        await pilot.pause()
        measuring(pilot).action_go_to(HEIGHT)
        await pilot.pause()
        assert pilot.app.screen.query_one(Field).value == "abc"


async def test_skipping_marks_a_cell_and_takes_its_reading_away(tmp_path):
    async with table_at(tmp_path) as pilot:
        await pilot.press("right", "right")
        await type_and(pilot, "4", "enter", "shift+tab", "f4")
        assert cell(pilot, STATION).mark == "–"
        assert on_disk(tmp_path, STATION) is None


async def test_undo_takes_the_last_cell_back(tmp_path):
    async with table_at(tmp_path) as pilot:
        await type_and(pilot, "24 1/2", "enter", "f8")
        assert cell_at(pilot) == HEIGHT
        assert on_disk(tmp_path, HEIGHT) is None
        assert pilot.app.screen.query_one(Field).value.startswith("24 1/2")


async def test_a_bent_bar_is_answered_in_its_cell(tmp_path):
    async with table_at(tmp_path, "readings.track_bar.bent") as pilot:
        assert cell_at(pilot) == "readings.track_bar.bent"
        await pilot.press("n", "enter")
        await pilot.pause()
        assert on_disk(tmp_path, "readings.track_bar.bent") is False
        assert cell(pilot, "readings.track_bar.bent").words == "no"


async def test_questions_and_table_are_left_for_each_other_at_the_same_reading(tmp_path):
    async with table_at(tmp_path) as pilot:
        await type_and(pilot, "24 1/2", "enter", "ctrl+t")
        await pilot.pause()
        assert isinstance(pilot.app.screen, MeasureScreen)
        assert at(pilot) == OFFSET
        await type_and(pilot, "18 1/4", "enter", "ctrl+t")
        await pilot.pause()
        assert cell(pilot, OFFSET).words == "18 1/4"
        assert cell_at(pilot) == STATION


async def test_what_was_typed_in_a_question_waits_in_its_cell(tmp_path):
    draft_at(tmp_path, HEIGHT)
    async with app_in(tmp_path).run_test(size=SIZES[0]) as pilot:
        await pilot.press("enter")
        await type_and(pilot, "24", "ctrl+t")
        await pilot.pause()
        assert pilot.app.screen.query_one(Field).value.startswith("24")


async def test_the_table_waits_for_tag_and_profile(tmp_path):
    async with app_in(tmp_path).run_test(size=SIZES[0]) as pilot:
        pilot.app.measure()
        await pilot.pause()
        await pilot.press("ctrl+t")
        assert isinstance(pilot.app.screen, MeasureScreen)
        assert "tag" in remark(pilot)


async def test_leaving_goes_home_and_keeps_the_draft(tmp_path):
    async with table_at(tmp_path) as pilot:
        await type_and(pilot, "24 1/2", "enter", "f9")
        await pilot.pause()
        assert len(pilot.app.screen_stack) == 2
        assert on_disk(tmp_path, HEIGHT) == ["24 1/2 in"]


@pytest.mark.parametrize("size", SIZES)
async def test_the_picture_and_every_cell_at_hand_are_in_view(tmp_path, size):
    async with table_at(tmp_path, size=size) as pilot:
        table = pilot.app.screen.query_one(ReadingsTable)
        for row in table.rows:
            pilot.app.screen.go_to(row.cells[0].path)
            await pilot.pause()
            assert row.name[:9] in screen_text(pilot.app), row.name
            assert pilot.app.screen.query_one(Field).region.bottom <= size[1]
        assert pilot.app.screen.query_one("#seeing").display


async def test_units_can_be_changed(tmp_path):
    async with table_at(tmp_path) as pilot:
        await type_and(pilot, "24 1/2", "enter", "f2")
        assert on_disk(tmp_path, "session.units") == "mm"
        assert cell(pilot, HEIGHT).words == "24 1/2 in"
