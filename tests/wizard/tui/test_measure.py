"""Measuring by keys: from an empty folder to a filed record, and the faults on the way."""

from contextlib import asynccontextmanager

import pytest

from core.documents.document import value_at
from core.documents.record import read_document
from core.documents.record_list import list_drafts, list_records
from tests.wizard.tui.driving import (
    TRUE_TRUCK,
    answer_until,
    answered_until,
    app_in,
    at,
    draft_at,
    measuring,
    type_text,
)
from tests.wizard.tui.looking import flowing, screen_text, settle, workshop_app
from wizard.tui.screens.help import HelpScreen
from wizard.tui.screens.home import HomeScreen
from wizard.tui.screens.steps import StepsScreen
from wizard.tui.widgets.answer_list import AnswerList
from wizard.tui.widgets.choice_list import ChoiceList
from wizard.tui.widgets.closing import Closing
from wizard.tui.widgets.field import Field
from wizard.tui.widgets.guidance import Guidance
from wizard.tui.widgets.keys import Keys
from wizard.tui.widgets.remark import Remark

SMALL, LARGE = (80, 24), (120, 40)
HEIGHT = "readings.track_bar.frame.height"


@asynccontextmanager
async def measuring_at(files, path, size=SMALL):
    """A session resumed from its draft at a question."""
    draft_at(files, path)
    async with app_in(files).run_test(size=size) as pilot:
        await pilot.press("enter")
        assert at(pilot) == path
        yield pilot


async def enter(pilot, text):
    """Type a text and press Enter."""
    await type_text(pilot, text)
    await pilot.press("enter")


def remark(pilot):
    """Text under the field."""
    return str(pilot.app.screen.query_one(Remark).content)


def field(pilot):
    """Text in the field."""
    return pilot.app.screen.query_one(Field).value


def only_draft(files):
    """Contents of the only draft on the disk."""
    (entry,) = list_drafts(files)
    return read_document(entry.path)


class TestFiling:
    async def test_a_session_is_measured_by_keys_and_filed(self, tmp_path):
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            await pilot.press("enter", "ctrl+l")
            await answer_until(pilot, "file", TRUE_TRUCK)
            await pilot.press("1", "enter")
            await pilot.pause()
            assert isinstance(pilot.app.screen, HomeScreen)
            assert "filed, and read back" in str(pilot.app.screen.query_one("#notice").content)
        (entry,) = list_records(tmp_path)
        assert entry.fault == ""
        assert entry.overall == "too close to call"
        assert list_drafts(tmp_path) == []
        record = read_document(entry.path)
        assert value_at(record, "readings.drag_link.frame.height") == ["22 3/4 in", "22 11/16 in"]
        assert value_at(record, "walk_round.joints.track_bar_axle") == "tight"
        assert value_at(record, "stance.ride_height") == {"left": "21 3/8 in", "right": "21 1/4 in"}
        assert value_at(record, "limits.parallel") == "1.5 deg"
        assert value_at(record, "instruments.tape") == "1/16 in"
        assert value_at(record, "session.closed") is not None
        assert "draft" not in record

    async def test_a_session_with_missing_answers_is_not_filed(self, tmp_path):
        async with measuring_at(tmp_path, "cautions") as pilot:
            await pilot.press("f3", "end", "enter")
            await pilot.press("f4")
            assert at(pilot) == "file"
            await pilot.press("1", "enter")
            assert "still to be answered" in remark(pilot)
        assert list_records(tmp_path) == []


