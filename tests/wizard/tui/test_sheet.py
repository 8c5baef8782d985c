"""Sheets by keys: one screen a step, each line with a key of its own."""

from contextlib import asynccontextmanager

import pytest

from core.documents.document import value_at
from core.documents.record import read_document, save_draft
from core.documents.record_list import list_drafts
from tests.wizard.flow.test_short_way import answered_until, short_flow
from tests.wizard.tui.driving import app_in, at, type_text
from tests.wizard.tui.looking import screen_text, settle
from wizard.tui.screens.verdict import VerdictStep
from wizard.tui.widgets.choice_list import ChoiceList
from wizard.tui.widgets.field import Field
from wizard.tui.widgets.guidance import Guidance
from wizard.tui.widgets.keys import Keys
from wizard.tui.widgets.remark import Remark
from wizard.tui.widgets.sheet import Sheet
from wizard.tui.widgets.strip import Strip

SIZES = [(80, 24), (120, 40)]
FIRST_JOINT = "walk_round.joints.track_bar_frame"
WHEEL = "walk_round.steering_wheel_diameter"


@asynccontextmanager
async def sheet_at(files, path, size=(80, 24)):
    """A session on the short way, resumed at a question."""
    save_draft(files, answered_until(short_flow(), path).document)
    async with app_in(files).run_test(size=size) as pilot:
        await pilot.press("enter")
        await pilot.pause()
        assert at(pilot) == path
        yield pilot


def draft(files):
    (entry,) = list_drafts(files)
    return read_document(entry.path)


def remark(pilot):
    return str(pilot.app.screen.query_one(Remark).content)


def marks(pilot):
    return {line.path: line.mark for line in pilot.app.screen.query_one(Sheet).lines}


async def test_each_letter_ticks_its_own_line_and_no_other(tmp_path):
    async with sheet_at(tmp_path, FIRST_JOINT) as pilot:
        await pilot.press("c")
        kept = value_at(draft(tmp_path), "walk_round.joints")
        assert kept == {"drag_link_frame": "tight"}
        assert at(pilot) == "walk_round.joints.drag_link_axle"
        await pilot.press("a")
        assert value_at(draft(tmp_path), "walk_round.joints.track_bar_frame") == "tight"


async def test_no_key_ticks_every_line(tmp_path):
    async with sheet_at(tmp_path, FIRST_JOINT) as pilot:
        await pilot.press("enter", "space", "tab", "ctrl+a")
        assert value_at(draft(tmp_path), "walk_round.joints") is None
        assert list(marks(pilot).values()).count("✓") == 0


async def test_a_second_press_says_that_it_is_not_so_and_needs_a_reason(tmp_path):
    async with sheet_at(tmp_path, FIRST_JOINT) as pilot:
        await pilot.press("a", "a")
        assert "queried" in remark(pilot)
        assert "A loose joint feels like bump steer" in remark(pilot)
        await pilot.press("f5")
        await type_text(pilot, "half a turn of play")
        await pilot.press("enter")
        document = draft(tmp_path)
        assert value_at(document, FIRST_JOINT) == "loose"
        assert document["kept"][0]["reason"] == "half a turn of play"
        assert marks(pilot)[FIRST_JOINT] == "!"


async def test_a_third_press_says_that_it_was_not_checked(tmp_path):
    async with sheet_at(tmp_path, FIRST_JOINT) as pilot:
        await pilot.press("a", "a", "a")
        assert value_at(draft(tmp_path), FIRST_JOINT) == "not checked"


async def test_a_bar_is_not_bent_at_the_first_press(tmp_path):
    async with sheet_at(tmp_path, FIRST_JOINT) as pilot:
        await pilot.press("g", "h", "h")
        assert value_at(draft(tmp_path), "readings.track_bar.bent") is False
        assert value_at(draft(tmp_path), "readings.drag_link.bent") is True


async def test_a_play_is_typed_in_its_place(tmp_path):
    async with sheet_at(tmp_path, WHEEL) as pilot:
        await type_text(pilot, "16")
        await pilot.press("enter")
        assert value_at(draft(tmp_path), WHEEL) == "16 in"
        assert "16 in" in screen_text(pilot)
        assert at(pilot) == "walk_round.rim_play"
        await pilot.press("enter", "enter")  # an empty field passes its line
        assert at(pilot) == "stance.level_floor"


async def test_a_needed_line_is_not_passed(tmp_path):
    async with sheet_at(tmp_path, "stance.level_floor") as pilot:
        await pilot.press("enter")
        assert "this line is needed" in remark(pilot)
        assert at(pilot) == "stance.level_floor"


