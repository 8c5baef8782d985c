"""The direct check by keys: rows are kept cell by cell, and judged with the session."""

import pytest
from textual.geometry import Size

from core.documents.document import value_at
from tests.wizard.tui.driving import type_text
from tests.wizard.tui.fixing import draft, go_to_fix, press
from tests.wizard.tui.looking import screen_text, settle, workshop_app
from tests.wizard.tui.picture_app import PictureApp, text_of
from wizard.phrases.direct_steps import cell_hint
from wizard.tui.pictures.curve import Curve
from wizard.tui.pictures.direct_view import DirectView
from wizard.tui.screens.direct import DirectScreen
from wizard.tui.screens.direct_set_up import DirectSetUp
from wizard.tui.screens.prompt import PromptScreen
from wizard.tui.screens.verdict import VerdictStep
from wizard.tui.widgets.direct_table import DirectTable
from wizard.tui.widgets.field import Field
from wizard.tui.widgets.remark import Remark
from wizard.views.direct_above import direct_picture

SIZES = [(80, 24), (120, 40)]

ROWS = (
    ("30 1/2", "12 1/16", "12 1/8"),
    ("29 1/2", "12 1/16", "12 1/8"),
    ("28 1/2", "12 1/8", "12 1/4"),
    ("31 1/2", "12 1/16", "12 1/8"),
    ("32 1/2", "12 1/16", "12 3/16"),
    ("30 1/2", "12 1/16", "12 1/8"),
)
"""Rows of an invented truck that does what its pivots say."""


def remark(pilot):
    return " ".join(str(pilot.app.screen.query_one(Remark).render()).split())


def rows_on_disk(app):
    return value_at(draft(app.files), "draft.direct.rows", [])


def at(pilot):
    return tuple(pilot.app.screen.query_one(DirectTable).at)


async def open_direct(pilot, app):
    await go_to_fix(pilot, "fixed")
    await press(pilot, "escape")
    assert isinstance(app.screen, VerdictStep)
    await press(pilot, "d")
    assert isinstance(app.screen, DirectSetUp)


async def take_board(pilot, length="36"):
    await press(pilot, "enter")
    await type_text(pilot, length)
    await press(pilot, "enter")
    if not isinstance(pilot.app.screen, PromptScreen):
        await press(pilot, "enter")
        assert isinstance(pilot.app.screen, DirectScreen)


async def type_cell(pilot, text, key="enter"):
    await type_text(pilot, text)
    await press(pilot, key)


async def type_row(pilot, row):
    for text in row:
        await type_cell(pilot, text)


@pytest.mark.parametrize("size", SIZES)
async def test_a_whole_check_is_typed_reading_by_reading(tmp_path, size):
    app = workshop_app(tmp_path)
    async with app.run_test(size=size) as pilot:
        await open_direct(pilot, app)
        await take_board(pilot)
        for number, row in enumerate(ROWS, start=1):
            await type_row(pilot, row)
            assert len(rows_on_disk(app)) == number
            assert at(pilot) == (number, "height")
            points = app.screen.query_one(Curve).picture.points
            assert len(points) == (number if number > 1 else 0)
        assert "The vehicle does what its pivots say" in " ".join(screen_text(app).split())
        await press(pilot, "escape")
        await settle(pilot)
        assert isinstance(app.screen, VerdictStep)
        assert app.screen.verdict.direct.agrees
        assert value_at(draft(app.files), "direct.rows") == rows_on_disk(app)


async def test_half_a_row_is_kept_and_there_again(tmp_path):
    app = workshop_app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await open_direct(pilot, app)
        await take_board(pilot)
        await type_row(pilot, ROWS[0])
        await type_cell(pilot, ROWS[1][0])
        assert rows_on_disk(app)[1] == {"side": "left", "height": ["29 1/2 in"]}
        await press(pilot, "escape")
        assert "the last row is not whole" in remark(pilot)
        await press(pilot, "escape")
        assert isinstance(app.screen, VerdictStep)
        await press(pilot, "d")
        table = app.screen.query_one(DirectTable)
        assert table.rows[1]["height"] == ["29 1/2 in"]


async def test_side_and_way_are_carried_to_the_next_row(tmp_path):
    app = workshop_app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await open_direct(pilot, app)
        await take_board(pilot)
        await press(pilot, "left")
        assert at(pilot) == (0, "side")
        await type_cell(pilot, "r")
        await type_row(pilot, ROWS[0])
        await press(pilot, "shift+tab", "shift+tab")
        assert at(pilot) == (0, "going")
        await type_cell(pilot, "d")
        await type_row(pilot, ROWS[1])
        rows = rows_on_disk(app)
        assert [(row["side"], row["going"]) for row in rows] == [("right", "down")] * 2


