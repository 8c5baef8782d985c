"""Lifts planned from home, on vehicles of the invented workshop and on typical ones."""

from contextlib import asynccontextmanager

import pytest

from tests.wizard.tui.driving import settle, type_text
from tests.wizard.tui.looking import LARGE, SMALL, screen_text, workshop_app
from wizard.tui.pictures.curve import Curve
from wizard.tui.screens.home import HomeScreen
from wizard.tui.screens.lift import LiftScreen
from wizard.tui.screens.pick import PickScreen
from wizard.tui.screens.prompt import PromptScreen
from wizard.tui.widgets.remark import Remark


@asynccontextmanager
async def lift_of(folder, *keys, find="fg-2", size=SMALL):
    """The screen of lifts on the vehicles that keys tick; the marked one is ticked already."""
    app = workshop_app(folder)
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        await type_text(pilot, find)
        await pilot.press("f2", *keys, "enter")
        await settle(pilot)
        assert isinstance(app.screen, LiftScreen)
        yield pilot


async def lift_by(pilot, text):
    await pilot.press("l")
    await type_text(pilot, text)
    await pilot.press("enter")
    await settle(pilot)


def words_on(pilot):
    return " ".join(screen_text(pilot.app).split())


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=str)
async def test_a_lift_on_a_measured_vehicle(tmp_path, size):
    async with lift_of(tmp_path, find="fg-4", size=size) as pilot:
        assert "A lift on FG-4" in words_on(pilot)
        now = pilot.app.screen.query_one(Curve).picture
        assert now.compared is None
        await lift_by(pilot, "3")
        assert "lifted 3 in" in words_on(pilot)
        first = pilot.app.screen.query_one(Curve).picture
        assert first.trace.name == "plan 1"
        assert first.compared.value == now.trace.value
        await pilot.press("right")
        assert pilot.app.screen.query_one(Curve).picture.trace.name == "plan 2"


async def test_several_vehicles_have_a_row_each_with_a_conversion(tmp_path):
    async with lift_of(tmp_path, "down", "space", size=LARGE) as pilot:
        (lifted, typical) = pilot.app.screen.lifts
        assert "common practice" in words_on(pilot)
        assert lifted.plan.verdict.session.id != typical.plan.verdict.session.id
        await pilot.press("w")
        assert isinstance(pilot.app.screen, PickScreen)
        await pilot.press("2", "enter")
        await settle(pilot)
        assert pilot.app.screen.request.change == "high steering arms with their track bar bracket"
        assert pilot.app.screen.query_one(Curve).picture.trace.name == "with the change"


@pytest.mark.parametrize(
    ("text", "words"),
    [("9 in", "between -2 in and 8 in"), ("high", "not a length"), ("[bold]", "[bold]")],
)
async def test_what_is_no_lift_is_refused_in_one_line(tmp_path, text, words):
    async with lift_of(tmp_path) as pilot:
        await pilot.press("l")
        await type_text(pilot, text)
        await pilot.press("enter")
        assert isinstance(pilot.app.screen, PromptScreen)
        assert words in str(pilot.app.screen.query_one(Remark).content)


async def test_a_vehicle_that_is_held_back_says_so(tmp_path):
    async with lift_of(tmp_path, find="fg-6") as pilot:
        assert "is held back, so that no lift is planned on it" in words_on(pilot)
        await pilot.press("left", "f2", "escape")
        await settle(pilot)
        assert isinstance(pilot.app.screen, HomeScreen)


async def test_a_screen_that_is_left_while_it_works_says_nothing(tmp_path):
    async with lift_of(tmp_path) as pilot:
        await pilot.press("l", "4", "enter", "escape")
        await settle(pilot)
        assert isinstance(pilot.app.screen, HomeScreen)