class TestAnswers:
    async def test_an_answer_is_on_the_disk_before_the_next_question(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "24 1/2")
            assert at(pilot) == "readings.track_bar.frame.offset"
            assert value_at(only_draft(tmp_path), HEIGHT) == ["24 1/2 in"]

    async def test_a_text_that_is_no_quantity_is_refused_and_stays_in_the_field(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "24 1/")
            assert "refused" in remark(pilot)
            assert (at(pilot), field(pilot)) == (HEIGHT, "24 1/")

    async def test_a_tag_that_was_measured_before_is_queried(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            pilot.app.measure()
            await pilot.pause()
            await enter(pilot, "fg-2")
            assert at(pilot) == "vehicle.tag"
            assert "was measured before, last on 2026-10-06" in flowing(remark(pilot))
            await pilot.press("f5")
            await enter(pilot, "the second truck of that tag")
            assert at(pilot) == "session.profile"
            (kept,) = only_draft(pilot.app.files)["kept"]
            assert kept["reason"] == "the second truck of that tag"

    async def test_an_unusual_answer_is_queried_and_typed_again(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "34 1/2")
            assert "queried" in remark(pilot)
            await enter(pilot, "24 1/2")  # the text is marked: typing replaces it
            assert at(pilot) == "readings.track_bar.frame.offset"
        draft = only_draft(tmp_path)
        assert value_at(draft, HEIGHT) == ["24 1/2 in"]
        assert "kept" not in draft

    async def test_a_reading_after_a_query_of_repeats_is_added_to_them(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "24 1/2; 25 3/8")
            assert "one more reading, which is added" in flowing(remark(pilot))
            await enter(pilot, "24 1/2")
            assert field(pilot) == "24 1/2; 25 3/8; 24 1/2"
            await pilot.press("enter")  # the same again, without another semicolon
            assert field(pilot) == "24 1/2; 25 3/8; 24 1/2"
            await enter(pilot, ";24")
            assert field(pilot) == "24 1/2; 25 3/8; 24 1/2;24"

    async def test_a_refused_text_is_typed_over(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "24 1/")
            await enter(pilot, "24 1/2")
            assert at(pilot) == "readings.track_bar.frame.offset"
            assert value_at(only_draft(tmp_path), HEIGHT) == ["24 1/2 in"]

    async def test_a_refused_repeat_is_typed_over_alone(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "24 1/2; 24x")
            await enter(pilot, "24 9/16")
            assert value_at(only_draft(tmp_path), HEIGHT) == ["24 1/2 in", "24 9/16 in"]

    async def test_a_clicked_answer_returns_to_the_question_it_was_left_at(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            measuring(pilot).action_go_to_step("Cross-checks")
            left = at(pilot)
            measuring(pilot).action_go_to("vehicle.odometer")
            await pilot.pause()
            await enter(pilot, "50000 km")
            assert at(pilot) == left != HEIGHT

    async def test_an_unusual_answer_is_kept_only_with_a_reason(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "34 1/2")
            await pilot.press("f5", "enter")
            assert "a reason is needed" in remark(pilot)
            await enter(pilot, "lifted, seen")
            assert at(pilot) == "readings.track_bar.frame.offset"
        draft = only_draft(tmp_path)
        assert value_at(draft, HEIGHT) == ["34 1/2 in"]
        assert draft["kept"] == [{"reading": "track_bar.frame.height", "reason": "lifted, seen"}]

    async def test_f5_after_typing_over_a_queried_answer_checks_the_new_answer(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "33")
            assert "queried" in remark(pilot)
            await type_text(pilot, "24 1/2")
            await pilot.press("f5")  # the text in the field, which is accepted
            assert at(pilot) == "readings.track_bar.frame.offset"
            assert value_at(only_draft(tmp_path), HEIGHT) == ["24 1/2 in"]
            assert "kept" not in only_draft(tmp_path)

    async def test_a_refused_answer_after_a_queried_answer_is_not_kept(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "33")
            await enter(pilot, "-5")
            assert "refused" in remark(pilot)
            await pilot.press("f5")
            await enter(pilot, "a reason")
            assert at(pilot) == HEIGHT
            assert value_at(only_draft(tmp_path), HEIGHT) is None

    async def test_the_queried_answer_stays_in_view_while_its_reason_is_asked(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "33")
            await pilot.press("f5")
            assert "Why is 33 in kept?" in screen_text(pilot)
            assert "unusual. Usual for this profile is 18 in to 30 in." in flowing(remark(pilot))
            pilot.app.screen.query_one(Field).value = "x" * 501
            await pilot.press("enter")
            assert "500 characters at most" in remark(pilot)
            assert at(pilot) == HEIGHT

    async def test_escape_from_the_reason_puts_the_answer_back(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "34 1/2")
            await pilot.press("f5", "escape")
            assert (at(pilot), field(pilot)) == (HEIGHT, "34 1/2")

    async def test_a_kept_answer_is_not_queried_again(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "34 1/2")
            await pilot.press("f5")
            await enter(pilot, "seen")
            await pilot.press("escape", "enter")
            assert at(pilot) == "readings.track_bar.frame.offset"

    async def test_a_vehicle_on_a_two_post_lift_is_refused(self, tmp_path):
        async with measuring_at(tmp_path, "stance.wheels_on_ground") as pilot:
            await pilot.press("n", "enter")
            assert "refused" in remark(pilot)
            assert at(pilot) == "stance.wheels_on_ground"

    async def test_markup_and_control_characters_are_shown_as_text(self, tmp_path):
        async with measuring_at(tmp_path, "vehicle.description") as pilot:
            pilot.app.screen.query_one(Field).begin("[red]a[/] [@click=app.quit]b[/]")
            await pilot.press("enter")
            await pilot.pause()
            assert "[red]a[/] [@click=app.quit]b[/]" in str(
                pilot.app.screen.query_one(AnswerList).render()
            )

    async def test_an_answer_that_cannot_be_written_is_not_accepted(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            folder = tmp_path / "unfinished"
            folder.rename(tmp_path / "aside")
            folder.write_text("in the way")
            await enter(pilot, "24 1/2")
            assert "trouble" in remark(pilot)
            assert (at(pilot), field(pilot)) == (HEIGHT, "24 1/2")
            folder.unlink()
            (tmp_path / "aside").rename(folder)
            await pilot.press("enter")
            assert at(pilot) == "readings.track_bar.frame.offset"


class TestMovingAbout:
    async def test_enter_in_an_empty_field_skips_an_optional_question(self, tmp_path):
        async with measuring_at(tmp_path, "vehicle.description") as pilot:
            await pilot.press("enter")
            assert at(pilot) == "session.technician"
            await pilot.press("enter")
            assert "refused" in remark(pilot)

    async def test_f4_skips_an_optional_question_alone(self, tmp_path):
        async with measuring_at(tmp_path, "vehicle.description") as pilot:
            await pilot.press("f4", "f4")
            assert at(pilot) == "session.technician"
            assert "cannot be skipped" in remark(pilot)

    async def test_escape_shows_the_answer_before_and_pagedown_returns(self, tmp_path):
        async with measuring_at(tmp_path, "vehicle.odometer") as pilot:
            await pilot.press("escape")
            assert (at(pilot), field(pilot)) == ("session.technician", "T. Invented")
            await pilot.press("pagedown")
            assert at(pilot) == "vehicle.odometer"
            await pilot.press("pagedown")
            assert at(pilot) == "vehicle.odometer"

    async def test_a_number_marks_a_line_and_enter_chooses_it(self, tmp_path):
        async with measuring_at(tmp_path, "walk_round.joints.track_bar_frame") as pilot:
            choices = pilot.app.screen.query_one(ChoiceList)
            assert choices.highlighted is None
            await pilot.press("2")
            assert at(pilot) == "walk_round.joints.track_bar_frame"
            assert choices.answer == "loose"
            await pilot.press("1", "enter")
            assert at(pilot) == "walk_round.joints.track_bar_axle"
            assert value_at(only_draft(tmp_path), "walk_round.joints.track_bar_frame") == "tight"

    async def test_enter_skips_an_optional_list_and_refuses_a_needed_list(self, tmp_path):
        async with measuring_at(tmp_path, "walk_round.tyres_alike") as pilot:
            await pilot.press("enter")
            assert at(pilot) == "stance.level_floor"
            await pilot.press("enter")
            assert "nothing is chosen yet" in remark(pilot)
            assert at(pilot) == "stance.level_floor"

    async def test_a_second_enter_does_not_answer_the_next_question(self, tmp_path):
        async with measuring_at(tmp_path, "walk_round.joints.track_bar_frame") as pilot:
            choices = pilot.app.screen.query_one(ChoiceList)
            choices.highlighted = 0
            choices.action_submit()
            choices.action_submit()  # before the first was handled
            await pilot.pause()
            assert at(pilot) == "walk_round.joints.track_bar_axle"
            assert pilot.app.screen.query_one(ChoiceList).highlighted is None

    async def test_pageup_and_pagedown_leave_a_list(self, tmp_path):
        async with measuring_at(tmp_path, "walk_round.joints.track_bar_axle") as pilot:
            await pilot.press("pageup")
            assert at(pilot) == "walk_round.joints.track_bar_frame"
            assert pilot.app.screen.query_one(ChoiceList).answer == "tight"
            await pilot.press("pagedown")
            assert at(pilot) == "walk_round.joints.track_bar_axle"

    async def test_other_keys_do_nothing_while_a_reason_is_asked(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "24 1/2")
            await pilot.press("escape")
            await enter(pilot, "33")
            await pilot.press("f5", "f4", "f8", "f3", "pagedown")
            assert at(pilot) == HEIGHT
            assert "Why is 33 in kept?" in screen_text(pilot)
            assert value_at(only_draft(tmp_path), HEIGHT) == ["24 1/2 in"]
            await pilot.press("f9")
            await pilot.pause()
            assert "“33” was typed and not entered" in flowing(screen_text(pilot))

    async def test_undoing_a_change_shows_the_answer_before(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "24 1/2")
            await pilot.press("escape")
            await enter(pilot, "25")
            await pilot.press("f8")
            assert (at(pilot), field(pilot)) == (HEIGHT, "24 1/2 in")
            assert "height: 25 in; it is 24 1/2 in again" in flowing(remark(pilot))

    async def test_an_unentered_text_keeps_its_unit_when_the_units_are_changed(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "24 1/2")
            await type_text(pilot, "3")
            await pilot.press("pageup", "f2", "pagedown", "enter")
            draft = only_draft(tmp_path)
            assert value_at(draft, "readings.track_bar.frame.offset") == ["3 in"]

    async def test_a_queried_choice_is_chosen_again(self, tmp_path):
        async with measuring_at(tmp_path, "walk_round.joints.track_bar_frame") as pilot:
            await pilot.press("2", "enter")
            assert "choose again, or F5 keeps it" in flowing(remark(pilot))
            await pilot.press("1", "f5")
            assert at(pilot) == "walk_round.joints.track_bar_axle"
            assert value_at(only_draft(tmp_path), "walk_round.joints.track_bar_frame") == "tight"

    async def test_an_unentered_text_waits_for_its_question(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "24 1/2")
            await type_text(pilot, "18 1/4")
            await pilot.press("pageup", "pagedown")
            assert (at(pilot), field(pilot)) == ("readings.track_bar.frame.offset", "18 1/4 in")
            assert "this was typed and left" in remark(pilot)
            await pilot.press("f9")
            await pilot.pause()
            assert "“18 1/4 in” was typed and not entered" in flowing(screen_text(pilot))

    async def test_an_answer_before_the_verdict_is_not_reported_as_unentered(self, tmp_path):
        async with measuring_at(tmp_path, "vehicle.wheelbase") as pilot:
            await enter(pilot, "112")
            await settle(pilot)
            assert at(pilot) == "verdict"
            await pilot.press("f9")
            await settle(pilot)
            assert "the session is kept, unfinished" in screen_text(pilot)
            assert "not entered" not in screen_text(pilot)

    async def test_an_answer_is_typed_over_when_its_question_is_asked_again(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "24 1/2")
            await pilot.press("escape")
            await enter(pilot, "25")
            assert value_at(only_draft(tmp_path), HEIGHT) == ["25 in"]

    async def test_undo_takes_the_last_answer_out_of_the_draft(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await pilot.press("f8")  # no answer since the session was opened
            assert at(pilot) == HEIGHT
            await enter(pilot, "24 1/2")
            await pilot.press("f8")
            assert (at(pilot), field(pilot)) == (HEIGHT, "24 1/2 in")
            assert "undone: Track bar frame end, height: 24 1/2 in" in remark(pilot)
        assert value_at(only_draft(tmp_path), HEIGHT) is None

    async def test_f2_changes_the_units_and_leaves_the_typed_text(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await enter(pilot, "24 1/2")
            await type_text(pilot, "463")
            await pilot.press("f2")
            assert field(pilot) == "463"
            assert "622 mm (24 1/2" in str(pilot.app.screen.query_one(AnswerList).render())
            await pilot.press("enter")
        draft = only_draft(tmp_path)
        assert value_at(draft, "session.units") == "mm"
        assert value_at(draft, "readings.track_bar.frame.offset") == ["463 mm"]

    async def test_a_step_is_chosen_from_a_list(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await pilot.press("f3")
            assert isinstance(pilot.app.screen, StepsScreen)
            await pilot.press("3", "enter")
            assert at(pilot) == "stance.level_floor"

    async def test_help_opens_and_closes(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            await pilot.press("f1")
            assert isinstance(pilot.app.screen, HelpScreen)
            await pilot.press("escape")
            assert at(pilot) == HEIGHT

    async def test_a_session_that_was_left_resumes_at_its_question(self, tmp_path):
        async with measuring_at(tmp_path, "readings.track_bar.axle.height") as pilot:
            await pilot.press("f9")
            assert isinstance(pilot.app.screen, HomeScreen)
            await pilot.press("enter")
            assert at(pilot) == "readings.track_bar.axle.height"

    async def test_another_program_resumes_the_session_at_its_question(self, tmp_path):
        async with measuring_at(tmp_path, "readings.track_bar.axle.height") as pilot:
            await type_text(pilot, "19")  # only the text in the field is lost
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            await pilot.press("enter")
            assert (at(pilot), field(pilot)) == ("readings.track_bar.axle.height", "")
            assert value_at(measuring(pilot).flow.document, HEIGHT) == ["24 1/2 in"]


class TestMeasuringAgain:
    async def test_values_before_are_in_view_and_the_record_names_the_first_session(self, tmp_path):
        async with measuring_at(tmp_path, "file") as pilot:
            await pilot.press("1", "enter")
            await settle(pilot)
            await pilot.press("f6")  # the filed session is marked
            assert at(pilot) == "session.technician"
            screen = measuring(pilot)
            screen.move_to(answered_until(screen.flow, HEIGHT))
            await pilot.pause()
            assert "before: 24 1/2 in" in remark(pilot)
            screen.move_to(answered_until(screen.flow, "file"))
            await pilot.pause()
            await pilot.press("1", "enter")
            await settle(pilot)
        by_kind = {record.kind: record for record in list_records(tmp_path)}
        assert by_kind["re-measure"].follows == by_kind["first"].id


class TestMouse:
    async def test_keys_choices_and_answers_can_be_clicked(self, tmp_path):
        async with measuring_at(tmp_path, "stance.tyres_set") as pilot:
            await pilot.click(ChoiceList, offset=(6, 0))
            assert at(pilot) == "stance.usual_load"
            answers = pilot.app.screen.query_one(AnswerList)
            await pilot.click(AnswerList, offset=(4, answers.size.height - 1))
            assert at(pilot) == "stance.tyres_set"
            await pilot.click(Keys, offset=(2, 0))  # Enter
            assert at(pilot) == "stance.usual_load"


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80x24", "120x40"])
class TestLayout:
    @pytest.mark.parametrize(
        "path", ["cautions", "layout.steering", HEIGHT, "readings.braces.frame_to_axle", "file"]
    )
    async def test_question_field_guidance_and_keys_are_in_view(self, tmp_path, size, path):
        async with measuring_at(tmp_path, path, size) as pilot:
            await pilot.pause()
            screen = pilot.app.screen
            widgets = [screen.query_one("#ask"), screen.query_one(Keys)]
            choices = screen.query_one(ChoiceList)
            widgets.append(choices if choices.display else screen.query_one(Field))
            for widget in widgets:
                assert widget.region in screen.region
                assert widget.size.height >= 1
            assert screen.query_one(Guidance).size.height >= 4
            assert screen.query_one(Guidance).region.bottom <= screen.query_one(Keys).region.y

    async def test_a_long_query_is_in_view(self, tmp_path, size):
        async with measuring_at(tmp_path, HEIGHT, size) as pilot:
            await enter(pilot, "34; 31")
            await pilot.pause()
            widget = pilot.app.screen.query_one(Remark)
            assert "F5" in remark(pilot)
            assert widget.content.get_height({}, widget.size.width) <= widget.size.height
            assert widget.region.bottom <= pilot.app.screen.query_one(Keys).region.y


@pytest.mark.parametrize("size", [(30, 8), (60, 18), (220, 70)], ids=str)
async def test_other_sizes_of_terminal_work(tmp_path, size):
    async with measuring_at(tmp_path, HEIGHT, size) as pilot:
        await pilot.press("f1", "escape", "f3", "escape")
        await enter(pilot, "24 1/2")
        assert at(pilot) == "readings.track_bar.frame.offset"
        await pilot.resize_terminal(80, 24)
        await pilot.press("f8")
        assert at(pilot) == HEIGHT


class TestClosureOfReadings:
    async def test_closure_is_in_view_under_the_picture_and_in_the_help(self, tmp_path):
        async with measuring_at(tmp_path, "readings.track_bar.slope") as pilot:
            closing = pilot.app.screen.query_one(Closing)
            assert "They agree with each other" in str(closing.content)
            await enter(pilot, "12")
            await pilot.press("f5")
            await enter(pilot, "seen")
            assert "! do not close" in str(closing.content)
            assert "slope of the track bar" in " ".join(fact.text for fact in closing.facts)
            await pilot.press("f1")
            texts = [str(text.content) for text in pilot.app.screen.query(".text")]
            assert any("slope of the track bar" in text for text in texts)

    async def test_closure_is_in_view_at_a_pivot_once_all_pivots_are_measured(self, tmp_path):
        async with measuring_at(tmp_path, "readings.steering.arm") as pilot:
            measuring(pilot).action_go_to(HEIGHT)
            await pilot.pause()
            closing = pilot.app.screen.query_one(Closing)
            assert closing.display
            assert "They agree with each other" in " ".join(fact.text for fact in closing.facts)

    async def test_closure_is_hidden_before_the_cross_checks(self, tmp_path):
        async with measuring_at(tmp_path, HEIGHT) as pilot:
            assert not pilot.app.screen.query_one(Closing).display
