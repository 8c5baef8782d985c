"""The direct check by keys: rows are kept as they are typed, and judged with the session."""

import pytest

from core.documents.document import value_at
from tests.wizard.tui.driving import type_text
from tests.wizard.tui.fixing import draft, go_to_fix, press
from tests.wizard.tui.looking import screen_text, settle, workshop_app
from wizard.tui.screens.direct import DirectScreen
from wizard.tui.screens.verdict import VerdictStep
from wizard.tui.widgets.remark import Remark

SIZES = [(80, 24), (120, 40)]

ROWS = (
    "left; 30 1/2; 12 1/16; 12 1/8; down",
    "left; 29 1/2; 12 1/16; 12 1/8; down",
    "left; 28 1/2; 12 1/8; 12 1/4; down",
    "left; 31 1/2; 12 1/16; 12 1/8; up",
    "left; 32 1/2; 12 1/16; 12 3/16; up",
    "left; 30 1/2; 12 1/16; 12 1/8; up",
)
"""Rows of an invented truck that does what its pivots say."""


def remark(pilot):
    return str(pilot.app.screen.query_one(Remark).render())


async def open_direct(pilot, app):
    await go_to_fix(pilot, "fixed")
    await press(pilot, "escape")
    assert isinstance(app.screen, VerdictStep)
    await press(pilot, "d")
    assert isinstance(app.screen, DirectScreen)


async def type_line(pilot, text):
    await type_text(pilot, text)
    await pilot.press("enter")
    await pilot.pause()


@pytest.mark.parametrize("size", SIZES)
async def test_rows_are_kept_at_once_and_change_the_verdict(tmp_path, size):
    app = workshop_app(tmp_path)
    async with app.run_test(size=size) as pilot:
        await open_direct(pilot, app)
        await type_line(pilot, "board; 36; left")
        for number, row in enumerate(ROWS, start=1):
            await type_line(pilot, row)
            assert len(value_at(draft(app.files), "draft.direct.rows")) == number
        assert "direct check" in screen_text(pilot)
        await pilot.press("escape")
        await settle(pilot)
        assert app.screen.verdict.direct.agrees
        assert value_at(draft(app.files), "direct.rows") == value_at(
            draft(app.files), "draft.direct.rows"
        )


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("ruler; 36", "should be one of board, laser, turn-plate"),
        ("board", "is missing"),
        ("board; 0; left", "more than 0"),
        ("board; 36", "side of the chalk line"),
        ("board; 36; left; 2", "more parts"),
        ("[b]x[/b]", "should be one of"),
    ],
)
async def test_a_faulty_method_is_refused(tmp_path, text, why):
    app = workshop_app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await open_direct(pilot, app)
        await type_line(pilot, text)
        assert why in remark(pilot).replace("\n", " ")


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("middle; 30; 12; 12", "should be left or right"),
        ("left; 30; 12", "height and front and rear"),
        ("left; x; 12; 12", "height"),
        ("left; 30; 12; 12; sideways", "should be up, down"),
        ("left; 90; 12; 12", "apart"),
    ],
)
async def test_a_faulty_row_is_refused_and_stays_in_the_field(tmp_path, text, why):
    app = workshop_app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await open_direct(pilot, app)
        await type_line(pilot, "board; 36 in; left")
        await type_line(pilot, ROWS[0])
        await type_line(pilot, text)
        assert why in remark(pilot).replace("\n", " ")
        assert len(value_at(draft(app.files), "draft.direct.rows")) == 1


async def test_f8_takes_the_last_line_out(tmp_path):
    app = workshop_app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await open_direct(pilot, app)
        for line in ("board; 36 in; left", *ROWS[:2]):
            await type_line(pilot, line)
        assert value_at(draft(app.files), "direct") is not None
        await pilot.press("f8")
        await pilot.pause()
        assert value_at(draft(app.files), "direct") is None  # one height alone says nothing
        await pilot.press("f8", "f8")
        await pilot.pause()
        assert value_at(draft(app.files), "draft.direct") is None
