"""The bench by its keys: dimensions are moved, moves are undone, a plan is kept."""

import numpy as np
import pytest

from core.documents.document import value_at
from core.documents.record_list import list_drafts, list_records
from core.fix.bench import STEPS
from core.kinematics.pivots import GuideKind, Layout
from core.text.quantity import INCH
from tests.axles import random_axle
from tests.plans import verdict_on
from tests.wizard.tui.driving import measuring, type_text
from tests.wizard.tui.fixing import bench_screen, draft, go_to_fix, plan_in_draft, press
from tests.wizard.tui.looking import (
    LARGE,
    SMALL,
    open_session,
    screen_text,
    settle,
    workshop_app,
)
from wizard.phrases.bench import NOT_ON_WRONG_READINGS
from wizard.tui.pictures.curve import Curve
from wizard.tui.screens.bench import BenchScreen
from wizard.tui.screens.help import HelpScreen
from wizard.tui.screens.plans import PlansScreen
from wizard.tui.screens.prompt import PromptScreen
from wizard.tui.screens.record import RecordScreen
from wizard.tui.screens.verdict import VerdictStep
from wizard.tui.widgets.bench_list import BenchList
from wizard.tui.widgets.facts import Facts
from wizard.tui.widgets.keys import Keys
from wizard.tui.widgets.plans_table import PlansTable
from wizard.tui.widgets.remark import Remark


async def open_bench(pilot, name):
    """Open the bench of a filed demo session."""
    await open_session(pilot, name)
    await press(pilot, "b")
    return bench_screen(pilot)


def changes(pilot):
    """Changes of all dimensions in words, by name."""
    movables = pilot.app.screen.query_one(BenchList).movables
    return {movable.name: movable.change for movable in movables}


def named(pilot):
    """Words of the named keys."""
    return {key.words for key in pilot.app.screen.query_one(Keys).keys}


def figure(pilot, row):
    """Line of the figures that holds a text."""
    return next(line for line in screen_text(pilot).splitlines() if row in line)


def trying(name, *pressed):
    """Return a function that opens a bench and presses keys before a picture is taken."""

    async def run(pilot):
        await open_bench(pilot, name)
        for key in pressed:
            await press(pilot, key)

    return run


class TestPictures:
    @pytest.mark.parametrize("size", [SMALL, LARGE])
    @pytest.mark.parametrize("name", ["as built", "toe"])
    def test_as_measured(self, snap_compare, tmp_path, name, size):
        app = workshop_app(tmp_path)
        assert snap_compare(app, terminal_size=size, run_before=trying(name))

    @pytest.mark.parametrize("size", [SMALL, LARGE])
    def test_something_moved(self, snap_compare, tmp_path, size):
        app = workshop_app(tmp_path)
        run = trying("re-mounted", "2", "plus", "up", "up", "3", "down")
        assert snap_compare(app, terminal_size=size, run_before=run)

    def test_a_lift_is_asked_for(self, snap_compare, tmp_path):
        app = workshop_app(tmp_path)
        assert snap_compare(app, terminal_size=SMALL, run_before=trying("as built", "l", "4"))


