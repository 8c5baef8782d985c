"""The verdict: its words, its sections, the ways on from it."""

import pytest

from core.documents.document import value_at, with_value, without
from core.documents.record import read_document, save_draft
from core.documents.record_list import list_drafts
from tests.wizard.tui.driving import app_in, at, draft_at, measuring
from tests.wizard.tui.looking import (
    DEMO,
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
from wizard.flow.flow import Flow
from wizard.locations import DEMO_SESSIONS
from wizard.phrases.verdict_words import MARKS
from wizard.questions.steps import STEPS
from wizard.tui.screens.help import HelpScreen
from wizard.tui.screens.home import HomeScreen
from wizard.tui.screens.record import RecordScreen
from wizard.tui.screens.travel import TravelScreen
from wizard.tui.screens.verdict import VerdictStep
from wizard.tui.widgets.banner import LETTERS, lettered
from wizard.tui.widgets.contents import Contents
from wizard.tui.widgets.field import Field
from wizard.tui.widgets.keys import Keys


def opened(name):
    """Return a function that opens a session before a picture is taken."""

    async def run(pilot):
        await open_session(pilot, name)

    return run


def opened_at(name, *keys):
    """Return a function that opens a session and presses keys before a picture is taken."""

    async def run(pilot):
        await open_session(pilot, name)
        await pilot.press(*keys)
        await pilot.pause()

    return run


class TestPictures:
    @pytest.mark.parametrize("size", [SMALL, LARGE])
    @pytest.mark.parametrize("name", ["lifted", "worn joint", "not closing", "close", "toe"])
    def test_what_the_eye_meets_first(self, snap_compare, tmp_path, name, size):
        app = workshop_app(tmp_path)
        assert snap_compare(app, terminal_size=size, run_before=opened(name))

    @pytest.mark.parametrize("part", ["2", "3", "4", "6", "7"])
    def test_the_parts_below(self, snap_compare, tmp_path, part):
        app = workshop_app(tmp_path)
        assert snap_compare(app, terminal_size=SMALL, run_before=opened_at("toe", part))


class TestWords:
    async def test_the_word_and_what_it_means_come_first(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_session(pilot, "lifted")
            top = flowing("\n".join(screen_text(pilot).splitlines()[:12]))
        assert "✗ bump steer: with the wheel held, 2 in of" in top
        assert "Let go, the steering wheel turns" in top

    async def test_the_reason_for_holding_back_comes_first(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_session(pilot, "worn joint")
            text = flowing(screen_text(pilot))
        assert text.index("■ held back: ") < text.index("with the wheel held")

    async def test_a_reading_that_does_not_fit_is_named_above_the_rules(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await open_session(pilot, "not closing")
            text = flowing(screen_text(pilot))
        named = text.index("! do not close One reading does not fit the others: height of the")
        assert named < text.index("parallel")

    async def test_advice_comes_before_the_rules(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await open_session(pilot, "close")
            text = flowing(screen_text(pilot))
        assert text.index("to settle it Take this reading, which nobody took") < text.index(
            "parallel"
        )

    async def test_the_view_holds_reasons_and_uncertainty(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=TALL) as pilot:
            await open_session(pilot, "toe")
            text = flowing(screen_text(pilot))
        for part in (
            "toe change",
            "Why it steers",
            "not parallel",
            "The give of bushes and the lash of joints are left out",
            "axle walks",
            "roll centre",
            "When the axle flexes",
            "Worst: ",
            "How far to trust the readings",
            "shares in the doubt of the peak steer",
            "peak's doubt",
            "never trust a jack",
        ):
            assert part in text

    async def test_toe_is_left_out_if_it_cannot_change(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=TALL) as pilot:
            await open_session(pilot, "lifted")
            assert "toe change" not in flowing(screen_text(pilot))

    async def test_the_decision_is_in_view_with_the_verdict(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_session(pilot, "worn joint")
            assert "! sent back by workshop lead (invented)" in flowing(screen_text(pilot))

    async def test_lengths_follow_the_units(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=TALL) as pilot:
            await open_session(pilot, "lifted")
            await pilot.press("f2")
            await pilot.pause()
            assert "51 mm of" in screen_text(pilot)
            assert "2 in of" not in flowing(screen_text(pilot))

    def test_every_verdict_can_be_written_large(self):
        for word in (*MARKS, "no verdict"):
            assert all(letter in LETTERS for letter in word)
            assert max(map(len, lettered(word))) <= SMALL[0] - 3


class TestInvalidRecord:
    async def test_the_missing_reading_is_named_in_place_of_a_verdict(self, tmp_path):
        app = workshop_app(tmp_path)
        path = path_of(app, "lifted")
        text = path.read_text("utf-8")
        path.write_text(text.replace("[readings.drag_link.frame]", "[readings.drag_link.other]"))
        async with app.run_test(size=SMALL) as pilot:
            await open_session(pilot, "lifted")
            text = flowing(screen_text(pilot))
            assert "cannot be worked out" in text
            assert "[readings.drag_link.frame]" in text
            await pilot.press("1", "5", "9", "t", "c", "f2", "end", "escape")
            await pilot.pause()
            assert isinstance(pilot.app.screen, HomeScreen)

    async def test_markup_in_a_record_is_text(self, tmp_path):
        app = workshop_app(tmp_path)
        path = path_of(app, "worn joint")
        text = path.read_text("utf-8")
        path.write_text(text.replace("workshop lead (invented)", "[bold]lead[/] \\u001b[31m"))
        async with app.run_test(size=SMALL) as pilot:
            await open_session(pilot, "worn joint")
            assert "by [bold]lead[/] \\x1b[31m" in flowing(screen_text(pilot))


class TestMovingAbout:
    async def test_a_number_scrolls_to_a_section(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_session(pilot, "toe")
            await pilot.press("4")
            await pilot.pause()
            assert screen_text(pilot).splitlines()[2].strip() == "Why it steers"
            assert pilot.app.screen.query_one(Contents).at == 3

    async def test_a_click_on_a_name_scrolls_to_its_section(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_session(pilot, "toe")
            column = screen_text(pilot).splitlines()[1].index("why")
            await pilot.click(Contents, offset=(column, 0))
            await pilot.pause()
            assert screen_text(pilot).splitlines()[2].strip() == "Why it steers"

    async def test_scrolling_marks_the_section_at_the_top(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_session(pilot, "toe")
            await pilot.press("pagedown", "pagedown", "pagedown")
            await pilot.pause()
            await pilot.pause()
            assert pilot.app.screen.query_one(Contents).at > 1

    async def test_every_key_has_a_name_that_can_be_clicked(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_session(pilot, "lifted")
            for key in pilot.app.screen.query_one(Keys).keys:
                action = key.action.partition("(")[0]
                assert hasattr(pilot.app.screen, f"action_{action}")

    async def test_help_and_travel_open_and_escape_leads_back(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_session(pilot, "lifted")
            await pilot.press("f1")
            assert isinstance(pilot.app.screen, HelpScreen)
            await pilot.press("escape", "t")
            assert isinstance(pilot.app.screen, TravelScreen)
            await pilot.press("escape")
            assert isinstance(pilot.app.screen, RecordScreen)
            await pilot.press("escape")
            assert isinstance(pilot.app.screen, HomeScreen)

    async def test_a_record_is_opened_at_home(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await pilot.press(*"held", "enter")
            await settle(pilot)
            assert "■ held back" in screen_text(pilot)

    async def test_f6_measures_the_vehicle_of_the_record_again(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_session(pilot, "lifted")
            await pilot.press("f6")
            await pilot.pause()
            document = measuring(pilot).flow.document
            assert value_at(document, "session.kind") == "re-measure"


def as_draft(files, name):
    """File of a demo session as a draft at its verdict."""
    document = read_document(DEMO[name].path_in(DEMO_SESSIONS))
    for table in ("results", "signatures", "plan", "limits", "events", "assumed"):
        document = without(document, table)
    asked = [question.path for step in STEPS for question in step.questions]
    skipped = [path for path in asked[: asked.index("verdict")] if value_at(document, path) is None]
    return save_draft(files, with_value(document, "draft", {"at": "verdict", "passed": skipped}))


async def resume(pilot, path):
    """Resume a draft."""
    pilot.app.resume(path)
    await settle(pilot)


class TestVerdictOfADraft:
    async def test_the_verdict_comes_after_the_last_reading_and_enter_leaves_it(self, tmp_path):
        path = draft_at(tmp_path, "vehicle.wheelbase")
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            await resume(pilot, path)
            await pilot.press("f4")
            await settle(pilot)
            assert isinstance(pilot.app.screen, VerdictStep)
            assert "too close to call: with the wheel held" in flowing(screen_text(pilot))
            await pilot.press("enter")
            await pilot.pause()
            assert at(pilot) != "verdict"

    async def test_the_missing_answers_are_named_and_enter_leads_to_the_first(self, tmp_path):
        path = draft_at(tmp_path, "layout.steering")
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            await resume(pilot, path)
            await pilot.press("f3", "9", "enter")
            await settle(pilot)
            assert isinstance(pilot.app.screen, VerdictStep)
            text = flowing(screen_text(pilot))
            assert "still to be answered: Drag link goes to (step Layout), and" in text
            await pilot.press("enter")
            await pilot.pause()
            assert at(pilot) == "layout.steering"

    async def test_skipped_readings_are_named_with_the_results_they_leave_open(self, tmp_path):
        path = draft_at(tmp_path, "verdict")
        async with app_in(tmp_path).run_test(size=TALL) as pilot:
            await resume(pilot, path)
            text = flowing(screen_text(pilot))
        assert "the profile's values count: steering arm 6 1/2 in" in text
        assert "how it steers while the axle rolls; it needs the offset of the left wheel" in text
        assert "the height of the roll centre" in text
        assert "the usual places count, with their doubt" in text

    async def test_escape_leads_to_the_last_question(self, tmp_path):
        path = draft_at(tmp_path, "verdict")
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            await resume(pilot, path)
            await pilot.press("escape")
            await pilot.pause()
            assert at(pilot) == "vehicle.wheelbase"

    async def test_leaving_keeps_the_draft(self, tmp_path):
        path = draft_at(tmp_path, "verdict")
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            await resume(pilot, path)
            await pilot.press("f9")
            await pilot.pause()
            assert isinstance(pilot.app.screen, HomeScreen)
        assert len(list_drafts(tmp_path)) == 1

    async def test_a_missing_reading_is_named_and_enter_leads_to_it(self, tmp_path):
        path = draft_at(tmp_path, "readings.drag_link.axle.height")
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            await resume(pilot, path)
            measuring(pilot).action_go_to_step("Verdict")
            await settle(pilot)
            assert "It cannot be worked out yet" in screen_text(pilot)
            await pilot.press("enter")
            await pilot.pause()
            assert at(pilot) == "readings.drag_link.axle.height"


class TestRetake:
    async def test_a_leads_to_the_advised_reading(self, tmp_path):
        path = as_draft(tmp_path, "close")
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            await resume(pilot, path)
            assert pilot.app.screen.verdict.advice.skipped == ("guide.pitch_gain",)
            await pilot.press("a")
            await pilot.pause()
            assert at(pilot) == "readings.guide.castor"
            assert pilot.app.screen.query_one(Field).value == ""

    async def test_an_advised_reading_lowers_the_uncertainty_of_the_verdict(self, tmp_path):
        path = as_draft(tmp_path, "close")
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            await resume(pilot, path)
            before = pilot.app.screen.verdict
            await pilot.press("a")
            await pilot.pause()
            pilot.app.screen.query_one(Field).value = "6 at 0; 6.5 at 2"
            await pilot.press("enter")
            await settle(pilot)
            assert isinstance(pilot.app.screen, VerdictStep)
            after = pilot.app.screen.verdict
            assert after.steer.ruling.u < before.steer.ruling.u

    async def test_s_leads_to_the_suspect_reading_to_type_it_over(self, tmp_path):
        path = as_draft(tmp_path, "not closing")
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            await resume(pilot, path)
            suspect = pilot.app.screen.verdict.suspect_groups[0].readings[0]
            await pilot.press("s")
            await pilot.pause()
            assert at(pilot) == f"readings.{suspect}"
            field = pilot.app.screen.query_one(Field)
            assert field.selected_text == field.value != ""

    async def test_m_mends_the_likeliest_slip_and_keeps_what_was_typed(self, tmp_path):
        path = as_draft(tmp_path, "not closing")
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            await resume(pilot, path)
            assert pilot.app.screen.verdict.overall == "held back"
            await pilot.press("m")
            await settle(pilot)
            assert pilot.app.screen.verdict.overall == "steers true"
            document = pilot.app.screen.flow.document
        assert value_at(document, "readings.track_bar.axle.height") == ["20 1/4 in"]
        (entry,) = value_at(document, "mended")
        assert entry["was"] == [["22 1/4 in"]]
        assert value_at(read_document(path), "mended") == [entry]

    async def test_the_keys_are_named_only_if_they_do_something(self, tmp_path):
        path = draft_at(tmp_path, "verdict")
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            await resume(pilot, path)
            words = [key.words for key in pilot.app.screen.query_one(Keys).keys]
            assert "suspect reading" not in words
            assert "mend the slip" not in words
            await pilot.press("m", "s", "c")
            await pilot.pause()
            assert isinstance(pilot.app.screen, VerdictStep)


def test_an_answer_after_the_verdict_leads_through_the_verdict_again(tmp_path):
    document = read_document(draft_at(tmp_path, "file"))
    flow = Flow(document)
    answered = flow.going_to("readings.travel.bump").answered("4 in")
    assert "verdict" not in value_at(answered.document, "draft.passed")


@pytest.mark.parametrize("size", [(30, 8), (60, 18), (220, 70)], ids=str)
async def test_other_sizes_of_terminal_work(tmp_path, size):
    async with workshop_app(tmp_path).run_test(size=size) as pilot:
        await open_session(pilot, "toe")
        await pilot.press("5", "end", "t", "right", "up", "f1", "escape", "escape")
        await pilot.resize_terminal(80, 24)
        await pilot.press("home")
        await settle(pilot)
        assert "✗ bump steer: with the wheel held" in flowing(screen_text(pilot))
        pilot.app.compare_both(path_of(pilot.app, "lifted"), path_of(pilot.app, "fixed"))
        await pilot.resize_terminal(*size)
        await settle(pilot)
        await pilot.press("4", "end", "escape")
        assert isinstance(pilot.app.screen, RecordScreen)
