"""Home: unfinished sessions, filed sessions, and a new session to begin."""

import pytest

from tests.wizard.tui.driving import app_in, at, at_home, draft_at, type_text
from tests.wizard.tui.looking import DEMO, screen_text, workshop, workshop_app
from wizard.tui.screens.help import HelpScreen
from wizard.tui.screens.home import HomeScreen
from wizard.tui.screens.record import RecordScreen
from wizard.tui.widgets.field import Field
from wizard.tui.widgets.keys import Keys
from wizard.tui.widgets.sessions import Sessions

SMALL = (80, 24)


def lines(pilot):
    """Lines of the list as texts."""
    sessions = pilot.app.screen.query_one(Sessions)
    return [str(sessions.content_of(index)) for index in range(len(sessions.lines))]


def notice(pilot):
    """Line above the list."""
    return str(pilot.app.screen.query_one("#notice").content)


@pytest.fixture
def filed(tmp_path):
    """Files folder with the sessions of the invented workshop."""
    return workshop(tmp_path)


class TestEmptyFolder:
    async def test_the_first_steps_are_explained_and_enter_begins_a_session(self, tmp_path):
        async with at_home(app_in(tmp_path / "none"), SMALL) as pilot:
            assert pilot.app.screen.query_one("#first").display
            assert lines(pilot) == ["▸ + measure a new vehicle"]
            await pilot.press("enter")
            assert at(pilot) == "vehicle.tag"
        assert not (tmp_path / "none").exists()

    async def test_escape_at_the_first_question_leads_home(self, tmp_path):
        async with at_home(app_in(tmp_path), SMALL) as pilot:
            await pilot.press("enter", "escape")
            assert isinstance(pilot.app.screen, HomeScreen)


class TestFiledSessions:
    async def test_sessions_are_listed_newest_first_with_mark_and_word(self, filed):
        async with at_home(app_in(filed), SMALL) as pilot:
            assert not pilot.app.screen.query_one("#first").display
            new, *sessions = lines(pilot)
            assert "measure a new vehicle" in new
            days = [line.split("  20")[1][:8] for line in sessions]
            assert days == sorted(days, reverse=True)
            for word in ("✓ steers true", "✗ bump steer", "≈ too close to call", "■ held back"):
                assert any(word in line for line in sessions)

    async def test_typing_lists_the_sessions_with_every_word(self, filed):
        async with at_home(app_in(filed), SMALL) as pilot:
            await pilot.press(*"fg-1", "space", *"bump")
            assert lines(pilot)
            for line in lines(pilot):
                assert "FG-1" in line
                assert "bump steer" in line
            await pilot.press("escape")
            assert pilot.app.screen.query_one(Field).value == ""
            assert "measure a new vehicle" in lines(pilot)[0]

    async def test_an_empty_list_opens_nothing(self, filed):
        async with at_home(app_in(filed), SMALL) as pilot:
            await pilot.press(*"nothing", "enter", "f6")
            assert lines(pilot) == []
            assert isinstance(pilot.app.screen, HomeScreen)

    async def test_enter_opens_the_marked_session_which_stays_marked(self, filed):
        async with at_home(app_in(filed), SMALL) as pilot:
            await pilot.press("down", "down", "enter")
            assert isinstance(pilot.app.screen, RecordScreen)
            await pilot.press("escape")
            await pilot.pause()
            assert pilot.app.screen.query_one(Sessions).highlighted == 2
            assert lines(pilot)[2].startswith("▸")

    async def test_f6_measures_the_marked_session_again(self, filed):
        async with at_home(app_in(filed), SMALL) as pilot:
            await pilot.press("f6")
            assert "choose one" in notice(pilot)
            await pilot.press("down", "f6")
            assert at(pilot) == "session.technician"

    async def test_the_last_of_many_sessions_is_in_view(self, filed):
        async with at_home(app_in(filed), (80, 14)) as pilot:
            await pilot.press("up")  # from the first line to the last
            await pilot.pause()
            assert pilot.app.screen.query_one(Sessions).highlighted == len(lines(pilot)) - 1
            sessions = pilot.app.screen.query_one(Sessions)
            assert sessions.scroll_offset.y > 0
            assert sessions.region.bottom <= pilot.app.screen.query_one(Keys).region.y


class TestUnfinishedSessions:
    async def test_they_come_first_with_the_step_they_have_reached(self, filed):
        draft_at(filed, "readings.track_bar.axle.height")
        async with at_home(app_in(filed), SMALL) as pilot:
            assert "unfinished, go on" in lines(pilot)[0]
            assert "at Pivots" in lines(pilot)[0]
            await pilot.press("enter")
            assert at(pilot) == "readings.track_bar.axle.height"