async def test_lines_that_were_left_open_are_asked_before_the_next_step(tmp_path):
    async with sheet_at(tmp_path, "stance.level_floor") as pilot:
        await pilot.press("f")
        await pilot.press(*["down"] * 6, "enter", "enter")  # past the ride heights
        assert at(pilot) == "stance.level_floor"
        await pilot.press("a", "b", "c", "d", "e")
        assert at(pilot) == "stance.wheels_on_ground"  # a tick may be a slip: Enter leaves
        await pilot.press("enter")
        assert at(pilot) == "readings.track_bar.frame.height"


async def test_undo_takes_one_tick_back(tmp_path):
    async with sheet_at(tmp_path, FIRST_JOINT) as pilot:
        await pilot.press("a", "b", "f8")
        assert value_at(draft(tmp_path), "walk_round.joints") == {"track_bar_frame": "tight"}


async def test_arrows_and_the_mouse_choose_a_line(tmp_path):
    async with sheet_at(tmp_path, FIRST_JOINT) as pilot:
        await pilot.press("down", "down")
        assert at(pilot) == "walk_round.joints.drag_link_frame"
        await pilot.press("up")
        assert at(pilot) == "walk_round.joints.track_bar_axle"
        await pilot.click(Sheet, offset=(8, 0))
        assert value_at(draft(tmp_path), FIRST_JOINT) == "tight"


@pytest.mark.parametrize("size", SIZES, ids=str)
@pytest.mark.parametrize(
    "path", [FIRST_JOINT, "walk_round.rim_play", "stance.settled", "stance.ride_height.right"]
)
async def test_the_whole_sheet_is_in_view(tmp_path, size, path):
    async with sheet_at(tmp_path, path, size) as pilot:
        screen = pilot.app.screen
        sheet, keys = screen.query_one(Sheet), screen.query_one(Keys)
        assert sheet.size.height == len(sheet.lines)
        assert screen.query_one(Guidance).region.bottom <= keys.region.y
        assert screen.query_one(Guidance).size.height >= 1
        assert not screen.query_one(ChoiceList).display
        assert screen.query_one(Field).display is (
            path in ("walk_round.rim_play",) or "ride" in path
        )


@pytest.mark.parametrize("size", SIZES, ids=str)
async def test_the_strip_stands_above_the_keys_once_the_pivots_are_placed(tmp_path, size):
    async with sheet_at(tmp_path, "readings.drag_link.slope", size) as pilot:
        screen = pilot.app.screen
        strip, keys = screen.query_one(Strip), screen.query_one(Keys)
        assert strip.display
        assert strip.region.bottom <= keys.region.y
        assert screen.query_one(Guidance).region.bottom <= strip.region.y
        assert "so far ✗ bump steer, chance" in screen_text(pilot)
        assert "would be the first check of the drag link" in " ".join(remark(pilot).split())


async def test_the_other_way_is_one_key_away(tmp_path):
    async with sheet_at(tmp_path, FIRST_JOINT) as pilot:
        assert pilot.app.screen.query_one(Sheet).display
        await pilot.press("ctrl+l")
        assert at(pilot) == FIRST_JOINT
        assert not pilot.app.screen.query_one(Sheet).display
        assert pilot.app.screen.query_one(ChoiceList).display
        assert not pilot.app.screen.query_one(Strip).display


async def test_instruments_are_kept_by_enter_and_changed_by_e(tmp_path):
    async with sheet_at(tmp_path, "tools") as pilot:
        said = " ".join(remark(pilot).split())
        assert "tape 1/16 in, sighting 1/8 in, floor 1/16 in, finder 0.5 deg" in said
        assert "Have at hand" in screen_text(pilot)
        await pilot.press("e")
        assert at(pilot) == "session.units"
        await pilot.press("f8")
        assert at(pilot) == "tools"
        await pilot.press("enter")
        assert at(pilot) == "layout.steering"


async def test_enough_is_refused_before_the_pivots_are_placed(tmp_path):
    async with sheet_at(tmp_path, "readings.drag_link.axle.height") as pilot:
        await pilot.press("f7")
        assert "the verdict needs the height and the offset of every end" in remark(pilot)
        assert at(pilot) == "readings.drag_link.axle.height"


async def test_enough_shows_the_verdict(tmp_path):
    async with sheet_at(tmp_path, "readings.drag_link.slope") as pilot:
        await pilot.press("f7")
        await settle(pilot)
        assert at(pilot) == "verdict"
        assert isinstance(pilot.app.screen, VerdictStep)