@pytest.mark.parametrize(
    ("text", "why"), [("0", "more than 0"), ("x", "length"), ("", "nothing was typed")]
)
async def test_a_faulty_board_is_refused(tmp_path, text, why):
    app = workshop_app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await open_direct(pilot, app)
        await take_board(pilot, text)
        assert isinstance(app.screen, PromptScreen)
        assert why in remark(pilot)


@pytest.mark.parametrize(
    ("move", "text", "why"),
    [
        ("left", "middle", "should be left or right"),
        ("shift+tab", "[b]x[/b]", "should be left or right"),
        ("down", "tall", "not a length"),
        ("down", "90", "apart"),
    ],
)
async def test_a_faulty_cell_is_refused_and_stays_in_the_field(tmp_path, move, text, why):
    app = workshop_app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await open_direct(pilot, app)
        await take_board(pilot)
        await type_row(pilot, ROWS[0])
        await press(pilot, move)
        await type_cell(pilot, text)
        assert why in remark(pilot)
        assert app.screen.query_one(Field).value == text
        assert len(rows_on_disk(app)) == 1
        before = rows_on_disk(app)
        await press(pilot, "tab")
        assert app.screen.query_one(Field).value != text
        assert rows_on_disk(app) == before


async def test_esc_leaves_a_refused_text_out(tmp_path):
    app = workshop_app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await open_direct(pilot, app)
        await take_board(pilot)
        for key in ("enter", "enter"):
            await type_cell(pilot, "tall", key)
            assert "refused" in remark(pilot)
            await press(pilot, "ctrl+u")
        await type_cell(pilot, "taller", "escape")
        assert isinstance(app.screen, DirectScreen)
        await press(pilot, "escape")
        assert isinstance(app.screen, VerdictStep)


@pytest.mark.parametrize(("unit", "hint"), [("in", "like 30 1/2"), ("mm", "like 775")])
def test_the_hint_of_a_cell_has_the_unit_of_the_session(unit, hint):
    assert cell_hint("height", unit).startswith(hint)
    assert cell_hint("angle", unit).startswith("degrees")


async def test_rows_at_one_height_or_without_a_return_are_said_when_leaving(tmp_path):
    app = workshop_app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await open_direct(pilot, app)
        await take_board(pilot)
        await type_row(pilot, ROWS[0])
        await press(pilot, "escape")
        assert "one height says nothing yet" in remark(pilot)
        await type_row(pilot, ROWS[1])
        assert "off the first" not in remark(pilot)
        await press(pilot, "escape")
        assert "The last row is 1 in off the first" in remark(pilot)
        assert isinstance(app.screen, DirectScreen)
        await press(pilot, "escape")
        assert isinstance(app.screen, VerdictStep)
        assert len(rows_on_disk(app)) == 2


async def test_f8_takes_the_last_row_out_then_the_method(tmp_path):
    app = workshop_app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await open_direct(pilot, app)
        await take_board(pilot)
        for row in ROWS[:2]:
            await type_row(pilot, row)
        assert value_at(draft(app.files), "direct") is not None
        await press(pilot, "f8")
        assert value_at(draft(app.files), "direct") is None  # one height alone says nothing
        await press(pilot, "f8", "f8")
        assert value_at(draft(app.files), "draft.direct") is None
        assert isinstance(app.screen, DirectSetUp)
        await press(pilot, "escape")
        assert isinstance(app.screen, VerdictStep)


async def test_a_turn_plate_needs_no_length(tmp_path):
    app = workshop_app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await open_direct(pilot, app)
        await press(pilot, "3", "enter")
        assert isinstance(app.screen, DirectScreen)
        await type_row(pilot, ("30 1/2", "0.3"))
        assert rows_on_disk(app) == [{"side": "left", "height": ["30 1/2 in"], "angle": ["0.3"]}]


@pytest.mark.parametrize("size", [Size(36, 16), Size(60, 30)], ids=str)
@pytest.mark.parametrize(
    ("method", "line", "words"),
    [
        ("board", "left", ("board", "front", "rear", "chalk line")),
        ("board", "right", ("board", "front", "rear")),
        ("laser", "left", ("laser", "mark")),
        ("turn-plate", "left", ("turn plate",)),
    ],
)
async def test_the_set_up_is_drawn(method, line, words, size):
    view = DirectView(direct_picture(method, line))
    async with PictureApp(view).run_test(size=(size.width, size.height)) as pilot:
        await pilot.pause()
        for word in words:
            assert word in text_of(view)