class TestKeys:
    async def test_f3_makes_a_sheet_for_the_chosen_profile(self, tmp_path):
        async with at_home(app_in(tmp_path), SMALL) as pilot:
            for name in ("sheet_coil-crossover.html", "sheet_coil-crossover-2.html"):
                await pilot.press("f3", "enter")
                await pilot.pause()
                assert name in notice(pilot)
                assert "Track bar" in (tmp_path / name).read_text("utf-8")

    async def test_escape_makes_no_sheet(self, tmp_path):
        async with at_home(app_in(tmp_path), SMALL) as pilot:
            await pilot.press("f3", "escape")
            await pilot.pause()
        assert not list(tmp_path.glob("*.html"))


class TestUnreadableFiles:
    async def test_a_broken_record_is_listed_with_its_fault_and_not_changed(self, filed):
        broken = filed / "FG-1" / "broken.toml"
        broken.write_text("format = [red]")
        async with at_home(app_in(filed), SMALL) as pilot:
            await pilot.press(*"cannot", "enter")
            assert len(lines(pilot)) == 1
            assert "broken.toml" in notice(pilot)
        assert broken.read_text() == "format = [red]"

    async def test_a_draft_of_a_newer_format_is_not_changed(self, tmp_path):
        draft = draft_at(tmp_path, "stance.settled")
        draft.write_text(draft.read_text().replace("format_version = 1", "format_version = 9"))
        before = draft.read_bytes()
        async with at_home(app_in(tmp_path), SMALL) as pilot:
            await pilot.press("enter")
            assert "newer" in notice(pilot)
        assert draft.read_bytes() == before

    async def test_a_file_in_place_of_the_folder_is_reported(self, tmp_path):
        files = tmp_path / "files"
        files.write_text("not a folder")
        async with at_home(app_in(files), SMALL) as pilot:
            assert "cannot be read" in notice(pilot)


async def test_help_and_quit(tmp_path):
    app = app_in(tmp_path)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("f1")
        assert isinstance(pilot.app.screen, HelpScreen)
        await pilot.press("escape", "f9")
    assert app.return_code == 0


async def test_an_unfinished_session_is_thrown_away_after_a_question(tmp_path):
    path = draft_at(tmp_path, "stance.level_floor")
    async with at_home(app_in(tmp_path), SMALL) as pilot:
        await pilot.press("f8")
        assert "Throw this unfinished session of FG-3 away?" in screen_text(pilot)
        await pilot.press("enter")
        await pilot.pause()
        assert path.exists()
        await pilot.press("f8", "2", "enter")
        await pilot.pause()
        assert not path.exists()
        assert "thrown away: the unfinished session of FG-3" in screen_text(pilot)
        assert "unfinished, go on" not in screen_text(pilot)


async def test_a_filed_session_cannot_be_thrown_away(tmp_path):
    async with at_home(workshop_app(tmp_path), SMALL) as pilot:
        await pilot.press("down", "f8")
        await pilot.pause()
        assert "choose one first" in screen_text(pilot)
        assert isinstance(pilot.app.screen, HomeScreen)


async def test_the_session_that_was_left_is_marked(tmp_path):
    files = workshop(tmp_path)
    draft_at(files, "stance.level_floor")
    async with at_home(app_in(files), SMALL) as pilot:
        pilot.app.measure_again(DEMO["close"].path_in(files))
        await pilot.pause()
        await type_text(pilot, "Another hand")
        await pilot.press("enter", "f9")
        await pilot.pause()
        entry, is_unfinished = pilot.app.screen.query_one(Sessions).at_hand
        assert (entry.tag, is_unfinished) == ("FG-4", True)


async def test_a_filter_without_a_match_is_reported(tmp_path):
    async with at_home(workshop_app(tmp_path), SMALL) as pilot:
        await type_text(pilot, "zzz")
        await pilot.pause()
        assert "no session holds “zzz”; Esc shows all" in screen_text(pilot)
        await pilot.press("escape")
        await pilot.pause()
        assert "zzz" not in screen_text(pilot)
        assert "FG-6" in screen_text(pilot)


async def test_a_re_measure_without_an_answer_leaves_no_draft(tmp_path):
    async with at_home(workshop_app(tmp_path), SMALL) as pilot:
        pilot.app.measure_again(DEMO["close"].path_in(pilot.app.files))
        await pilot.pause()
        await pilot.press("f9")
        await pilot.pause()
        assert "is kept" not in screen_text(pilot)
        assert not (pilot.app.files / "unfinished").exists()
