"""The fix by its keys: plans are compared, chosen, changed and searched again."""

import asyncio
import re
import threading
from math import inf

import pytest
from textual.widgets import Static

from core.documents.document import value_at, with_value, without
from core.documents.record import read_document
from core.documents.record_list import list_records
from core.text.quantity import INCH
from tests.wizard.tui.driving import at, measuring, type_text
from tests.wizard.tui.fixing import (
    draft,
    flow_at_fix,
    go_to_fix,
    plan_in_draft,
    plans_screen,
    press,
    unfiled,
)
from tests.wizard.tui.looking import (
    LARGE,
    PATIENCE,
    SMALL,
    TALL,
    flowing,
    open_session,
    path_of,
    screen_text,
    settle,
    workshop_app,
)
from wizard.flow.planning import BENCH, CHANGED, KEPT
from wizard.phrases.search_result import progress_words
from wizard.tui.screens import plans
from wizard.tui.screens.bench import BenchScreen
from wizard.tui.screens.help import HelpScreen
from wizard.tui.screens.measure import MeasureScreen
from wizard.tui.screens.pick import PickScreen
from wizard.tui.screens.plans import PlansScreen
from wizard.tui.screens.prompt import PromptScreen
from wizard.tui.screens.steps import StepsScreen
from wizard.tui.screens.verdict import VerdictStep
from wizard.tui.screens.workers import WorkStopped
from wizard.tui.widgets.keys import Keys
from wizard.tui.widgets.plans_table import PlansTable, window
from wizard.tui.widgets.remark import Remark

FIRST = "track bar bracket raised at the axle"
SECOND = "track bar bracket lowered at the frame"


def keys(pilot):
    """Named keys by their words."""
    return {key.words: key.key for key in pilot.app.screen.query_one(Keys).keys}


def remark(pilot):
    """Text under a field."""
    return str(pilot.app.screen.query_one(Remark).content)


def titles(pilot):
    """Titles of the plans."""
    return [title for title, _ in plans_screen(pilot).planning.plans]


def at_hand(pilot):
    """Moves of the plan at hand: correction and rise, in."""
    plan = plans_screen(pilot).planning.plan
    return [(move.correction.name, round(move.rise / INCH, 4)) for move in plan.moves]


def fixing(name, *pressed):
    """Return a function that opens a fix and presses keys before a picture is taken."""

    async def run(pilot):
        await go_to_fix(pilot, name)
        for key in pressed:
            await press(pilot, key)

    return run


def put_on_shelf(app, text):
    """Write the parts shelf of the shop."""
    shelf = app.files / "shop" / "parts_shelf.toml"
    shelf.parent.mkdir(parents=True, exist_ok=True)
    shelf.write_text(text, encoding="utf-8")


class TestPictures:
    @pytest.mark.parametrize("size", [SMALL, LARGE])
    @pytest.mark.parametrize("name", ["re-mounted", "toe"])
    def test_plans_side_by_side(self, snap_compare, tmp_path, name, size):
        app = workshop_app(tmp_path)
        assert snap_compare(app, terminal_size=size, run_before=fixing(name))

    @pytest.mark.parametrize("part", ["2", "3", "4", "6"])
    def test_the_parts_below(self, snap_compare, tmp_path, part):
        app = workshop_app(tmp_path)
        assert snap_compare(app, terminal_size=SMALL, run_before=fixing("re-mounted", part))

    @pytest.mark.parametrize("name", ["as built", "close", "worn joint"])
    def test_what_is_there_instead(self, snap_compare, tmp_path, name):
        app = workshop_app(tmp_path)
        assert snap_compare(app, terminal_size=SMALL, run_before=fixing(name))

    @pytest.mark.parametrize("key", ["s", "m", "a"])
    def test_what_is_asked(self, snap_compare, tmp_path, key):
        app = workshop_app(tmp_path)
        assert snap_compare(app, terminal_size=SMALL, run_before=fixing("re-mounted", key))

    def test_without_colour(self, snap_compare, tmp_path, monkeypatch):
        monkeypatch.setenv("NO_COLOR", "1")
        app = workshop_app(tmp_path)
        assert snap_compare(app, terminal_size=LARGE, run_before=fixing("re-mounted"))


