"""The comparison of two sessions: its words, the ways to it, the step after it."""

import pytest

from core.documents.document import value_at
from tests.wizard.tui.driving import answer, answered_until, at, measuring
from tests.wizard.tui.looking import (
    LARGE,
    SMALL,
    TALL,
    flowing,
    open_session,
    path_of,
    screen_text,
    settle,
    workshop_app,
)
from wizard.tui.screens.compare import CompareScreen
from wizard.tui.screens.home import HomeScreen
from wizard.tui.screens.pick import PickScreen
from wizard.tui.screens.record import RecordScreen
from wizard.tui.screens.verdict import VerdictStep


async def compare(pilot, one, other):
    """Compare two demo sessions."""
    pilot.app.compare_both(path_of(pilot.app, one), path_of(pilot.app, other))
    await settle(pilot)


def comparing(one, other, *keys):
    """Return a function that compares two sessions before a picture is taken."""

    async def run(pilot):
        await compare(pilot, one, other)
        await pilot.press(*keys)
        await pilot.pause()

    return run


class TestPictures:
    @pytest.mark.parametrize("size", [SMALL, LARGE])
    @pytest.mark.parametrize("pair", [("lifted", "fixed"), ("as built", "lifted")])
    def test_the_outcome_comes_first(self, snap_compare, tmp_path, pair, size):
        app = workshop_app(tmp_path)
        assert snap_compare(app, terminal_size=size, run_before=comparing(*pair))

    @pytest.mark.parametrize("part", ["2", "3", "5"])
    def test_the_parts_below(self, snap_compare, tmp_path, part):
        app = workshop_app(tmp_path)
        run = comparing("lifted", "fixed", part)
        assert snap_compare(app, terminal_size=SMALL, run_before=run)


class TestWords:
    async def test_a_fix_shown_by_the_numbers(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=TALL) as pilot:
            await compare(pilot, "lifted", "fixed")
            text = flowing(screen_text(pilot))
        assert "✓ shown: the drag link's angle out of square went from" in text
        assert "before: ✗ bump steer" in text
        assert "after: ✓ steers true" in text
        assert "What nobody moved" in text
        assert "stand to each other as they did before" in text
        assert "planned 1 in down, reached" in text
        assert "as planned" in text

    async def test_a_change_for_the_worse_is_not_shown(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=TALL) as pilot:
            await compare(pilot, "as built", "lifted")
            text = flowing(screen_text(pilot))
        assert "✗ not shown: the vehicle has bump steer after the work" in text

    async def test_the_earlier_session_comes_first_in_any_order(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await compare(pilot, "fixed", "lifted")
            assert pilot.app.screen.sessions.comparison.outcome == "shown"

    async def test_lengths_follow_the_units(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=TALL) as pilot:
            await compare(pilot, "lifted", "fixed")
            await pilot.press("f2")
            await pilot.pause()
            assert "planned 25 mm down" in flowing(screen_text(pilot))


class TestOpening:
    async def test_f7_at_home_compares_with_the_session_before(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await settle(pilot)
            await pilot.press(*"fg-1")
            await settle(pilot)
            await pilot.press("f7")
            await settle(pilot)
            assert isinstance(pilot.app.screen, CompareScreen)
            await pilot.press("escape")
            assert isinstance(pilot.app.screen, HomeScreen)

    async def test_c_on_a_record_compares_with_a_chosen_session(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_session(pilot, "as built")
            await pilot.press("c")
            await pilot.pause()
            assert isinstance(pilot.app.screen, PickScreen)
            await pilot.press("2", "enter")
            await settle(pilot)
            assert isinstance(pilot.app.screen, CompareScreen)
            assert "2026-10-13" in screen_text(pilot)
            await pilot.press("enter", "escape")
            await pilot.pause()
            assert isinstance(pilot.app.screen, RecordScreen)

    async def test_o_asks_for_another_session(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await pilot.press(*"fg-1", "f7")
            await settle(pilot)
            await pilot.press("o")
            await pilot.pause()
            assert isinstance(pilot.app.screen, PickScreen)

    async def test_a_vehicle_with_one_session_is_not_compared(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_session(pilot, "close")
            await pilot.press("c")
            await settle(pilot)
            assert isinstance(pilot.app.screen, RecordScreen)
            (notice,) = pilot.app._notifications
            assert notice.message == "no other session of this vehicle is filed"

    async def test_a_record_that_cannot_be_judged_is_not_compared(self, tmp_path):
        app = workshop_app(tmp_path)
        path = path_of(app, "fixed")
        path.write_text(path.read_text("utf-8").replace("[layout]", "[other]"), "utf-8")
        async with app.run_test(size=SMALL) as pilot:
            await pilot.press(*"fg-1", "f7")
            await settle(pilot)
            assert isinstance(pilot.app.screen, HomeScreen)


class TestReMeasure:
    async def test_it_comes_between_the_verdict_and_the_next_step(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            pilot.app.measure_again(path_of(pilot.app, "re-mounted"))
            await pilot.pause()
            screen = measuring(pilot)
            screen.move_to(answered_until(screen.flow, "verdict"))
            await settle(pilot)
            assert isinstance(pilot.app.screen, VerdictStep)
            assert "C before and after" in flowing(screen_text(pilot))
            await pilot.press("enter")
            await settle(pilot)
            assert isinstance(pilot.app.screen, CompareScreen)
            await pilot.press("escape")
            await pilot.pause()
            assert isinstance(pilot.app.screen, VerdictStep)
            await pilot.press("c")
            await settle(pilot)
            await pilot.press("enter")
            await pilot.pause()
            assert at(pilot) != "verdict"
            assert value_at(measuring(pilot).flow.document, "session.kind") == "re-measure"
            await answer(pilot, {})
