"""The bench by its keys: everything moved, taken back, put back, lifted, kept or not."""

import pytest

from core.documents.document import value_at
from core.documents.record_list import list_drafts, list_records
from core.fix.bench import NUDGED, STEPS
from tests.wizard.tui.driving import measuring, type_text
from tests.wizard.tui.fixing import bench_screen, draft, go_to_fix, plan_in_draft, press
from tests.wizard.tui.looking import (
    LARGE,
    SMALL,
    open_session,
    settle,
    shown,
    workshop_app,
)
from wizard.tui.screens.bench import BenchScreen
from wizard.tui.screens.help import HelpScreen
from wizard.tui.screens.prompt import PromptScreen
from wizard.tui.screens.record import RecordScreen
from wizard.tui.screens.verdict import VerdictStep
from wizard.tui.widgets.bench_list import BenchList
from wizard.tui.widgets.keys import Keys
from wizard.tui.widgets.plans_table import PlansTable
from wizard.tui.widgets.remark import Remark


async def open_bench(pilot, name):
    """The bench of a filed demo session."""
    await open_session(pilot, name)
    await press(pilot, "b")
    return bench_screen(pilot)


def changes(pilot):
    """How far everything was moved, in words."""
    return {one.name: one.change for one in pilot.app.screen.query_one(BenchList).movables}


def named(pilot):
    """What the named keys do."""
    return {key.words for key in pilot.app.screen.query_one(Keys).keys}


def figure(pilot, row):
    """A row of the figures."""
    return next(line for line in shown(pilot).splitlines() if row in line)


def trying(name, *pressed):
    """Opens a bench and presses some keys before a picture is taken."""

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
    async def test_every_pivot_the_ride_height_and_the_arms(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            screen = await open_bench(pilot, "lifted")
            for number, name in enumerate(NUDGED, 1):
                await press(pilot, str(number), "up")
                assert screen.bench.change(name) == pytest.approx(6.35)
                await press(pilot, "down", "down")
                assert screen.bench.change(name) == pytest.approx(-6.35)

    async def test_arrows_and_tab_go_through_what_can_be_moved(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            screen = await open_bench(pilot, "lifted")
            places = []
            for key in ("right", "tab", "left", "shift+tab", "left"):
                await press(pilot, key)
                places.append(screen.selected)
            assert places == [1, 2, 1, 0, len(NUDGED) - 1]

    async def test_a_step_is_made_larger_and_smaller(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            screen = await open_bench(pilot, "lifted")
            await press(pilot, "plus", "plus")
            assert "one step: 1 in" in shown(pilot)
            await press(pilot, "up")
            assert screen.bench.change(NUDGED[0]) == pytest.approx(25.4)
            await press(pilot, *["minus"] * 4)
            assert "one step: 1/16 in" in shown(pilot)
            await press(pilot, "f2")
            assert "one step: 1 mm" in shown(pilot)
            await press(pilot, "up")
            assert screen.bench.change(NUDGED[0]) == pytest.approx(25.4 + STEPS["mm"][0])

    async def test_figures_words_and_pictures_follow_at_once(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await open_bench(pilot, "re-mounted")
            assert "as measured: ✗ bump steer" in shown(pilot)
            before = shown(pilot)
            await press(pilot, "2", "plus", "plus", "up", "up")
            assert "tried: ✓ steers true" in shown(pilot)
            assert "up 2 in" in figure(pilot, "track bar axle end")
            assert "✗ 3.8 deg" in figure(pilot, "parallel  ")
            assert "✓ 0.4 deg" in figure(pilot, "parallel  ")
            assert shown(pilot).splitlines()[20:] != before.splitlines()[20:]

    async def test_a_click_takes_something_in_hand_and_moves_it(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            screen = await open_bench(pilot, "lifted")
            lines = shown(pilot).splitlines()
            row = next(i for i, line in enumerate(lines) if "ride height" in line)
            await pilot.click(offset=(lines[row].index("ride height"), row))
            await settle(pilot)
            assert NUDGED[screen.selected] == "ride_height"
            row = next(i for i, line in enumerate(lines) if "↑ up" in line)
            await pilot.click(offset=(lines[row].index("↑ up"), row))
            await settle(pilot)
            assert screen.bench.change("ride_height") == pytest.approx(6.35)


class TestTakingBack:
    @pytest.mark.parametrize("key", ["f8", "backspace", "ctrl+z"])
    async def test_undo_takes_the_last_step_back(self, tmp_path, key):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_bench(pilot, "lifted")
            await press(pilot, "up", "2", "up")
            await press(pilot, key)
            assert changes(pilot)["track bar frame end"] == "up 1/4 in"
            assert changes(pilot)["track bar axle end"] == ""
            await press(pilot, key, key)
            assert "as measured" in shown(pilot)

    async def test_one_key_puts_everything_back(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_bench(pilot, "lifted")
            assert "put back" not in named(pilot)
            await press(pilot, "up", "5", "up", "6", "up")
            assert "put back" in named(pilot)
            await press(pilot, "0")
            assert set(changes(pilot).values()) == {""}
            assert "as measured" in shown(pilot)


class TestLifting:
    async def test_lift_by_four_inches_is_one_nudge(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            screen = await open_bench(pilot, "as built")
            await press(pilot, "l")
            assert isinstance(pilot.app.screen, PromptScreen)
            await type_text(pilot, "4")
            await settle(pilot)
            assert "chance of steering true" in str(pilot.app.screen.query_one(Remark).content)
            await press(pilot, "enter")
            assert screen.bench.nudges == (("ride_height", pytest.approx(101.6)),)
            assert changes(pilot)["ride height"] == "up 4 in"
            await press(pilot, "f8")
            assert screen.bench.nudges == ()

    @pytest.mark.parametrize("typed", ["high", "20 in", ""])
    async def test_what_cannot_be_is_refused(self, tmp_path, typed):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_bench(pilot, "as built")
            await press(pilot, "l")
            await type_text(pilot, typed)
            await press(pilot, "enter")
            assert "refused" in str(pilot.app.screen.query_one(Remark).content)
            await press(pilot, "escape")
            assert isinstance(pilot.app.screen, BenchScreen)


class TestKeeping:
    async def test_nothing_of_a_filed_session_changes(self, tmp_path):
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

    async def test_from_the_verdict_of_a_session_it_becomes_its_plan(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "escape")
            assert isinstance(pilot.app.screen, VerdictStep)
            await press(pilot, "b")
            assert "keep as a plan" not in named(pilot)  # nothing is moved yet
            await press(pilot, "2", "up", "enter")
            assert isinstance(pilot.app.screen, VerdictStep)
            (move,) = plan_in_draft(pilot.app.files)
            assert (move["pivot"], move["rise"]) == ("track_bar.axle", "1/4 in")
            await press(pilot, "enter")
            assert "kept plan" in shown(pilot)

    async def test_esc_keeps_nothing(self, tmp_path):
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


async def test_help_is_there(tmp_path):
    async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
        await open_bench(pilot, "lifted")
        await press(pilot, "f1")
        assert isinstance(pilot.app.screen, HelpScreen)