class TestSideBySide:
    async def test_the_first_plan_is_at_hand(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await go_to_fix(pilot, "re-mounted")
            text = flowing(screen_text(pilot))
            assert "bump steer: five plans cure it, of 45,319 combinations" in text
            assert titles(pilot) == [f"plan {number}" for number in range(1, 6)]
            assert at_hand(pilot) == [(FIRST, 2.25)]

    async def test_the_present_state_is_beside_the_plans(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await go_to_fix(pilot, "re-mounted")
            row = next(line for line in screen_text(pilot).splitlines() if "peak steer" in line)
            assert len(re.findall(r"[✓✗≈] \d\.\d\d deg", row)) == 6
            assert row.index("✗ 1.") < row.index("✓ 0.")

    async def test_arrows_select_a_plan_and_its_work(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=TALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            assert "The work of plan 1" in screen_text(pilot)
            await press(pilot, "right")
            assert at_hand(pilot) == [(SECOND, -2.25)]
            assert "The work of plan 2" in screen_text(pilot)
            assert "track bar's frame end from 20 in to 17 3/4 in" in flowing(screen_text(pilot))
            await press(pilot, "left", "left")
            assert at_hand(pilot) == [(FIRST, 2.25)]

    async def test_the_last_plan_is_reached_in_80_columns(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            assert "plan 5" not in screen_text(pilot)
            await press(pilot, *["right"] * 9)
            assert "▸ plan 5" in screen_text(pilot)
            assert "‹ 5 of 5 ›" in screen_text(pilot)

    async def test_a_click_selects_a_plan(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await go_to_fix(pilot, "re-mounted")
            lines = screen_text(pilot).splitlines()
            row = next(i for i, line in enumerate(lines) if "plan 3" in line)
            await pilot.click(offset=(lines[row].index("plan 3"), row))
            await settle(pilot)
            assert plans_screen(pilot).planning.index == 2

    async def test_f2_changes_to_millimetres(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=TALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "f2")
            text = flowing(screen_text(pilot))
            assert "up 57.1 mm" in text
            assert "millimetres" in text

    async def test_the_view_holds_work_reasons_effects_and_cautions(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=TALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "end")
            text = flowing(screen_text(pilot))
            for part in (
                "in shorter than now: about 4 turns of its threaded end, 16 per in",
                "Why each rule ends where it does",
                "At most 1.5 deg is allowed",
                "What gets worse, and what changes besides",
                "roll centre",
                "axle walks",
                "Check for clearance",
                "A taller bracket carries the whole side load",
                "Measure again afterwards",
                "height of the track bar's axle end",
                "Steering and suspension work can kill",
            ):
                assert part in text, part

    def test_the_columns_in_view_hold_the_plan_at_hand(self):
        assert window(5, 0, 3) == range(3)
        assert window(5, 3, 3) == range(1, 4)
        assert window(5, 4, 3) == range(2, 5)
        assert window(2, 1, 5) == range(2)


class TestChoosing:
    async def test_enter_writes_the_plan_to_the_draft_and_leaves(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "right", "enter")
            assert isinstance(pilot.app.screen, MeasureScreen)
            assert at(pilot) == "session.note"
            (move,) = plan_in_draft(pilot.app.files)
            assert move == {
                "correction": SECOND,
                "pivot": "track_bar.frame",
                "rise": "-2 1/4 in",
            }

    async def test_the_plan_is_filed_with_the_record(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "enter")
            await press(pilot, "f4", "1", "enter")
            (entry,) = [entry for entry in list_records(pilot.app.files) if entry.tag == "FG-0"]
            record = read_document(entry.path)
            assert value_at(record, "plan.moves")[0]["correction"] == FIRST
            assert value_at(record, "plan.set_length.track_bar") == "32 7/8 in"
            assert value_at(record, "plan.expected.p_true") > 0.95
            assert "draft" not in record

    async def test_f4_leaves_without_a_plan(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "enter")
            assert plan_in_draft(pilot.app.files)
            measuring(pilot).action_go_to("fix")
            await settle(pilot)
            await press(pilot, "f4")
            assert at(pilot) == "session.note"
            assert plan_in_draft(pilot.app.files) == []

    async def test_the_chosen_plan_is_at_hand_again(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "right", "right", "enter")
            measuring(pilot).action_go_to("fix")
            await settle(pilot)
            assert plans_screen(pilot).planning.index == 2

    async def test_undo_takes_the_choice_out_of_the_draft(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "enter")
            await press(pilot, "f8")
            assert isinstance(pilot.app.screen, PlansScreen)
            assert plan_in_draft(pilot.app.files) == []

    async def test_a_changed_reading_changes_the_filed_plan(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "enter")
            before = value_at(draft(pilot.app.files), "plan.expected.parallel")
            path = "readings.drag_link.axle.height"
            screen = measuring(pilot)
            screen.move_to(
                screen.flow.with_document(with_value(screen.flow.document, path, ["20 in"]))
            )
            screen.action_go_to("file")
            await press(pilot, "1", "enter")
            (entry,) = [entry for entry in list_records(pilot.app.files) if entry.tag == "FG-0"]
            assert value_at(read_document(entry.path), "plan.expected.parallel") != before

    async def test_escape_leads_to_the_verdict_and_f3_to_the_steps(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "f3")
            assert isinstance(pilot.app.screen, StepsScreen)
            await press(pilot, "escape", "escape")
            assert isinstance(pilot.app.screen, VerdictStep)

    async def test_f9_leaves_a_draft_and_f1_shows_help(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "f1")
            assert isinstance(pilot.app.screen, HelpScreen)
            await press(pilot, "escape", "f9")
            assert not isinstance(pilot.app.screen, PlansScreen | MeasureScreen)
            assert draft(pilot.app.files)


class TestChanging:
    async def test_a_changed_rise_changes_the_outcome(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "m")
            assert isinstance(pilot.app.screen, PromptScreen)
            await type_text(pilot, "1")
            await settle(pilot)
            assert "chance of steering true" in remark(pilot)
            assert "≈" in remark(pilot) or "✗" in remark(pilot)
            await type_text(pilot, " 7/8")
            await press(pilot, "enter")
            assert at_hand(pilot) == [(FIRST, 1.875)]
            assert titles(pilot)[-1] == CHANGED
            await press(pilot, "enter")
            assert plan_in_draft(pilot.app.files)[0]["rise"] == "1 7/8 in"

    async def test_a_rise_outside_the_range_of_the_correction_is_refused(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "m")
            await type_text(pilot, "-2")
            await press(pilot, "enter")
            assert isinstance(pilot.app.screen, PromptScreen)
            assert "this correction goes up" in flowing(remark(pilot))

    async def test_a_plan_that_does_not_steer_true_needs_enter_twice(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "m")
            await type_text(pilot, "1/2")
            await press(pilot, "enter", "enter")
            assert isinstance(pilot.app.screen, PlansScreen)
            assert "Enter once more" in list(pilot.app._notifications)[-1].message
            await press(pilot, "left", "right", "enter")  # another plan in between
            assert isinstance(pilot.app.screen, PlansScreen)
            await press(pilot, "enter")
            assert plan_in_draft(pilot.app.files)[0]["rise"] == "1/2 in"

    async def test_which_of_two_moves_is_asked(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, *["right"] * 4)
            first, second = at_hand(pilot)
            await press(pilot, "m")
            assert isinstance(pilot.app.screen, PickScreen)
            await press(pilot, "2", "enter")
            await type_text(pilot, "3 1/2")
            await press(pilot, "enter")
            assert at_hand(pilot) == [first, (second[0], 3.5)]

    @pytest.mark.parametrize(
        ("typed", "why"),
        [
            ("up", "is not a length"),
            ("13 in", "no pivot goes further than 12 in"),
            ("0", "nothing would be moved"),
            ("[b]1[/b]", "is not a length"),
        ],
    )
    async def test_an_impossible_rise_is_refused(self, tmp_path, typed, why):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "m")
            await type_text(pilot, typed)
            await press(pilot, "enter")
            assert why in remark(pilot)
            await press(pilot, "escape")
            assert CHANGED not in titles(pilot)

    async def test_a_changed_plan_is_at_hand_again(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "m")
            await type_text(pilot, "2 1/16")
            await press(pilot, "enter", "enter")
            measuring(pilot).action_go_to("fix")
            await settle(pilot)
            assert titles(pilot)[-1] == KEPT
            assert at_hand(pilot) == [(FIRST, 2.0625)]

    async def test_the_bench_begins_with_the_plan_and_returns_a_plan(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "b", "2", "up")
            assert isinstance(pilot.app.screen, BenchScreen)
            await press(pilot, "enter")
            assert titles(pilot)[-1] == BENCH
            ((_, rise),) = at_hand(pilot)
            assert rise == 2.5
            await press(pilot, "enter")
            assert plan_in_draft(pilot.app.files)[0]["pivot"] == "track_bar.axle"


class TestShop:
    async def test_a_correction_switched_off_is_not_used(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "s", "3", "4")
            await press(pilot, "enter")
            names = {
                name
                for _, plan in plans_screen(pilot).planning.plans
                for name in corrections_of(plan)
            }
            assert names
            assert not names & {FIRST, SECOND}
            assert plans_screen(pilot).planning.search_result.searched < 45_319
            assert value_at(draft(pilot.app.files), "draft.switched_off") == [FIRST, SECOND]

    async def test_a_correction_can_be_switched_on_again(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "s", "3")
            await press(pilot, "enter")
            await press(pilot, "s", "3")
            await press(pilot, "enter")
            assert plans_screen(pilot).planning.search_result.searched == 45_319
            assert value_at(draft(pilot.app.files), "draft.switched_off") is None

    async def test_all_corrections_switched_off_is_reported(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "s", *"1234567890")
            await press(pilot, "enter")
            assert "nothing that could move a pivot is switched on" in flowing(screen_text(pilot))
            assert keys(pilot)["shop"] == "S"

    async def test_the_best_plan_is_listed_with_its_obstacle_if_none_steers_true(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "s", *"12345689")
            await press(pilot, "enter")
            text = flowing(screen_text(pilot))
            assert "none of 15 combinations cures it. The best improve it." in text
            assert "parallel (chance of being within: less than 1 in 100)" in text
            assert titles(pilot) == ["plan 1"]

    async def test_the_parts_shelf_is_searched(self, tmp_path):
        app = workshop_app(tmp_path)
        put_on_shelf(
            app,
            '[[corrections]]\nname = "our own [b]bracket[/b]"\npivot = "track_bar.axle"\n'
            'rises = ["2 1/4 in"]\ncaution = "Made here."\n',
        )
        async with app.run_test(size=TALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "right", "right")
            assert at_hand(pilot) == [("our own [b]bracket[/b]", 2.25)]
            assert "our own [b]bracket[/b]: Made here." in flowing(screen_text(pilot))

    async def test_the_cheapest_plans_come_first_where_prices_are_known(self, tmp_path):
        app = workshop_app(tmp_path)
        put_on_shelf(
            app,
            '[[corrections]]\nname = "own bracket"\npivot = "track_bar.axle"\n'
            'rises = ["2 1/4 in"]\ncaution = "Made here."\nprice = "40 USD"\n',
        )
        async with app.run_test(size=LARGE) as pilot:
            await go_to_fix(pilot, "re-mounted")
            assert "fewest parts first" in flowing(screen_text(pilot))
            assert at_hand(pilot) != [("own bracket", 2.25)]
            await press(pilot, "p")
            assert "lowest price first" in flowing(screen_text(pilot))
            assert at_hand(pilot) == [("own bracket", 2.25)]
            await press(pilot, "p")
            assert "fewest parts first" in flowing(screen_text(pilot))

    async def test_without_prices_and_hours_there_is_no_other_order(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await go_to_fix(pilot, "re-mounted")
            assert "sort" not in keys(pilot)
            before = titles(pilot)
            await press(pilot, "p")
            assert titles(pilot) == before

    async def test_a_faulty_parts_shelf_is_left_out_and_reported(self, tmp_path):
        app = workshop_app(tmp_path)
        put_on_shelf(app, '[[corrections]]\nname = "x"\npivot = "wheel"\n')
        async with app.run_test(size=LARGE) as pilot:
            await go_to_fix(pilot, "re-mounted")
            text = "".join(screen_text(pilot).split())
            assert "Thepartsshelfisleftout:" in text
            assert "parts_shelf.toml" in text
            assert titles(pilot)

    async def test_the_thread_of_an_adjuster_is_typed(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=TALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "a", "1", "enter")
            await type_text(pilot, "2 mm")
            await press(pilot, "enter")
            assert value_at(draft(pilot.app.files), "adjusters.track_bar") == {
                "kind": "sleeve",
                "pitch": "2 mm",
            }
            assert "1 1/2 turns of its sleeve with two threads" in flowing(screen_text(pilot))

    @pytest.mark.parametrize("typed", ["16", "coarse", "0 per in", "-1 mm"])
    async def test_an_impossible_thread_is_refused(self, tmp_path, typed):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted")
            await press(pilot, "a", "1", "enter")
            await type_text(pilot, typed)
            await press(pilot, "enter")
            assert "a thread pitch is written like 16 per in (turns) or 1.5 mm" in remark(pilot)


def corrections_of(plan):
    """Names of the corrections that a plan uses."""
    return [move.correction.name for move in plan.moves]


class TestNoPlans:
    @pytest.mark.parametrize(
        ("name", "answer"),
        [
            ("as built", "✓ steers true: nothing is to be done."),
            ("close", "≈ too close to call: no plan is made before it is settled. Take this"),
            ("worn joint", "■ held back: the drag link's joint at the axle is loose. No plan"),
        ],
    )
    async def test_the_reason_is_said_and_the_bench_offered(self, tmp_path, name, answer):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, name)
            assert answer in flowing(screen_text(pilot))
            assert not pilot.app.screen.query_one(PlansTable).columns
            named = keys(pilot)
            assert named["go on"] == "Enter"
            assert named["bench"] == "B"
            assert "shop" not in named

    async def test_enter_leads_to_the_next_step(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "as built")
            await press(pilot, "enter")
            assert isinstance(pilot.app.screen, MeasureScreen)
            assert at(pilot) == "file"

    async def test_a_lift_can_be_planned_for_a_vehicle_that_steers_true(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "as built")
            await press(pilot, "b", "l")
            await type_text(pilot, "2")
            await press(pilot, "enter", "enter")
            assert titles(pilot) == [BENCH]
            await press(pilot, "enter", "enter")
            assert plan_in_draft(pilot.app.files)[0]["pivot"] == "ride_height"

    async def test_a_missing_reading_is_named_and_enter_leads_to_it(self, tmp_path):
        app = workshop_app(tmp_path)
        document = unfiled(read_document(path_of(app, "re-mounted")))
        document = without(document, "readings.track_bar.frame.height")
        async with app.run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted", document)
            assert "no plan without a verdict" in flowing(screen_text(pilot))
            await press(pilot, "enter")
            assert at(pilot) == "readings.track_bar.frame.height"

    async def test_a_faulty_plan_in_a_draft_is_ignored(self, tmp_path):
        app = workshop_app(tmp_path)
        document = unfiled(read_document(path_of(app, "re-mounted")))
        document = with_value(document, "plan", {"moves": [{"pivot": "wheel"}]})
        async with app.run_test(size=SMALL) as pilot:
            await go_to_fix(pilot, "re-mounted", document)
            assert titles(pilot)[0] == "plan 1"


class TestSearching:
    def test_progress_is_said_in_words_and_in_a_bar(self):
        assert progress_words(0.0).endswith("0%")
        assert progress_words(0.5).count("█") == progress_words(0.5).count("░")

    @pytest.mark.work_is_held
    async def test_the_screen_stays_alive_and_can_be_left_meanwhile(self, tmp_path, monkeypatch):
        """A search that runs until it is stopped: its progress is shown, and leaving stops it."""
        reported, stopped = threading.Event(), threading.Event()

        def endless(_verdict, _corrections, report_progress, _by):
            report_progress(0.25)
            monkeypatch.setattr(plans, "PROGRESS_INTERVAL", inf)
            reported.set()
            try:
                while not stopped.wait(0.001):
                    report_progress(0.25)
            except WorkStopped:
                stopped.set()
                raise

        monkeypatch.setattr(plans, "search", endless)
        monkeypatch.setattr(plans, "PROGRESS_INTERVAL", -1.0)  # report at once
        app = workshop_app(tmp_path)
        async with app.run_test(size=SMALL) as pilot:
            app.push_screen(PlansScreen(flow_at_fix(app, "re-mounted")))
            assert await asyncio.to_thread(reported.wait, PATIENCE)
            await pilot.pause()
            assert "25%" in str(app.screen.query_one("#search-result", Static).content)
            await pilot.press("f1")
            assert isinstance(app.screen, HelpScreen)
            await pilot.press("escape", "f4")
            assert not isinstance(app.screen, PlansScreen)
            assert await asyncio.to_thread(stopped.wait, PATIENCE)

    @pytest.mark.work_is_held
    async def test_enter_during_the_search_leaves_after_it(self, tmp_path):
        app = workshop_app(tmp_path)
        async with app.run_test(size=SMALL) as pilot:
            results = []
            app.push_screen(PlansScreen(flow_at_fix(app, "as built")), results.append)
            await pilot.pause()
            await pilot.press("enter")
            await settle(pilot)
            await pilot.pause()
            assert results


class TestRecord:
    async def test_the_bench_opens_from_a_record(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_session(pilot, "re-mounted")
            await press(pilot, "b")
            assert isinstance(pilot.app.screen, BenchScreen)