class TestMoving:
    async def test_every_dimension_moves_up_and_down(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            screen = await open_bench(pilot, "lifted")
            for number, name in enumerate(screen.bench.names, 1):
                await pilot.press(str(number), "up")
                assert screen.bench.change(name) == pytest.approx(INCH / 4)
                await pilot.press("down", "down")
                assert screen.bench.change(name) == pytest.approx(-INCH / 4)

    async def test_arrows_and_tab_select_a_dimension(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            screen = await open_bench(pilot, "lifted")
            places = []
            for key in ("right", "tab", "left", "shift+tab", "left"):
                await pilot.press(key)
                places.append(screen.selected)
            assert places == [1, 2, 1, 0, len(screen.bench.names) - 1]

    async def test_plus_and_minus_change_the_step(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            screen = await open_bench(pilot, "lifted")
            await press(pilot, "plus", "plus")
            assert "one step: 1 in" in screen_text(pilot)
            await press(pilot, "up")
            assert screen.bench.change(screen.bench.names[0]) == pytest.approx(INCH)
            await press(pilot, *["minus"] * 4)
            assert "one step: 1/16 in" in screen_text(pilot)
            await press(pilot, "f2")
            assert "one step: 1 mm" in screen_text(pilot)
            await press(pilot, "up")
            assert screen.bench.change(screen.bench.names[0]) == pytest.approx(
                INCH + STEPS["mm"][0]
            )

    async def test_figures_words_and_pictures_follow_a_move(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await open_bench(pilot, "re-mounted")
            assert "as measured: ✗ bump steer" in screen_text(pilot)
            before = screen_text(pilot)
            await press(pilot, "2", "plus", "plus", "up", "up")
            assert "tried: ✓ steers true" in screen_text(pilot)
            assert "up 2 in" in figure(pilot, "track bar axle end")
            assert "✗ 3.8 deg" in figure(pilot, "parallel  ")
            assert "✓ 0.4 deg" in figure(pilot, "parallel  ")
            assert screen_text(pilot).splitlines()[20:] != before.splitlines()[20:]

    async def test_a_click_selects_a_dimension_and_moves_it(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            screen = await open_bench(pilot, "lifted")
            lines = screen_text(pilot).splitlines()
            row = next(i for i, line in enumerate(lines) if "ride height" in line)
            await pilot.click(offset=(lines[row].index("ride height"), row))
            await settle(pilot)
            assert screen.bench.names[screen.selected] == "ride_height"
            row = next(i for i, line in enumerate(lines) if "↑ up" in line)
            await pilot.click(offset=(lines[row].index("↑ up"), row))
            await settle(pilot)
            assert screen.bench.change("ride_height") == pytest.approx(INCH / 4)


class TestOtherVehicles:
    async def test_a_pivot_of_the_arms_goes_into_the_plan(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "lifted")
            await press(pilot, "b", "8", "down")
            assert "down 1/4 in" in figure(pilot, "arms' frame pivot")
            assert "one step" in screen_text(pilot)
            await press(pilot, "enter", "enter")
            assert "guide.frame" in {move["pivot"] for move in plan_in_draft(pilot.app.files)}

    @pytest.mark.parametrize("size", [SMALL, LARGE])
    async def test_leaf_springs_without_a_track_bar(self, tmp_path, size):
        async with workshop_app(tmp_path).run_test(size=size) as pilot:
            screen = await open_bench(pilot, "leaf springs")
            assert "track bar" not in screen_text(pilot)
            await press(pilot, "7", "up", "9")  # nothing has the number 9
            assert screen.bench.nudges == (("guide.seat", pytest.approx(INCH / 4)),)
            assert screen.bench.names[screen.selected] == "guide.seat"
            assert "up 1/4 in" in figure(pilot, "spring's seat")

    @pytest.mark.parametrize("size", [SMALL, LARGE])
    async def test_every_pivot_of_two_arms_is_in_view(self, tmp_path, size):
        linkage = random_axle(np.random.default_rng(2), Layout.KNUCKLE, GuideKind.TWO_ARMS)
        async with workshop_app(tmp_path).run_test(size=size) as pilot:
            screen = BenchScreen(verdict_on(linkage), "FG-0", "in")
            await pilot.app.push_screen(screen)
            await press(pilot, "left", "up")
            assert screen.bench.change("guide.upper_axle") == pytest.approx(INCH / 4)
            assert "up 1/4 in" in figure(pilot, "upper arm axle end")
            assert "one step" in screen_text(pilot)


class TestUndo:
    @pytest.mark.parametrize("key", ["f8", "backspace", "ctrl+z"])
    async def test_undo_takes_the_last_move_back(self, tmp_path, key):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_bench(pilot, "lifted")
            await press(pilot, "up", "2", "up")
            await press(pilot, key)
            assert changes(pilot)["track bar frame end"] == "up 1/4 in"
            assert changes(pilot)["track bar axle end"] == ""
            await press(pilot, key, key)
            assert "as measured" in screen_text(pilot)

    async def test_0_puts_all_dimensions_back(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_bench(pilot, "lifted")
            assert "put back" not in named(pilot)
            await press(pilot, "up", "5", "up", "6", "up")
            assert "put back" in named(pilot)
            await press(pilot, "0")
            assert set(changes(pilot).values()) == {""}
            assert "as measured" in screen_text(pilot)


class TestLifting:
    async def test_a_lift_by_four_inches_is_one_move(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            screen = await open_bench(pilot, "as built")
            await press(pilot, "l")
            assert isinstance(pilot.app.screen, PromptScreen)
            await type_text(pilot, "4")
            await settle(pilot)
            assert "chance of steering true" in str(pilot.app.screen.query_one(Remark).content)
            await press(pilot, "enter")
            assert screen.bench.nudges == (("ride_height", pytest.approx(4 * INCH)),)
            assert changes(pilot)["ride height"] == "up 4 in"
            await press(pilot, "f8")
            assert screen.bench.nudges == ()

    @pytest.mark.parametrize("typed", ["high", "20 in", ""])
    async def test_an_impossible_lift_is_refused(self, tmp_path, typed):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_bench(pilot, "as built")
            await press(pilot, "l")
            await type_text(pilot, typed)
            await press(pilot, "enter")
            assert "refused" in str(pilot.app.screen.query_one(Remark).content)
            await press(pilot, "escape")
            assert isinstance(pilot.app.screen, BenchScreen)


class TestPlanOfTheBench:
    async def test_a_filed_session_is_not_changed(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            files = pilot.app.files
            before = {entry.path: entry.path.read_bytes() for entry in list_records(files)}
            await open_bench(pilot, "lifted")
            await press(pilot, "up", "up")
            assert "keep as a plan" not in named(pilot)
            await press(pilot, "enter")
            assert isinstance(pilot.app.screen, BenchScreen)
            await press(pilot, "escape")
            assert isinstance(pilot.app.screen, RecordScreen)
            assert {entry.path: entry.path.read_bytes() for entry in list_records(files)} == before
            assert list_drafts(files) == []

    async def test_a_plan_made_at_the_verdict_becomes_the_plan_of_the_session(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "escape")
            assert isinstance(pilot.app.screen, VerdictStep)
            await press(pilot, "b")
            assert "keep as a plan" not in named(pilot)  # no move yet
            await press(pilot, "2", "up", "enter")
            assert isinstance(pilot.app.screen, VerdictStep)
            (move,) = plan_in_draft(pilot.app.files)
            assert (move["pivot"], move["rise"]) == ("track_bar.axle", "1/4 in")
            for _ in range(2):  # at once, and after the screen is drawn anew
                planned = pilot.app.screen.query_one("#planned", Facts)
                assert planned.display
                await press(pilot, "f2")
            await press(pilot, "enter")
            assert "kept plan" in screen_text(pilot)

    async def test_nothing_is_tried_on_readings_that_were_proved_wrong(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_session(pilot, "not closing")
            assert "bench" not in named(pilot)
            await press(pilot, "b")
            assert isinstance(pilot.app.screen, RecordScreen)
            (notice,) = pilot.app._notifications
            assert notice.message == NOT_ON_WRONG_READINGS

    async def test_nothing_is_planned_by_hand_on_them_either(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "not closing")
            assert "bench" not in named(pilot)
            await press(pilot, "b")
            assert isinstance(pilot.app.screen, PlansScreen)

    async def test_escape_keeps_no_plan(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "b", "up", "escape")
            assert value_at(draft(pilot.app.files), "plan") is None
            assert value_at(measuring(pilot).flow.document, "plan") is None

    async def test_an_arm_of_another_length_goes_into_the_plan(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "b", "6", "up", "enter")
            column = pilot.app.screen.query_one(PlansTable).columns[-1]
            assert "steering arm 6 1/2 in" in column.moves
            await press(pilot, "enter")
            assert value_at(draft(pilot.app.files), "plan.arms.steering.arm") == "6 1/2 in"


async def test_help_opens(tmp_path):
    async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
        await open_bench(pilot, "lifted")
        await press(pilot, "f1")
        assert isinstance(pilot.app.screen, HelpScreen)


async def test_the_curve_goes_by_ride_height_and_back(tmp_path):
    async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
        screen = await open_bench(pilot, "lifted")
        by_travel = screen.query_one(Curve).picture
        await press(pilot, "h")
        picture = screen.query_one(Curve).picture
        assert picture.ends == ("◂ lower", "lift ▸")
        assert picture.trace.heave[0] == pytest.approx(-2 * INCH)
        assert min(picture.trace.value) >= 0
        await press(pilot, "h")
        assert screen.query_one(Curve).picture == by_travel
